#include "shell/dividers.h"

#include <algorithm>
#include <cmath>

#include "shell/tools/target.h"

namespace fogsheet {
namespace {

// The hinge: as far off the opening as real legs would have it, within what a hand finds on the screen.
constexpr double k_hinge_off_part = 0.62;
constexpr double k_least_hinge_off_px = 66;
constexpr double k_most_hinge_off_px = 150;

constexpr double k_least_opening_mm = 0.5;
constexpr int k_most_steps_asked = 1000;
constexpr std::size_t k_most_legs_offered = 4;
constexpr double k_same_place_mm = 1e-6;

SheetPoint middle_of_sheet(const Session& session) {
  const SheetRect& frame = session.facts().projection->neat_line();
  return midpoint({frame.left_mm, frame.top_mm}, {frame.right_mm, frame.bottom_mm});
}

bool holds(FreeArea area, ScreenPoint p) { return p.x_px >= 0 && p.y_px >= 0 && p.x_px < area.width_px && p.y_px < area.height_px; }

bool ends_at(const Leg& leg, const std::optional<MarkId>& mark) { return mark && (leg.from == *mark || leg.to == *mark); }

}  // namespace

Result<Done> open_dividers(Session& session, const FirstEnd& a, const FirstEnd& b) {
  session.desk.first_point.reset();
  if (distance_mm(a.at, b.at) < k_least_opening_mm) return Problem{.fault = Fault::dividers_shut};
  DividersPlace lie{.points = {a.at, b.at}, .on_a = a.on, .on_b = b.on};
  lie.hinge_left = hinge_is_left(lie.points, middle_of_sheet(session));
  session.desk.dividers = DividersOnSheet{.lie = lie};
  // Out of sight the hinge is no use: the other side will do.
  const auto in_sight = [&] { return holds(session.free_area(), session.desk.camera.to_screen(hinge_of(session, *session.desk.dividers))); };
  bool& left = session.desk.dividers->lie.hinge_left;
  if (!in_sight()) {
    left = !left;
    if (!in_sight()) left = !left;
  }
  session.touch();
  return Done{};
}

Result<Done> set_dividers(Session& session, double distance_nm) {
  const Projection& projection = *session.facts().projection;
  const FreeArea area = session.free_area();
  DividersPlace lie;
  if (session.desk.dividers) {
    lie = session.desk.dividers->work ? *session.desk.dividers->work : session.desk.dividers->lie;
  } else {
    const SheetPoint middle = session.desk.camera.to_sheet({area.width_px / 2, area.height_px / 2});
    lie.points = {middle, middle};
  }
  // Wider than the sheet is high they can't be read on its scale.
  const SheetRect& frame = projection.neat_line();
  const double most_nm = read_dividers({{0, frame.bottom_mm}, {0, frame.top_mm}}, projection).distance_nm;
  const double opening = opening_for_distance_mm(std::clamp(distance_nm, 0.0, most_nm), projection.to_position(midpoint(lie.points.a, lie.points.b)).lat_deg, projection);
  if (!(distance_nm <= most_nm) || opening < k_least_opening_mm) {
    const double least_nm = k_least_opening_mm / projection.mm_per_nm(projection.to_position(lie.points.a).lat_deg);
    return Problem{.fault = Fault::number_out_of_range, .texts = {"distance"}, .numbers = {distance_nm, std::ceil(least_nm * 100) / 100, std::floor(most_nm * 10) / 10}};
  }
  if (session.desk.dividers) {
    lie.points = opened_to(lie.points, opening);
  } else {
    lie.points.a = lie.points.a - SheetVector{.x_mm = opening / 2, .y_mm = 0};
    lie.points.b = lie.points.a + SheetVector{.x_mm = opening, .y_mm = 0};
  }
  lie.on_b.reset();
  session.desk.dividers = DividersOnSheet{.lie = lie};
  session.touch();
  return Done{};
}

DividersReading reading_of(const Session& session, const DividersOnSheet& dividers) {
  return read_dividers(dividers.lie.points, *session.facts().projection);
}

void walk_dividers(Session& session) {
  DividersOnSheet& dividers = *session.desk.dividers;
  if (dividers.work) {
    dividers.lie = *dividers.work;
    dividers.work.reset();
    session.bring_into_view(midpoint(dividers.lie.points.a, dividers.lie.points.b));
  } else {
    const SheetRect& frame = session.facts().projection->neat_line();
    const bool west = midpoint(dividers.lie.points.a, dividers.lie.points.b).x_mm < (frame.left_mm + frame.right_mm) / 2;
    dividers.work = dividers.lie;
    dividers.lie = {.points = at_latitude_scale(dividers.lie.points, west ? frame.left_mm : frame.right_mm)};
    dividers.lie.hinge_left = !west;  // inwards: b stands to the north
    session.bring_into_view(midpoint(dividers.lie.points.a, dividers.lie.points.b));
  }
  session.touch();
}

std::vector<LegId> legs_to_step(const Session& session) {
  std::vector<LegId> legs;
  if (!session.desk.dividers) return legs;
  const DividersOnSheet& dividers = *session.desk.dividers;
  const DividersPlace& place = dividers.work ? *dividers.work : dividers.lie;
  for (const Leg& leg : session.document().legs) {
    const bool spanned = ends_at(leg, place.on_a) && ends_at(leg, place.on_b) && !dividers.stepped;  // one step: nothing to walk
    const bool offered = !spanned && (ends_at(leg, place.on_a) || ends_at(leg, place.on_b) || leg.id == session.desk.selected_leg || (dividers.stepped && dividers.stepped->leg == leg.id));
    if (offered && legs.size() < k_most_legs_offered) legs.push_back(leg.id);
  }
  return legs;
}

Result<Done> step_off(Session& session, LegId id, std::optional<int> steps) {
  const Leg* leg = session.document().legs.find(id);
  if (!leg) return Problem{.fault = Fault::leg_unknown, .texts = {std::to_string(id.value)}};
  if (steps && (*steps < 1 || *steps > k_most_steps_asked))
    return Problem{.fault = Fault::number_out_of_range, .texts = {"steps"}, .numbers = {static_cast<double>(*steps), 1, k_most_steps_asked}};
  DividersOnSheet& dividers = *session.desk.dividers;
  const DividersPlace place = dividers.work ? *dividers.work : dividers.lie;
  const bool again = dividers.stepped && dividers.stepped->leg == id;
  const bool backwards = again ? dividers.stepped->from == leg->to
                               : (place.on_a && *place.on_a == leg->to) || (place.on_b && *place.on_b == leg->to && place.on_a != leg->from);
  SteppedLeg stepped{.leg = id, .from = backwards ? leg->to : leg->from, .towards = backwards ? leg->from : leg->to, .counted = steps.has_value()};
  const SheetPoint from = place_of(session, stepped.from), towards = place_of(session, stepped.towards);
  const double step_mm = opening_mm(place.points);
  const Result<SteppedLine> line = step_along(from, towards, step_mm);
  if (!line) return line.problem();
  stepped.steps = steps.value_or(line->steps);
  stepped.rest_mm = line->rest_mm;

  // They come to stand on the last step; where not one fits, on the first mark, pointing along.
  DividersPlace lie{.points = {from, from + step_mm / distance_mm(from, towards) * (towards - from)}, .on_a = stepped.from};
  const std::vector<SheetPoint> points = steps_towards(from, towards, step_mm, stepped.steps);
  if (points.size() > 1) lie = {.points = {points[points.size() - 2], points.back()}};
  lie.hinge_left = hinge_is_left(lie.points, middle_of_sheet(session));
  dividers = {.lie = lie, .stepped = stepped};
  session.touch();
  return Done{};
}

std::vector<SheetPoint> steps_of(const Session& session, const DividersOnSheet& dividers) {
  if (!dividers.stepped) return {};
  const SteppedLeg& stepped = *dividers.stepped;
  return steps_towards(place_of(session, stepped.from), place_of(session, stepped.towards), opening_mm(dividers.lie.points), stepped.steps);
}

void lift_dividers(Session& session) {
  session.desk.dividers.reset();
  session.desk.first_point.reset();
  session.touch();
}

SheetPoint hinge_of(const Session& session, const DividersOnSheet& dividers) {
  const double px_per_mm = session.desk.camera.px_per_mm;
  const double off_px = std::clamp(k_hinge_off_part * opening_mm(dividers.lie.points) * px_per_mm, k_least_hinge_off_px, k_most_hinge_off_px);
  return hinge(dividers.lie.points, dividers.lie.hinge_left, off_px / px_per_mm);
}

void settle_dividers(Session& session, bool other_sheet) {
  Desk& desk = session.desk;
  if (other_sheet) lift_dividers(session);
  const auto settle_mark = [&](std::optional<MarkId>& on, SheetPoint point) {
    if (on && (!session.document().marks.find(*on) || distance_mm(place_of(session, *on), point) > k_same_place_mm)) on.reset();
  };
  if (desk.first_point) settle_mark(desk.first_point->on, desk.first_point->at);
  if (!desk.dividers) return;
  for (DividersPlace* place : {&desk.dividers->lie, desk.dividers->work ? &*desk.dividers->work : nullptr}) {
    if (!place) continue;
    settle_mark(place->on_a, place->points.a);
    settle_mark(place->on_b, place->points.b);
  }
  if (desk.dividers->stepped) {
    const Leg* leg = session.document().legs.find(desk.dividers->stepped->leg);
    const SteppedLeg& stepped = *desk.dividers->stepped;
    const bool same = leg && ((leg->from == stepped.from && leg->to == stepped.towards) || (leg->to == stepped.from && leg->from == stepped.towards));
    if (!same) desk.dividers->stepped.reset();
  }
}

}  // namespace fogsheet
