#include "shell/direction.h"

#include <algorithm>
#include <cmath>

#include "core/directions/direction_figures.h"
#include "core/document/actions.h"
#include "core/earth/rhumb.h"
#include "core/instruments/rose_reading.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

constexpr double k_same_direction_deg = 1e-7;
constexpr double k_least_line_mm = 3;
constexpr double k_short_line_mm = 20;   // less of the edge than this ahead of the mark, and the line runs past its end
constexpr double k_usual_line_mm = 40;
constexpr double k_clear_of_grip_mm = 9;  // the line's own handle beside the edge's
constexpr double k_within_border_mm = 0.05;  // more than a position is rounded by
constexpr double k_beyond_ends_mm = 2;   // a mark this far past the ends still takes the edge

/// How far one can go from a point within the neat line before crossing it.
double room_mm(const SheetRect& frame, SheetPoint from, SheetVector run) {
  double room = frame.width_mm() + frame.height_mm();
  if (run.x_mm > 0) room = std::min(room, (frame.right_mm - from.x_mm) / run.x_mm);
  if (run.x_mm < 0) room = std::min(room, (frame.left_mm - from.x_mm) / run.x_mm);
  if (run.y_mm > 0) room = std::min(room, (frame.bottom_mm - from.y_mm) / run.y_mm);
  if (run.y_mm < 0) room = std::min(room, (frame.top_mm - from.y_mm) / run.y_mm);
  return std::max(0.0, room - k_within_border_mm);
}

/// By the variation that serves the edge, or the first rose where none is on.
Result<TrueDirection> true_direction_for_edge(const Session& session, double deg, Reference reference) {
  const bool first_rose = !session.desk.edge && !session.facts().roses.empty();
  return to_true_direction(session, deg, reference, first_rose ? session.variation_of(session.facts().roses.front().id) : session.variation_of_edge());
}

}  // namespace

Result<TrueDirection> to_true_direction(const Session& session, double deg, Reference reference, const VariationInUse& variation) {
  if (!(deg >= 0 && deg < 360)) return Problem{.fault = Fault::direction_out_of_range, .numbers = {deg}};
  if (reference == Reference::true_north) return TrueDirection(deg);
  if (!variation.used) return variation.problem ? *variation.problem : Problem{.fault = Fault::reference_not_usable, .texts = {"magnetic"}};
  if (reference == Reference::magnetic) return to_true(MagneticDirection(deg), *variation.used);
  const std::optional<Deviation> deviation = session.facts().card ? session.facts().card->at(CompassDirection(deg)) : std::nullopt;
  if (!deviation) return Problem{.fault = Fault::reference_not_usable, .texts = {"compass"}};
  return to_true(to_magnetic(CompassDirection(deg), {.deg = round_correction_deg(deviation->deg, session.settings.rounding)}), *variation.used);
}

Result<Done> set_direction(Session& session, double deg, Reference reference) {
  const Result<TrueDirection> to = true_direction_for_edge(session, deg, reference);
  if (!to) return to.problem();
  StraightEdge edge;
  std::optional<DirectionSet> before = session.desk.direction;
  if (session.desk.edge) {
    edge = *session.desk.edge;
    const RoseInReach* rose = settled_rose(session, edge);
    const bool at_mark = before && before->through;
    edge = turned(edge, rose ? rose->centre : at_mark ? place_of(session, *before->through) : midpoint(edge.a, edge.b), *to);
  } else {
    if (session.facts().roses.empty()) return Problem{.fault = Fault::no_rose};
    constexpr double k_past_ring = 1.3;
    const RoseInReach& rose = session.facts().roses.front();
    const SheetVector half = k_past_ring * rose.radius_mm * towards(to->deg());
    edge = {.a = rose.centre - half, .b = rose.centre + half, .settled_on = rose.id};
  }
  DirectionSet direction{.deg = deg, .reference = reference, .set_here = edge};
  if (before && before->through) {
    // It stays at the mark it was slid to, and its ghost turns on the rose.
    if (const RoseInReach* rose = settled_rose(session, before->set_here)) direction.set_here = turned(before->set_here, rose->centre, *to);
    direction.through = before->through;
  }
  session.desk.direction.reset();
  session.set_edge(edge);
  session.desk.direction = direction;
  return Done{};
}

const VariationInUse& variation_of_direction(const Session& session) {
  const std::optional<DirectionSet>& direction = session.desk.direction;
  return direction && direction->set_here.settled_on ? session.variation_of(*direction->set_here.settled_on) : session.variation_of_edge();
}

bool lies_as_set(const StraightEdge& edge, const DirectionSet& direction) {
  return std::abs(reduce_difference_deg(bearing(edge).deg() - bearing(direction.set_here).deg())) < k_same_direction_deg;
}

StraightEdge slid_to_mark(Session& session, const StraightEdge& edge) {
  if (!session.desk.direction) return edge;
  DirectionSet& direction = *session.desk.direction;
  const std::optional<MarkId> before = direction.through;
  direction.through.reset();
  StraightEdge slid = edge;
  if (!edge.settled_on) {
    const double reach_mm = k_line_reach_px / session.desk.camera.px_per_mm;
    double best_mm = reach_mm;
    const std::vector<SheetPoint>& places = session.mark_places().in_order;
    std::size_t i = 0;
    for (const Mark& mark : session.document().marks) {
      const SheetPoint at = places[i++];
      const double across = std::abs(across_mm(edge, at)), run = dot(at - edge.a, along(edge));
      if (across > best_mm || run < -k_beyond_ends_mm || run > distance_mm(edge.a, edge.b) + k_beyond_ends_mm) continue;
      best_mm = across;
      direction.through = mark.id;
      slid = slid_onto(edge, at);
    }
  }
  if (direction.through != before) {
    direction.line_mm.reset();
    session.direction_form.length.clear();
    session.direction_form.length_error.clear();
  }
  return slid;
}

Result<Done> nudge_edge(Session& session, double by_deg) {
  const StraightEdge edge = *session.desk.edge;
  const double nudged_deg = session.nudged_deg + by_deg;
  if (const std::optional<DirectionSet> was = session.desk.direction) {
    const double deg = reduce_direction_deg(was->deg + by_deg);
    const Result<Done> set = set_direction(session, deg, was->reference);
    if (!set) return set;
    session.direction_form.text = direction_figures(deg, Rounding::tenths);
  } else {
    const RoseInReach* rose = settled_rose(session, edge);
    session.set_edge(turned(edge, rose ? rose->centre : midpoint(edge.a, edge.b), TrueDirection(reduce_direction_deg(bearing(edge).deg() + by_deg))));
  }
  session.nudged_deg = nudged_deg;
  return Done{};
}

void turn_direction_round(DirectionSet& direction) {
  direction.deg = reduce_direction_deg(direction.deg + 180);
  direction.set_here = turned_round(direction.set_here);
  direction.line_mm.reset();
}

std::optional<LineAlongEdge> line_along_edge(const Session& session) {
  const std::optional<DirectionSet>& direction = session.desk.direction;
  if (!direction || !direction->through || !session.desk.edge) return std::nullopt;
  const StraightEdge& edge = *session.desk.edge;
  const SheetPoint start = place_of(session, *direction->through);
  const SheetVector run = along(edge);
  const double ahead_mm = dot(edge.b - start, run);
  const double wanted_mm = direction->line_mm.value_or(ahead_mm < k_short_line_mm ? k_usual_line_mm : ahead_mm - k_clear_of_grip_mm);
  const double length = std::min(wanted_mm, room_mm(session.facts().projection->neat_line(), start, run));
  return LineAlongEdge{.from = *direction->through, .start = start, .end = start + length * run};
}

void take_line_end(Session& session, SheetPoint to) {
  const std::optional<LineAlongEdge> line = line_along_edge(session);
  if (!line) return;
  session.desk.direction->line_mm = std::max(k_least_line_mm, dot(to - line->start, along(*session.desk.edge)));
  session.direction_form.length.clear();
  session.direction_form.length_error.clear();
  session.touch();
}

Result<Done> set_line_length(Session& session, double distance_nm) {
  const std::optional<LineAlongEdge> line = line_along_edge(session);
  if (!line) return Problem{.fault = Fault::no_line_to_draw};
  const Projection& projection = *session.facts().projection;
  const SheetVector run = along(*session.desk.edge);
  const double room = room_mm(projection.neat_line(), line->start, run);
  const Position from = projection.to_position(line->start);
  const double least_nm = rhumb_inverse(from, projection.to_position(line->start + std::min(k_least_line_mm, room) * run)).distance_nm;
  const double most_nm = rhumb_inverse(from, projection.to_position(line->start + room * run)).distance_nm;
  if (!(distance_nm >= least_nm && distance_nm <= most_nm))
    return Problem{.fault = Fault::number_out_of_range, .texts = {"length"}, .numbers = {distance_nm, std::ceil(least_nm * 10) / 10, std::floor(most_nm * 10) / 10}};
  const Result<Position> end = rhumb_direct(from, bearing(*session.desk.edge), distance_nm);
  if (!end) return end.problem();
  session.desk.direction->line_mm = dot(projection.to_sheet(*end) - line->start, run);
  session.touch();
  return Done{};
}

Result<LegId> draw_line(Session& session) {
  const std::optional<LineAlongEdge> line = line_along_edge(session);
  if (!line || distance_mm(line->start, line->end) < k_least_line_mm) return Problem{.fault = Fault::no_line_to_draw};
  const Position end = session.facts().projection->to_position(line->end);
  const Document before = session.document();
  const Result<LegId> made = add_leg_to_new_turn(session.history(), line->from, {.name = words::unused_name(before, MarkKind::turn), .lat_deg = end.lat_deg, .lon_deg = end.lon_deg, .kind = MarkKind::turn});
  if (!made) return made.problem();
  session.settle_desk(before);
  // From now on the edge lies on a leg, as if it had been laid along it.
  session.desk.direction.reset();
  session.direction_form = {.reference = session.direction_form.reference};
  session.desk.laid_on = EdgeMarks{line->from, session.document().legs.find(*made)->to};
  session.touch();
  return *made;
}

std::optional<LegUnderEdge> leg_under_edge(const Session& session) {
  const std::optional<EdgeMarks>& laid = session.desk.laid_on;
  if (!laid || !session.desk.edge) return std::nullopt;
  std::optional<LegUnderEdge> found;
  for (const Leg& leg : session.document().legs) {
    if (leg.from == laid->from && leg.to == laid->to) return LegUnderEdge{.leg = leg.id};
    if (leg.from == laid->to && leg.to == laid->from) found = LegUnderEdge{.leg = leg.id, .backwards = true};
  }
  return found;
}

Result<Done> write_reading(Session& session, LegId leg, Reference ring) {
  if (!session.desk.edge || !settled_rose(session, *session.desk.edge)) return Problem{.fault = Fault::edge_not_settled};
  const Leg* found = session.document().legs.find(leg);
  if (!found) return Problem{.fault = Fault::leg_unknown, .texts = {std::to_string(leg.value)}};
  const std::optional<EdgeMarks>& laid = session.desk.laid_on;
  const bool along = laid && found->from == laid->from && found->to == laid->to, backwards = laid && found->from == laid->to && found->to == laid->from;
  if (!along && !backwards) return Problem{.fault = Fault::edge_on_no_leg};
  const RoseReading reading = read_rose(*session.desk.edge, session.variation_of_edge().value, session.settings.rounding);
  if (ring == Reference::compass || (ring == Reference::magnetic && !reading.on_magnetic_ring))
    return Problem{.fault = Fault::reference_not_usable, .texts = {words::reference_name(ring)}};
  const double shown_deg = round_direction_deg(ring == Reference::magnetic ? reading.on_magnetic_ring->deg() : reading.on_true_ring.deg(), session.settings.rounding);
  const Document before = session.document();
  const Result<Done> written = write_on_leg(session.history(), leg, reduce_direction_deg(backwards ? shown_deg + 180 : shown_deg), ring);
  if (written.ok()) session.settle_desk(before);
  return written;
}

void settle_direction(Session& session) {
  std::optional<DirectionSet>& direction = session.desk.direction;
  if (!direction) return;
  if (!session.desk.edge) return direction.reset();
  const bool there = direction->through && session.document().marks.find(*direction->through) &&
                     std::abs(across_mm(*session.desk.edge, place_of(session, *direction->through))) < 1e-6;
  if (!there) direction->through.reset();
  const RoseInReach* rose = settled_rose(session, direction->set_here);
  if (!rose || std::abs(across_mm(direction->set_here, rose->centre)) > 1e-6) direction->set_here.settled_on.reset();
}

}  // namespace fogsheet
