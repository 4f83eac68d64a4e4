// Time and speed, the triangle of the stream, estimated positions.
#include "core/earth/sailings.h"
#include "core/passage/pass_mark.h"
#include "core/passage/reckoning.h"
#include "core/passage/speed_time_distance.h"
#include "tests/values/kinds.h"

namespace fogsheet::values {

namespace {

// Rows with a time of day alone are of no day in particular.
constexpr Date k_any_day{.year = 2026, .month = 6, .day = 21};

TrueDirection direction(const Inputs& in, const char* name) { return TrueDirection(in.number(name)); }
Stream stream(const Inputs& in) { return {.set = direction(in, "set_true_deg"), .drift_kn = in.number("drift_kn")}; }
Motion through_water(const Inputs& in) { return {.course = direction(in, "course_true_deg"), .speed_kn = in.number("speed_kn")}; }

Position place(const Inputs& in, const std::string& name) {
  return {.lat_deg = in.number(name + "_lat_deg"), .lon_deg = in.number(name + "_lon_deg")};
}

Instant time_of_day(const Inputs& in, const char* name) {
  const Result<ClockTime> time = parse_clock_time(in.text(name));
  if (!time.ok()) throw RowError{std::string("no time ") + name};
  return instant_of(k_any_day, *time, {});
}

// From time1 to time2, the next day where that is the earlier one on the clock.
double hours_between(const Inputs& in) {
  const std::int64_t apart_s = time_of_day(in, "time2").seconds - time_of_day(in, "time1").seconds;
  return static_cast<double>(apart_s < 0 ? apart_s + k_seconds_per_day : apart_s) / k_seconds_per_hour;
}

std::string clock(Instant instant) { return clock_figures(instant, {}, k_any_day).figures; }

Outputs course_and_speed(const char* course, TrueDirection direction, const char* speed, double speed_kn) {
  return {{course, in_full(direction.deg())}, {speed, in_full(speed_kn)}};
}

Outputs to_steer(const Inputs& in) {
  const auto found = course_to_steer(direction(in, "track_true_deg"), in.number("speed_through_water_kn"), stream(in));
  if (!found.ok()) return {{"course_to_steer_true_deg", "none"}, {"speed_made_good_kn", "none"}};
  return course_and_speed("course_to_steer_true_deg", found->water_track, "speed_made_good_kn", found->speed_over_ground_kn);
}

Outputs course_made_good(const Inputs& in) {
  const Motion found = made_good(through_water(in), stream(in));
  return course_and_speed("course_made_good_true_deg", found.course, "speed_made_good_kn", found.speed_kn);
}

Outputs for_track_and_speed(const Inputs& in) {
  const Motion found = through_water_for({.course = direction(in, "track_true_deg"), .speed_kn = in.number("speed_made_good_kn")}, stream(in));
  return course_and_speed("course_to_steer_true_deg", found.course, "speed_through_water_kn", found.speed_kn);
}

// The rows are worked on the books' sphere, where a minute of latitude is a mile: so is the run between the fixes here. On
// WGS84 the set of such short drifts comes out up to half a degree otherwise (reckoning_test.cpp has it).
Outputs stream_found(const Inputs& in) {
  const CourseDistance run = mid_latitude_course(place(in, "fix1"), place(in, "fix2"));
  const Result<Stream> found = set_and_drift({.course = run.course, .distance_nm = run.distance_nm}, through_water(in), hours_between(in));
  if (!found.ok()) return {{"set_true_deg", "none"}, {"drift_kn", "none"}};
  return course_and_speed("set_true_deg", found->set, "drift_kn", found->drift_kn);
}

Outputs position_found(const Inputs& in) {
  const Result<Position> found = estimated_position(place(in, "start"), through_water(in), stream(in), hours_between(in));
  if (!found.ok()) return {{"lat_deg", "none"}, {"lon_deg", "none"}};
  return {{"lat_deg", in_full(found->lat_deg)}, {"lon_deg", in_full(found->lon_deg)}};
}

Outputs arrival_time_of_day(const Inputs& in) {
  const double distance_nm = in.number("distance_nm"), speed_kn = in.number("speed_kn");
  const Result<double> hours = hours_taken(distance_nm, speed_kn);
  const Result<Instant> arrival = time_of_arrival(time_of_day(in, "start"), distance_nm, speed_kn);
  if (!hours.ok() || !arrival.ok()) return {{"minutes", "none"}, {"eta", "none"}};
  return {{"minutes", in_full(*hours * 60)}, {"eta", clock(*arrival)}};
}

Outputs distance_run(const Inputs& in) {
  const Result<double> found = distance_run_nm(in.number("speed_kn"), in.number("minutes") / 60);
  return {{"distance_nm", found.ok() ? in_full(*found) : "none"}};
}

Outputs arrival(const Inputs& in) {
  const Result<Instant> start = parse_iso_instant(in.text("start_iso"));
  if (!start.ok()) throw RowError{"no instant start_iso"};
  const Result<Instant> found = time_of_arrival(*start, in.number("distance_nm"), in.number("speed_kn"));
  return {{"eta_iso", found.ok() ? iso_instant(*found) : "none"}};
}

Outputs abeam(const Inputs& in) {
  const Side side = in.text("side") == "port" ? Side::port : Side::starboard;
  const auto found = pass_at_distance(direction(in, "bearing_deg"), in.number("distance_nm"), in.number("pass_abeam_nm"), side);
  const auto time = found.ok() ? time_of_arrival(time_of_day(in, "time"), found->run_nm, in.number("speed_kn")) : Result<Instant>(found.problem());
  if (!time.ok()) return {{"run_nm", "none"}, {"time_abeam", "none"}};
  return {{"run_nm", in_full(found->run_nm)}, {"time_abeam", clock(*time)}};
}

}  // namespace

KindTable passage_kinds() {
  return {{"course-to-steer", to_steer},
          {"course-made-good", course_made_good},
          {"course-and-speed-for-track-and-smg", for_track_and_speed},
          {"set-and-drift", stream_found},
          {"estimated-position", position_found},
          {"arrival-time-of-day", arrival_time_of_day},
          {"speed-time-distance", distance_run},
          {"eta", arrival},
          {"pass-at-distance", abeam}};
}

}  // namespace fogsheet::values
