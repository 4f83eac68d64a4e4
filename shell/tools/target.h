// What a press at a point of the canvas would take, by the tool in hand: nearest wins, points before lines.
#pragma once

#include <variant>

#include "shell/session.h"

namespace fogsheet {

struct NothingTarget { bool operator==(const NothingTarget&) const = default; };
struct MarkTarget { MarkId id; bool operator==(const MarkTarget&) const = default; };
struct LegTarget { LegId id; bool operator==(const LegTarget&) const = default; };
struct HandleTarget { EdgeEnd end; bool operator==(const HandleTarget&) const = default; };
struct ArrowTarget { bool operator==(const ArrowTarget&) const = default; };  // turns the direction of travel round
/// The end of the line that would be drawn along the edge.
struct LineEndTarget { bool operator==(const LineEndTarget&) const = default; };
struct DividersTarget { DividersPart part; bool operator==(const DividersTarget&) const = default; };
struct BodyTarget { bool operator==(const BodyTarget&) const = default; };    // the strip or its reading edge

/// A rose, taken anywhere within it, and the handle on its true ring; with its tool in hand.
struct RoseTarget { RoseId id; bool operator==(const RoseTarget&) const = default; };
struct RoseSizeTarget { RoseId id; bool operator==(const RoseSizeTarget&) const = default; };
struct NoteTarget { NoteId id; bool operator==(const NoteTarget&) const = default; };

using Target = std::variant<NothingTarget, MarkTarget, LegTarget, HandleTarget, ArrowTarget, BodyTarget, LineEndTarget, DividersTarget, RoseTarget, RoseSizeTarget, NoteTarget>;

Target target_at(const Session& session, ScreenPoint at);

/// What lies at a point whatever the tool in hand: a mark, a note, the edge, a leg, or a rose by its centre or a ring.
Target thing_at(const Session& session, ScreenPoint at);

/// The mark within reach of a point, nearest first.
std::optional<MarkId> mark_near(const Session& session, ScreenPoint at);

/// The same for an instrument's point that comes near; none when the user wants no snapping.
std::optional<MarkId> mark_to_snap_to(const Session& session, ScreenPoint at);

/// The nearest place on a leg within reach of a point.
std::optional<SheetPoint> foot_on_leg_near(const Session& session, ScreenPoint at);

/// The note whose words lie under a point.
std::optional<NoteId> note_near(const Session& session, ScreenPoint at);

/// Where the handle that sizes a rose stands: on its true ring, to the south-east.
SheetPoint rose_size_handle(SheetPoint centre, double radius_mm);

SheetPoint place_of(const Session& session, MarkId mark);

/// The strip as it lies and is taken: over the rose it has settled on, lengthened past the rose's figures.
EdgeOutline edge_strip(const Session& session, const StraightEdge& edge);

/// The rose that an edge has settled on; null while it has not.
const RoseInReach* settled_rose(const Session& session, const StraightEdge& edge);

/// The direction-of-travel arrow of a settled edge; none while it is not settled.
std::optional<SheetPoint> edge_arrow(const Session& session);

/// How far before the reading edge a rose's centre is taken, mm at the camera's zoom.
double settle_reach_mm(const Session& session);

}  // namespace fogsheet
