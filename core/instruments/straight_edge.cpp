#include "core/instruments/straight_edge.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace fogsheet {
namespace {

// Ends and displacements are kept on a grid of 2^-38 mm (4e-12 mm). Sums of its points are exact within 16 m of the paper's
// corner, so that a slide gives both ends the same vector to the last bit, and no number of slides can wear the angle away.
constexpr double k_grid_per_mm = 274'877'906'944.0;  // 2^38

double on_grid(double mm) { return std::nearbyint(mm * k_grid_per_mm) / k_grid_per_mm; }
SheetPoint on_grid(SheetPoint p) { return {on_grid(p.x_mm), on_grid(p.y_mm)}; }
SheetVector on_grid(SheetVector v) { return {on_grid(v.x_mm), on_grid(v.y_mm)}; }

// Within this an edge lies straight up and down, or a point on its line: far above the noise, far below what can be seen.
constexpr double k_no_distance = 1e-9;

SheetVector left_of(SheetVector direction) { return {direction.y_mm, -direction.x_mm}; }

bool longer_than_least(SheetPoint a, SheetPoint b) { return distance_mm(a, b) >= k_least_edge_mm; }

// How far along the edge's line a point's foot lies, from end a.
double along_mm(const StraightEdge& edge, SheetPoint point) { return dot(point - edge.a, along(edge)); }

// From a point to the reading edge between its ends.
double distance_to_edge_mm(const StraightEdge& edge, SheetPoint point) {
  const double foot_mm = std::clamp(along_mm(edge, point), 0.0, distance_mm(edge.a, edge.b));
  return distance_mm(point, edge.a + foot_mm * along(edge));
}

bool in_reach(const StraightEdge& edge, const RoseInReach& rose, double reach_mm) {
  const double across = across_mm(edge, rose.centre);
  if (across > k_edge_body_mm || across < -std::max(reach_mm, k_edge_reach_mm)) return false;
  const double foot_mm = along_mm(edge, rose.centre);
  return foot_mm >= -rose.radius_mm && foot_mm <= distance_mm(edge.a, edge.b) + rose.radius_mm;
}

StraightEdge settled(const StraightEdge& edge, const RoseInReach& rose) {
  StraightEdge on_rose = slid_onto(edge, rose.centre);
  on_rose.settled_on = rose.id;
  return on_rose;
}

}  // namespace

TrueDirection bearing(const StraightEdge& edge) { return TrueDirection(direction_deg(edge.b - edge.a)); }

SheetVector along(const StraightEdge& edge) {
  const SheetVector span = edge.b - edge.a;
  const double length = length_mm(span);
  SHEET_CHECK(length > 0, "a straight-edge without a direction");
  return (1 / length) * span;
}

SheetVector body_side(const StraightEdge& edge) {
  const SheetVector left = left_of(along(edge));
  const bool upright = std::abs(left.y_mm) < k_no_distance;
  const bool is_side = upright ? left.x_mm < 0 : left.y_mm < 0;
  return is_side ? left : -left;
}

namespace {

EdgeOutline strip_between(const StraightEdge& edge, SheetPoint start, SheetPoint end) {
  const SheetVector through = k_edge_body_mm * body_side(edge);
  return {.reading_start = start, .reading_end = end, .far_end = end + through, .far_start = start + through};
}

}  // namespace

EdgeOutline outline(const StraightEdge& edge) {
  const SheetVector over = k_edge_overhang_mm * along(edge);
  return strip_between(edge, edge.a - over, edge.b + over);
}

EdgeOutline lengthened(const StraightEdge& edge, SheetPoint about, double reach_mm) {
  const double foot_mm = along_mm(edge, about);
  const double start_mm = std::min(-k_edge_overhang_mm, foot_mm - reach_mm);
  const double end_mm = std::max(distance_mm(edge.a, edge.b) + k_edge_overhang_mm, foot_mm + reach_mm);
  return strip_between(edge, edge.a + start_mm * along(edge), edge.a + end_mm * along(edge));
}

SheetPoint handle(const EdgeOutline& strip, EdgeEnd end) {
  constexpr double k_within_end_mm = 0.4 * k_edge_overhang_mm;  // the disc clears both the mark and the strip's own end
  const SheetVector run = strip.reading_end - strip.reading_start;
  const SheetVector within = (k_within_end_mm / length_mm(run)) * run;
  return end == EdgeEnd::a ? midpoint(strip.reading_start, strip.far_start) + within : midpoint(strip.reading_end, strip.far_end) - within;
}

StraightEdge slid(const StraightEdge& edge, SheetVector by) {
  const SheetVector exact_by = on_grid(by);
  return {.a = on_grid(edge.a) + exact_by, .b = on_grid(edge.b) + exact_by, .locked = true};
}

StraightEdge with_end_at(const StraightEdge& edge, EdgeEnd end, SheetPoint to, std::optional<MarkId> mark) {
  StraightEdge moved = edge;
  (end == EdgeEnd::a ? moved.a : moved.b) = on_grid(to);
  (end == EdgeEnd::a ? moved.on_a : moved.on_b) = mark;
  if (!longer_than_least(moved.a, moved.b)) return edge;
  moved.locked = false;
  moved.settled_on.reset();
  return moved;
}

StraightEdge turned(const StraightEdge& edge, SheetPoint about, TrueDirection to) {
  const SheetVector from_along = along(edge);
  const SheetVector to_along = towards(to.deg());
  const auto turn = [&](SheetPoint end) {
    const SheetVector arm = end - about;
    return on_grid(about + dot(arm, from_along) * to_along + dot(arm, left_of(from_along)) * left_of(to_along));
  };
  const bool about_on_line = std::abs(across_mm(edge, about)) < k_no_distance;
  return {.a = turn(edge.a),
          .b = turn(edge.b),
          .on_a = about == edge.a ? edge.on_a : std::nullopt,
          .on_b = about == edge.b ? edge.on_b : std::nullopt,
          .settled_on = about_on_line ? edge.settled_on : std::nullopt};
}

StraightEdge turned_round(const StraightEdge& edge) {
  StraightEdge round = edge;
  std::swap(round.a, round.b);
  std::swap(round.on_a, round.on_b);
  return round;
}

StraightEdge slid_onto(const StraightEdge& edge, SheetPoint point) { return slid(edge, across_mm(edge, point) * body_side(edge)); }

double across_mm(const StraightEdge& edge, SheetPoint point) { return dot(point - edge.a, body_side(edge)); }

const RoseInReach* rose_in_reach(const StraightEdge& edge, std::span<const RoseInReach> roses, double reach_mm) {
  const RoseInReach* nearest = nullptr;
  for (const RoseInReach& rose : roses) {
    if (!in_reach(edge, rose, reach_mm)) continue;
    if (!nearest || distance_to_edge_mm(edge, rose.centre) < distance_to_edge_mm(edge, nearest->centre)) nearest = &rose;
  }
  return nearest;
}

SheetPoint cut(const StraightEdge& edge, SheetPoint centre, double radius_mm) {
  const double off_mm = across_mm(edge, centre);
  const double half_chord_mm = std::sqrt(std::max(0.0, radius_mm * radius_mm - off_mm * off_mm));
  return centre - off_mm * body_side(edge) + half_chord_mm * along(edge);
}

Slide::Slide(StraightEdge from, std::span<const RoseInReach> roses, double reach_mm)
    : from_(std::move(from)), roses_(roses.begin(), roses.end()), reach_mm_(reach_mm) {}

StraightEdge Slide::at(SheetVector displacement) {
  if (from_.settled_on && !lifted_) {
    if (std::abs(dot(displacement, body_side(from_))) <= k_edge_lift_mm) {
      StraightEdge along_only = slid(from_, dot(displacement, along(from_)) * along(from_));
      along_only.settled_on = from_.settled_on;
      return along_only;
    }
    lifted_ = true;
    barred_ = from_.settled_on;
  }
  const StraightEdge free = slid(from_, displacement);
  std::vector<RoseInReach> open;
  bool barred_in_reach = false;
  for (const RoseInReach& rose : roses_) {
    if (rose.id == barred_ && in_reach(free, rose, reach_mm_)) barred_in_reach = true;
    else open.push_back(rose);
  }
  if (!barred_in_reach) barred_.reset();
  const RoseInReach* rose = rose_in_reach(free, open, reach_mm_);
  return rose ? settled(free, *rose) : free;
}

StraightEdge Slide::released(SheetVector displacement) {
  const StraightEdge held = at(displacement);
  if (held.settled_on) return held;
  const RoseInReach* rose = rose_in_reach(held, roses_, reach_mm_);
  return rose ? settled(held, *rose) : held;
}

}  // namespace fogsheet
