#include "core/passage/speed_time_distance.h"

namespace fogsheet {

namespace {

constexpr double k_longest_distance_nm = 100'000;  // several times round the earth; named only in the words of a refusal

Problem speed_fault(double speed_kn) { return {.fault = Fault::speed_not_positive, .numbers = {speed_kn}}; }
Problem time_fault(double hours) { return {.fault = Fault::time_not_positive, .numbers = {hours}}; }
Problem distance_fault(double distance_nm) {
  return {.fault = Fault::number_out_of_range, .texts = {"distance"}, .numbers = {distance_nm, 0, k_longest_distance_nm}};
}
bool is_distance(double distance_nm) { return distance_nm >= 0 && distance_nm <= k_longest_distance_nm; }

}  // namespace

// The comparisons are such that what is no number fails them.
Result<double> distance_run_nm(double speed_kn, double hours) {
  if (!(speed_kn > 0)) return speed_fault(speed_kn);
  if (!(hours >= 0)) return time_fault(hours);
  return speed_kn * hours;
}

Result<double> speed_needed_kn(double distance_nm, double hours) {
  if (!is_distance(distance_nm)) return distance_fault(distance_nm);
  if (!(hours > 0)) return time_fault(hours);
  return distance_nm / hours;
}

Result<double> hours_taken(double distance_nm, double speed_kn) {
  if (!is_distance(distance_nm)) return distance_fault(distance_nm);
  if (!(speed_kn > 0)) return speed_fault(speed_kn);
  return distance_nm / speed_kn;
}

Result<Instant> time_of_arrival(Instant start, double distance_nm, double speed_kn) {
  const Result<double> hours = hours_taken(distance_nm, speed_kn);
  if (!hours.ok()) return hours.problem();
  if (!(*hours <= k_longest_run_hours)) return Problem{.fault = Fault::leg_takes_too_long, .numbers = {k_longest_run_hours}};
  return Instant{start.seconds + nearest_instant(*hours * k_seconds_per_hour).seconds};
}

}  // namespace fogsheet
