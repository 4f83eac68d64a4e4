// The straight-edge as pure geometry on the paper: two points that the reading edge was laid on, in the direction of
// travel. Putting on, turning and sliding make a new edge from an old one; sliding never touches the angle.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/directions/directions.h"
#include "core/document/ids.h"
#include "core/sheet/sheet_point.h"

namespace fogsheet {

// Paper measures of the instrument. It runs past the points it was laid on so that its handles stand clear of them.
inline constexpr double k_edge_body_mm = 10;
inline constexpr double k_edge_overhang_mm = 12;
// It settles on a rose whose centre lies under the body or this far before the reading edge, and a slide of that much lifts it.
inline constexpr double k_edge_reach_mm = 4;
inline constexpr double k_edge_lift_mm = 8;
inline constexpr double k_least_edge_mm = 2;  // shorter, its direction is noise

enum class EdgeEnd { a, b };

struct StraightEdge {
  SheetPoint a;  // where travel starts
  SheetPoint b;  // at least k_least_edge_mm from a
  std::optional<MarkId> on_a;  // the marks that the ends are snapped to; none once it has been slid
  std::optional<MarkId> on_b;
  bool locked = false;                 // from the start of a slide until an end is dragged or it is turned
  std::optional<RoseId> settled_on;

  bool operator==(const StraightEdge&) const = default;
};

/// The direction of travel as it lies on the sheet; on a Mercator sheet the rhumb course.
TrueDirection bearing(const StraightEdge& edge);

/// Unit vectors: along the direction of travel; and across it to the side the body lies on, which is the upper one (the
/// side away from a rose's note), or the left one for an edge that lies straight up and down.
SheetVector along(const StraightEdge& edge);
SheetVector body_side(const StraightEdge& edge);

/// The four corners of the strip, reading edge first: its start, its end, then the far edge back.
struct EdgeOutline {
  SheetPoint reading_start, reading_end, far_end, far_start;
};
EdgeOutline outline(const StraightEdge& edge);

/// The strip lengthened at either end, as by a second one laid against it, until it reaches that far past a point's foot on
/// it; as it is where it does already. @param reach_mm at least 0.
EdgeOutline lengthened(const StraightEdge& edge, SheetPoint about, double reach_mm);

/// Where the handle of an end stands: in the body, just within the strip's own end, clear of the mark it was laid on.
SheetPoint handle(const EdgeOutline& strip, EdgeEnd end);

/// The same edge moved by a vector, its angle untouched: both ends move by the same amount.
StraightEdge slid(const StraightEdge& edge, SheetVector by);

/// With one end moved; unlocked, unsettled, and no longer on that end's mark but on `mark`. Ends closer than
/// k_least_edge_mm keep the edge as it was.
StraightEdge with_end_at(const StraightEdge& edge, EdgeEnd end, SheetPoint to, std::optional<MarkId> mark);

/// Turned about a point to a direction; unlocked; the distances of its ends from the point's foot on it stay. Stays settled
/// when it was settled on a rose at that point.
StraightEdge turned(const StraightEdge& edge, SheetPoint about, TrueDirection to);

/// The direction of travel the other way round.
StraightEdge turned_round(const StraightEdge& edge);

/// Slid across itself so that the reading edge (or its line) passes through a point.
StraightEdge slid_onto(const StraightEdge& edge, SheetPoint point);

/// How far a point lies from the reading edge's line, mm: positive on the body's side.
double across_mm(const StraightEdge& edge, SheetPoint point);

/// A rose as the edge meets it.
struct RoseInReach {
  RoseId id;
  SheetPoint centre;
  double radius_mm = 0;
};

/// The rose on which the edge settles where it lies: its centre under the body or within `reach_mm` (at least
/// k_edge_reach_mm) before the reading edge, and no further past the ends than its radius. The nearest of several.
const RoseInReach* rose_in_reach(const StraightEdge& edge, std::span<const RoseInReach> roses, double reach_mm);

/// Where the edge's line cuts a circle about the rose's centre in the direction of travel.
SheetPoint cut(const StraightEdge& edge, SheetPoint centre, double radius_mm);

/// A slide under the hand: from the edge as it lay, by the whole displacement since the slide began.
class Slide {
 public:
  Slide(StraightEdge from, std::span<const RoseInReach> roses, double reach_mm);

  /// The edge for that displacement, settled where the rule says. An edge that began settled stays so until the
  /// displacement across it passes k_edge_lift_mm; after that the same rose takes it again only from outside its reach.
  StraightEdge at(SheetVector displacement);

  /// The edge on release: a rose in reach takes it, even the one it was lifted from.
  StraightEdge released(SheetVector displacement);

 private:
  StraightEdge from_;
  std::vector<RoseInReach> roses_;
  double reach_mm_;
  bool lifted_ = false;                 // off the rose that it began settled on
  std::optional<RoseId> barred_;        // that rose, until the edge has been out of its reach
};

}  // namespace fogsheet
