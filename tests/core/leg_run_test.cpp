#include "core/passage/leg_run.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_hour_s = k_seconds_per_hour;
constexpr double k_start_s = 1'782'000'000.25;  // some time in 2026, off the whole second
constexpr double k_metre_nm = 1 / k_metres_per_nm;

// High waters 12 h 25 min apart from before the start on, and random rows.
TidalStreams random_table(Random& random, double most_drift_kn) {
  TidalStreams streams{.kind = TidalStreams::Kind::by_hours, .steady = {}, .hours = {}, .high_waters = {}};
  for (int hour = -k_stream_hours; hour <= k_stream_hours; ++hour)
    streams.hours.push_back({.hour = hour, .stream = {.set = TrueDirection(random.uniform(0, 360)), .drift_kn = random.uniform(0, most_drift_kn)}});
  const std::int64_t first = static_cast<std::int64_t>(k_start_s) - random.whole(86'400, 130'000);
  for (int i = 0; i < 12; ++i) streams.high_waters.push_back({first + i * 44'700});
  return streams;
}

// The stream at a time by the rule itself, knowing nothing of pieces.
PlaneVector stream_at(const TidalStreams& streams, double at_s) {
  double nearest_s = 1e12;
  for (const Instant high_water : streams.high_waters)
    if (std::abs(at_s - static_cast<double>(high_water.seconds)) < std::abs(nearest_s)) nearest_s = at_s - static_cast<double>(high_water.seconds);
  const int hour = static_cast<int>(std::floor(nearest_s / k_hour_s + 0.5));
  return velocity_kn(streams.hours.at(static_cast<std::size_t>(hour + k_stream_hours)).stream);
}

LegPlan random_leg(Random& random, const StreamTimetable& streams, Way way) {
  return {.track = TrueDirection(random.uniform(0, 360)),
          .distance_nm = random.uniform(0.3, 40),
          .speed_kn = random.uniform(3.5, 8),
          .way = way,
          .streams = &streams};
}

StreamTimetable steady(double set_deg, double drift_kn) {
  return StreamTimetable(
      {.kind = TidalStreams::Kind::steady, .steady = {.set = TrueDirection(set_deg), .drift_kn = drift_kn}, .hours = {}, .high_waters = {}});
}

}  // namespace

TEST_CASE("a leg equals a fine numerical integration to a metre for each hour") {
  Random random(88);
  constexpr double k_step_s = 0.1;
  for (const Way way : {Way::one_heading, Way::hour_by_hour}) {
    for (int i = 0; i < 12; ++i) {
      const TidalStreams streams = random_table(random, 3);
      const StreamTimetable table(streams);
      const LegPlan plan = random_leg(random, table, way);
      const LegRun run = run_leg(plan, k_start_s).value();
      CAPTURE(i);
      REQUIRE(run.hours == doctest::Approx((run.arrival_s - run.departure_s) / k_hour_s));
      CHECK(run.pieces.front().from_s == run.departure_s);
      CHECK(std::abs(run.pieces.back().to_s - run.arrival_s) <= 1e-5);
      PlaneVector at_nm;
      std::size_t piece = 0;
      for (double t_s = 0; piece < run.pieces.size();) {
        const double end_s = run.pieces[piece].to_s - run.departure_s, step_s = std::min(k_step_s, end_s - t_s);
        if (step_s > 0) {
          const PlaneVector stream = stream_at(streams, run.departure_s + t_s + step_s / 2);
          double heading_deg = run.water_track.deg();
          if (way == Way::hour_by_hour) {
            // The law of sines in the triangle, with the angle between stream and track.
            const double sine = length_of(stream) * std::sin((direction_of(stream).deg() - plan.track.deg()) * k_degree_rad) / plan.speed_kn;
            heading_deg = plan.track.deg() - std::asin(sine) / k_degree_rad;
          }
          at_nm = at_nm + step_s / k_hour_s * (along(TrueDirection(heading_deg), plan.speed_kn) + stream);
        }
        t_s += step_s;
        if (t_s < end_s) continue;
        const RunPiece& here = run.pieces[piece++];
        const double tolerance_nm = k_metre_nm * std::max(1.0, t_s / k_hour_s);
        CHECK(std::abs(dot(along(plan.track), at_nm) - here.along_nm) <= tolerance_nm);
        CHECK(std::abs(to_starboard(along(plan.track), at_nm) - here.across_nm) <= tolerance_nm);
        if (way == Way::hour_by_hour) CHECK(std::abs(here.across_nm) <= 1e-9);
      }
      CHECK(length_of(at_nm - along(plan.track, plan.distance_nm)) <= k_metre_nm * std::max(1.0, run.hours));
      CHECK(std::abs(run.pieces.back().along_nm - plan.distance_nm) <= 1e-9);
      CHECK(std::abs(run.pieces.back().across_nm) <= 1e-9);
      CHECK(run.stream_entered);
      CHECK_FALSE(run.gap);
    }
  }
}

TEST_CASE("a steady stream is the triangle, either way") {
  Random random(5);
  for (int i = 0; i < 500; ++i) {
    const Stream stream{.set = TrueDirection(random.uniform(0, 360)), .drift_kn = random.uniform(0, 3)};
    const StreamTimetable streams = steady(stream.set.deg(), stream.drift_kn);
    LegPlan plan = random_leg(random, streams, Way::one_heading);
    const CourseToSteer triangle = course_to_steer(plan.track, plan.speed_kn, stream).value();
    for (const Way way : {Way::one_heading, Way::hour_by_hour}) {
      plan.way = way;
      const LegRun run = run_leg(plan, k_start_s).value();
      CHECK(run.hours == doctest::Approx(plan.distance_nm / triangle.speed_over_ground_kn));
      CHECK(std::abs(reduce_difference_deg(run.water_track.deg() - triangle.water_track.deg())) <= 1e-7);
      CHECK(run.speed_at_arrival_kn == doctest::Approx(triangle.speed_over_ground_kn));
      CHECK(run.speed_over_ground_kn == doctest::Approx(triangle.speed_over_ground_kn));
      CHECK(run.net_stream.drift_kn == doctest::Approx(stream.drift_kn));
      CHECK(run.through_water_nm == doctest::Approx(plan.speed_kn * run.hours));
    }
  }
}

TEST_CASE("one heading is the first time the goal can be reached, and never later than staying on the line") {
  Random random(31);
  for (int i = 0; i < 300; ++i) {
    const TidalStreams rows = random_table(random, 5);  // at times faster than the boat
    const StreamTimetable table(rows);
    LegPlan plan = random_leg(random, table, Way::one_heading);
    const Result<LegRun> run = run_leg(plan, k_start_s);
    CAPTURE(i);
    REQUIRE(run.ok());
    PlaneVector carried_nm;
    constexpr double k_step_h = 1.0 / 120;
    for (double t_h = k_step_h; t_h < run->hours - 0.02; t_h += k_step_h) {
      carried_nm = carried_nm + k_step_h * stream_at(rows, k_start_s + (t_h - k_step_h / 2) * k_hour_s);
      // Half a step of the stream is what this sum may be off where the hour changes.
      CHECK(length_of(along(plan.track, plan.distance_nm) - carried_nm) >= plan.speed_kn * t_h - 0.25);
    }
    plan.way = Way::hour_by_hour;
    const Result<LegRun> on_line = run_leg(plan, k_start_s);
    if (on_line.ok()) CHECK(run->hours <= on_line->hours + 1e-9);
  }
}

TEST_CASE("the departure for an arrival leads back to it") {
  Random random(77);
  for (int i = 0; i < 400; ++i) {
    const StreamTimetable table(random_table(random, 3.2));  // the boat is always faster
    const Way way = i % 2 == 0 ? Way::one_heading : Way::hour_by_hour;
    const double arrival_s = k_start_s + random.uniform(0, 200'000);
    std::vector<LegPlan> legs;
    for (int leg = 0; leg < 3; ++leg) legs.push_back(random_leg(random, table, way));
    const double departure_s = departure_for(std::span<const LegPlan>(legs), arrival_s).value();
    double at_s = departure_s, a_minute_later_s = departure_s + 60;
    for (const LegPlan& leg : legs) {
      at_s = run_leg(leg, at_s)->arrival_s;
      a_minute_later_s = run_leg(leg, a_minute_later_s)->arrival_s;
    }
    CAPTURE(i);
    CHECK(std::abs(at_s - arrival_s) <= 0.01);  // s
    CHECK(a_minute_later_s > arrival_s);
  }
  CHECK(departure_for(std::span<const LegPlan>(), 5.0).value() == 5);
}

TEST_CASE("a stream that can't be stemmed says when, and at what speed it could be") {
  // Hour by hour: slack until half past, then four knots against.
  TidalStreams rows{.kind = TidalStreams::Kind::by_hours, .steady = {}, .hours = {}, .high_waters = {{0}}};
  for (int hour = -k_stream_hours; hour <= k_stream_hours; ++hour)
    rows.hours.push_back({.hour = hour, .stream = {.set = TrueDirection(180), .drift_kn = hour == 1 ? 4.0 : 0.0}});
  const StreamTimetable table(rows);
  LegPlan plan{.track = TrueDirection(0), .distance_nm = 5, .speed_kn = 3, .way = Way::hour_by_hour, .streams = &table};
  const Result<LegRun> held = run_leg(plan, 0);
  REQUIRE_FALSE(held.ok());
  CHECK(held.problem().fault == Fault::stream_not_stemmed);
  CHECK(held.problem().numbers[1] == doctest::Approx(4));
  CHECK(held.problem().numbers[2] == 0.5 * k_hour_s);
  CHECK(held.problem().numbers[3] == 1.5 * k_hour_s);
  const Result<double> back = departure_for(plan, 2 * k_hour_s);
  REQUIRE_FALSE(back.ok());
  CHECK(back.problem().numbers[2] == 0.5 * k_hour_s);
  CHECK(back.problem().numbers[3] == 1.5 * k_hour_s);
  plan.speed_kn = 4.001;
  CHECK(run_leg(plan, 0).ok());
  // On one heading the boat gets there all the same, with the ebb behind her 4 nm longer: 3 t = 5 + 4.
  plan.speed_kn = 3;
  plan.way = Way::one_heading;
  CHECK(run_leg(plan, 0)->hours == doctest::Approx(3));
}

TEST_CASE("the least speed on one heading is just enough") {
  Random random(63);
  int held_count = 0;
  for (int i = 0; i < 300; ++i) {
    TidalStreams rows = random_table(random, 3);
    for (StreamHour& row : rows.hours) row.stream.set = TrueDirection(random.uniform(150, 210));
    const StreamTimetable table(rows);
    LegPlan plan{.track = TrueDirection(0),
                 .distance_nm = random.uniform(1, 30),
                 .speed_kn = random.uniform(0.3, 1.6),
                 .way = Way::one_heading,
                 .streams = &table};
    const Result<LegRun> run = run_leg(plan, k_start_s);
    if (run.ok() || run.problem().fault != Fault::stream_not_stemmed) continue;
    ++held_count;
    const double least_kn = run.problem().numbers[1];
    CAPTURE(i);
    plan.speed_kn = least_kn * 1.0001;
    CHECK(run_leg(plan, k_start_s).ok());
    plan.speed_kn = least_kn * 0.9999;
    CHECK_FALSE(run_leg(plan, k_start_s).ok());
  }
  CHECK(held_count > 100);
}

TEST_CASE("no stream entered is still water and says so; a gap is named") {
  const StreamTimetable none{TidalStreams{}};
  LegPlan plan{.track = TrueDirection(77), .distance_nm = 10, .speed_kn = 5, .way = Way::one_heading, .streams = &none};
  for (const Way way : {Way::one_heading, Way::hour_by_hour}) {
    plan.way = way;
    const LegRun run = run_leg(plan, 0).value();
    CHECK(run.hours == doctest::Approx(2));
    CHECK(std::abs(run.water_track.deg() - 77) <= 1e-9);
    CHECK_FALSE(run.stream_entered);
    CHECK_FALSE(run.gap);
    CHECK_FALSE(run.pieces.front().stream_entered);
  }
  TidalStreams rows{.kind = TidalStreams::Kind::by_hours, .steady = {}, .hours = {{.hour = 0, .stream = {}}}, .high_waters = {{0}}};
  const StreamTimetable table(rows);
  plan.streams = &table;
  const LegRun run = run_leg(plan, 0).value();
  REQUIRE(run.gap);
  CHECK(run.gap->hour == 1);
  CHECK(run.gap->from_s == 0.5 * k_hour_s);
  CHECK(run.stream_entered);
}

TEST_CASE("legs that can't be run are refused") {
  const StreamTimetable none{TidalStreams{}};
  const LegPlan good{.track = TrueDirection(10), .distance_nm = 10, .speed_kn = 5, .way = Way::one_heading, .streams = &none};
  for (const Way way : {Way::one_heading, Way::hour_by_hour}) {
    LegPlan plan = good;
    plan.way = way;
    plan.distance_nm = 0;
    CHECK(run_leg(plan, 0).problem().fault == Fault::leg_of_no_length);
    plan.distance_nm = 361;  // 72.2 h
    CHECK(run_leg(plan, 0).problem().fault == Fault::leg_takes_too_long);
    CHECK(departure_for(plan, 0).problem().fault == Fault::leg_takes_too_long);
    plan.distance_nm = 359;
    CHECK(run_leg(plan, 0).ok());
    for (const double speed_kn : {0.0, -2.0, std::nan("")}) {
      plan.speed_kn = speed_kn;
      CHECK(run_leg(plan, 0).problem().fault == Fault::speed_not_positive);
      CHECK(departure_for(plan, 0).problem().fault == Fault::speed_not_positive);
    }
  }
  const LegRun run = run_leg(good, 0).value();
  CHECK(point_after(good, run, -0.1).problem().fault == Fault::time_before_departure);
  CHECK(point_after(good, run, 73).problem().fault == Fault::leg_takes_too_long);
}
