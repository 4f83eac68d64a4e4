#include "core/passage/reckoning.h"

#include <cmath>

namespace fogsheet {

namespace {

Result<Position> moved(Position from, PlaneVector run_nm) { return rhumb_direct(from, direction_of(run_nm), length_of(run_nm)); }

// @param logged the run through the water is multiplied by this.
Result<Reckoned> reckoned_after(Position start, const LegPlan& plan, const LegRun& run, double hours, double logged) {
  const Result<RunPoint> point = point_after(plan, run, hours);
  if (!point.ok()) return point.problem();
  const PlaneVector through_water = logged * point->through_water, over_ground = through_water + point->stream;
  const Result<Position> dead_reckoning = moved(start, through_water);
  if (!dead_reckoning.ok()) return dead_reckoning.problem();
  const Result<Position> estimated = moved(start, over_ground);
  if (!estimated.ok()) return estimated.problem();
  const PlaneVector ahead = along(plan.track);
  return Reckoned{.at_s = run.departure_s + hours * k_seconds_per_hour,
                  .run_nm = logged * plan.speed_kn * hours,
                  .along_nm = dot(ahead, over_ground),
                  .across_nm = to_starboard(ahead, over_ground),
                  .dead_reckoning = *dead_reckoning,
                  .estimated = *estimated};
}

std::optional<Problem> fault_of_run(const LegPlan& plan, double run_nm) {
  const double longest_nm = plan.speed_kn * k_longest_leg_hours;
  if (run_nm >= 0 && run_nm <= longest_nm) return std::nullopt;
  return Problem{.fault = Fault::number_out_of_range, .texts = {"run by log"}, .numbers = {run_nm, 0, longest_nm}};
}

}  // namespace

Result<Reckoned> reckoned_at(Position start, const LegPlan& plan, const LegRun& run, double at_s) {
  return reckoned_after(start, plan, run, (at_s - run.departure_s) / k_seconds_per_hour, 1);
}

Result<Reckoned> reckoned_at_log(Position start, const LegPlan& plan, const LegRun& run, double run_nm) {
  if (std::optional<Problem> fault = fault_of_run(plan, run_nm)) return *fault;
  return reckoned_after(start, plan, run, run_nm / plan.speed_kn, 1);
}

Result<Reckoned> reckoned_by_log(Position start, const LegPlan& plan, const LegRun& run, double at_s, double run_nm) {
  if (std::optional<Problem> fault = fault_of_run(plan, run_nm)) return *fault;
  const double hours = (at_s - run.departure_s) / k_seconds_per_hour, planned_nm = plan.speed_kn * hours;
  // In no time there is no run, whatever the log says.
  return reckoned_after(start, plan, run, hours, planned_nm > 0 ? run_nm / planned_nm : 1);
}

Result<std::vector<Reckoned>> reckoned_every(Position start, const LegPlan& plan, const LegRun& run, int minutes, const Zone& zone) {
  constexpr int k_most_minutes = 1440;
  if (minutes < 1 || minutes > k_most_minutes)
    return Problem{.fault = Fault::number_out_of_range, .texts = {"number of minutes"}, .numbers = {static_cast<double>(minutes), 1, k_most_minutes}};
  const double step_s = minutes * double{k_seconds_per_minute};
  const LocalTime begin = local_time({static_cast<std::int64_t>(std::floor(run.departure_s))}, zone);
  double midnight_s = static_cast<double>(instant_of(begin.date, {}, zone).seconds);
  std::vector<Reckoned> all;
  for (; midnight_s < run.arrival_s; midnight_s += k_seconds_per_day) {
    for (double of_day_s = 0; of_day_s < k_seconds_per_day; of_day_s += step_s) {
      const double at_s = midnight_s + of_day_s;
      if (at_s <= run.departure_s || at_s >= run.arrival_s) continue;
      const Result<Reckoned> reckoned = reckoned_at(start, plan, run, at_s);
      if (!reckoned.ok()) return reckoned.problem();
      all.push_back(*reckoned);
    }
  }
  return all;
}

Result<Position> estimated_position(Position from, Motion through_water, Stream stream, double hours) {
  if (!(hours >= 0)) return Problem{.fault = Fault::time_not_positive, .numbers = {hours}};
  return moved(from, hours * (velocity_kn(through_water) + velocity_kn(stream)));
}

Result<Stream> set_and_drift(Position from, Motion through_water, Position fix, double hours) {
  return set_and_drift(rhumb_inverse(from, fix), through_water, hours);
}

Result<Stream> set_and_drift(RhumbLeg over_ground, Motion through_water, double hours) {
  if (!(hours > 0)) return Problem{.fault = Fault::time_not_positive, .numbers = {hours}};
  return stream_between(through_water, motion_of(1 / hours * along(over_ground.course, over_ground.distance_nm)));
}

}  // namespace fogsheet
