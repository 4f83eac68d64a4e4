#include "core/passage/leg_run.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogsheet {

namespace {

enum class Sense { forwards, backwards };

// A stretch of constant stream, hours from where the walk began, counted up in either sense.
struct Stretch {
  double begin_h = 0;
  double end_h = 0;
  const StreamPiece* piece = nullptr;
};

// Goes through the streams from a time on, or back from it.
class Walk {
 public:
  Walk(const StreamTimetable& streams, double at_s, Sense sense)
      : streams_(streams), at_s_(at_s), sense_(sense), index_(sense == Sense::forwards ? streams.index_at(at_s) : streams.index_before(at_s)) {}

  // The next stretch, cut off at k_longest_leg_hours; none past it.
  std::optional<Stretch> next() {
    if (reached_h_ >= k_longest_leg_hours) return std::nullopt;
    const StreamPiece& piece = streams_.pieces()[index_];
    const double end_h = (sense_ == Sense::forwards ? piece.to_s - at_s_ : at_s_ - piece.from_s) / k_seconds_per_hour;
    const Stretch stretch{.begin_h = reached_h_, .end_h = std::min(end_h, k_longest_leg_hours), .piece = &piece};
    reached_h_ = stretch.end_h;
    index_ = sense_ == Sense::forwards ? index_ + 1 : index_ - 1;  // past the ends only where the walk is over: they reach to infinity
    return stretch;
  }

  // Seconds since 1970.
  double time_s(double hours) const { return at_s_ + (sense_ == Sense::forwards ? hours : -hours) * k_seconds_per_hour; }

  Problem not_stemmed(const LegPlan& plan, const Stretch& stretch, double least_kn) const {
    const auto [from_s, to_s] = std::minmax({time_s(stretch.begin_h), time_s(stretch.end_h)});
    return {.fault = Fault::stream_not_stemmed, .numbers = {plan.speed_kn, least_kn, from_s, to_s}};
  }

 private:
  const StreamTimetable& streams_;
  double at_s_;
  Sense sense_;
  std::size_t index_;
  double reached_h_ = 0;
};

// On one heading the leg is done at the first time t with |leg - S(t)| = speed x t, S being what the stream has carried.
// S is a straight line on each stretch, so both sides squared are a quadratic there: a u^2 + 2 b u + c = 0 with u counted
// from the stretch's begin and c <= 0, for the boat is not there yet. Its first root, written so that nothing cancels:
std::optional<double> hours_into(PlaneVector to_go_nm, PlaneVector stream_kn, double speed_kn, double begin_h) {
  const double run_nm = speed_kn * begin_h;
  const double a = speed_kn * speed_kn - dot(stream_kn, stream_kn);
  const double b = speed_kn * run_nm + dot(to_go_nm, stream_kn);
  const double c = run_nm * run_nm - dot(to_go_nm, to_go_nm);
  if (c >= 0) return 0;
  const double discriminant = b * b - a * c;
  if (discriminant < 0) return std::nullopt;
  const double divisor = b + std::sqrt(discriminant);
  if (divisor <= 0) return std::nullopt;
  return -c / divisor;
}

// The least speed for which one heading's quadratic has a root on a stretch: |leg - S(t)| / t at its least there. With
// w = 1 / t that is the distance of the point w x (leg - S, run back to t = 0) from the stream, least at the foot of it.
double least_speed_on(const Stretch& stretch, PlaneVector to_go_nm) {
  const PlaneVector stream_kn = stretch.piece->velocity_kn;
  const PlaneVector from_start_nm = to_go_nm + stretch.begin_h * stream_kn;
  const double square = dot(from_start_nm, from_start_nm), foot = dot(from_start_nm, stream_kn);
  const double most = stretch.begin_h > 0 ? 1 / stretch.begin_h : std::numeric_limits<double>::infinity();
  const double w = square > 0 ? std::clamp(foot / square, 1 / stretch.end_h, most) : 1 / stretch.end_h;
  return length_of(w * from_start_nm - stream_kn);
}

Result<double> one_heading_hours(const LegPlan& plan, double at_s, Sense sense) {
  Walk walk(*plan.streams, at_s, sense);
  PlaneVector to_go_nm = along(plan.track, plan.distance_nm);
  double least_kn = std::numeric_limits<double>::infinity();
  while (const std::optional<Stretch> stretch = walk.next()) {
    const PlaneVector stream_kn = stretch->piece->velocity_kn;
    const double stretch_h = stretch->end_h - stretch->begin_h;
    const std::optional<double> into_h = hours_into(to_go_nm, stream_kn, plan.speed_kn, stretch->begin_h);
    if (into_h && *into_h <= stretch_h) return stretch->begin_h + *into_h;
    least_kn = std::min(least_kn, least_speed_on(*stretch, to_go_nm));
    to_go_nm = to_go_nm - stretch_h * stream_kn;
  }
  if (plan.distance_nm > k_longest_leg_hours * plan.speed_kn) return Problem{.fault = Fault::leg_takes_too_long, .numbers = {k_longest_leg_hours}};
  return walk.not_stemmed(plan, {.begin_h = 0, .end_h = k_longest_leg_hours}, least_kn);
}

Result<double> on_the_line_hours(const LegPlan& plan, double at_s, Sense sense) {
  Walk walk(*plan.streams, at_s, sense);
  const PlaneVector ahead = along(plan.track);
  double to_go_nm = plan.distance_nm;
  while (const std::optional<Stretch> stretch = walk.next()) {
    const PlaneVector stream_kn = stretch->piece->velocity_kn;
    const LineTriangle triangle = line_triangle(ahead, plan.speed_kn, stream_kn);
    if (!triangle.stemmed) return walk.not_stemmed(plan, *stretch, least_speed_kn(ahead, stream_kn));
    const double into_h = to_go_nm / triangle.speed_over_ground_kn, stretch_h = stretch->end_h - stretch->begin_h;
    if (into_h <= stretch_h) return stretch->begin_h + into_h;
    to_go_nm -= stretch_h * triangle.speed_over_ground_kn;
  }
  return Problem{.fault = Fault::leg_takes_too_long, .numbers = {k_longest_leg_hours}};
}

Result<double> hours_of(const LegPlan& plan, double at_s, Sense sense) {
  SHEET_CHECK(plan.streams, "a leg without streams, entered or not");
  if (!(plan.distance_nm > 0)) return Problem{.fault = Fault::leg_of_no_length};
  if (!(plan.speed_kn > 0)) return Problem{.fault = Fault::speed_not_positive, .numbers = {plan.speed_kn}};
  return plan.way == Way::one_heading ? one_heading_hours(plan, at_s, sense) : on_the_line_hours(plan, at_s, sense);
}

// What is held through the water on a stretch, and the speeds it makes. Empty where the stream holds the boat on her line.
struct Held {
  TrueDirection water_track;
  PlaneVector through_water_kn;
  PlaneVector over_ground_kn;
};

std::optional<Held> held_on(const LegPlan& plan, PlaneVector ahead, const Held& one_heading, PlaneVector stream_kn) {
  if (plan.way == Way::one_heading)
    return Held{.water_track = one_heading.water_track,
                .through_water_kn = one_heading.through_water_kn,
                .over_ground_kn = one_heading.through_water_kn + stream_kn};
  const LineTriangle triangle = line_triangle(ahead, plan.speed_kn, stream_kn);
  if (!triangle.stemmed) return std::nullopt;
  const PlaneVector over_ground_kn = triangle.speed_over_ground_kn * ahead;
  return Held{.water_track = TrueDirection(plan.track.deg() + crab_deg(triangle)),
              .through_water_kn = over_ground_kn - stream_kn,
              .over_ground_kn = over_ground_kn};
}

Held on_heading(TrueDirection water_track, double speed_kn) {
  return {.water_track = water_track, .through_water_kn = along(water_track, speed_kn), .over_ground_kn = {}};
}

PlaneVector carried_nm(const LegPlan& plan, double departure_s, double hours) {
  Walk walk(*plan.streams, departure_s, Sense::forwards);
  PlaneVector carried;
  for (std::optional<Stretch> stretch = walk.next(); stretch && stretch->begin_h < hours; stretch = walk.next())
    carried = carried + (std::min(stretch->end_h, hours) - stretch->begin_h) * stretch->piece->velocity_kn;
  return carried;
}

}  // namespace

Result<LegRun> run_leg(const LegPlan& plan, double departure_s) {
  const Result<double> hours = hours_of(plan, departure_s, Sense::forwards);
  if (!hours.ok()) return hours.problem();
  const PlaneVector ahead = along(plan.track), stream_nm = carried_nm(plan, departure_s, *hours);
  LegRun run{.departure_s = departure_s, .arrival_s = departure_s + *hours * k_seconds_per_hour, .hours = *hours};
  run.water_track = direction_of(plan.distance_nm * ahead - stream_nm);
  run.through_water_nm = plan.speed_kn * *hours;
  run.speed_over_ground_kn = plan.distance_nm / *hours;
  run.net_stream = stream_of(1 / *hours * stream_nm);
  run.stream_entered = plan.streams->entered();

  const Held one_heading = on_heading(run.water_track, plan.speed_kn);
  Walk walk(*plan.streams, departure_s, Sense::forwards);
  PlaneVector ground_nm;
  for (std::optional<Stretch> stretch = walk.next(); stretch && stretch->begin_h < *hours; stretch = walk.next()) {
    const StreamPiece& piece = *stretch->piece;
    const double end_h = std::min(stretch->end_h, *hours);
    const std::optional<Held> held = held_on(plan, ahead, one_heading, piece.velocity_kn);
    SHEET_CHECK(held, "a leg came to its end through a stream that holds the boat");
    ground_nm = ground_nm + (end_h - stretch->begin_h) * held->over_ground_kn;
    run.pieces.push_back({.from_s = walk.time_s(stretch->begin_h),
                          .to_s = walk.time_s(end_h),
                          .water_track = held->water_track,
                          .stream_kn = piece.velocity_kn,
                          .stream_entered = piece.entered,
                          .along_nm = dot(ahead, ground_nm),
                          .across_nm = to_starboard(ahead, ground_nm)});
    run.speed_at_arrival_kn = dot(ahead, held->over_ground_kn);
    if (run.stream_entered && !piece.entered && !run.gap) {
      run.gap = piece;
      run.gap->from_s = run.pieces.back().from_s;
      run.gap->to_s = run.pieces.back().to_s;
    }
  }
  return run;
}

Result<double> departure_for(const LegPlan& plan, double arrival_s) {
  const Result<double> hours = hours_of(plan, arrival_s, Sense::backwards);
  if (!hours.ok()) return hours.problem();
  return arrival_s - *hours * k_seconds_per_hour;
}

Result<double> departure_for(std::span<const LegPlan> legs, double arrival_s) {
  double at_s = arrival_s;
  for (std::size_t i = legs.size(); i-- > 0;) {
    const Result<double> departure = departure_for(legs[i], at_s);
    if (!departure.ok()) return departure.problem();
    at_s = *departure;
  }
  return at_s;
}

Result<RunPoint> point_after(const LegPlan& plan, const LegRun& run, double hours) {
  if (!(hours >= 0)) return Problem{.fault = Fault::time_before_departure, .numbers = {-hours}};
  if (hours > k_longest_leg_hours) return Problem{.fault = Fault::leg_takes_too_long, .numbers = {k_longest_leg_hours}};
  Walk walk(*plan.streams, run.departure_s, Sense::forwards);
  const PlaneVector ahead = along(plan.track);
  const Held one_heading = on_heading(run.water_track, plan.speed_kn);
  RunPoint point;
  for (std::optional<Stretch> stretch = walk.next(); stretch && stretch->begin_h < hours; stretch = walk.next()) {
    const double stretch_h = std::min(stretch->end_h, hours) - stretch->begin_h;
    const PlaneVector stream_kn = stretch->piece->velocity_kn;
    const std::optional<Held> held = held_on(plan, ahead, one_heading, stream_kn);
    if (!held) return walk.not_stemmed(plan, *stretch, least_speed_kn(ahead, stream_kn));
    point.through_water = point.through_water + stretch_h * held->through_water_kn;
    point.stream = point.stream + stretch_h * stream_kn;
  }
  return point;
}

}  // namespace fogsheet
