#include "core/passage/reckoning.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_hour_s = k_seconds_per_hour;
constexpr double k_millimetre_nm = 0.001 / k_metres_per_nm;

double apart_nm(Position a, Position b) { return rhumb_inverse(a, b).distance_nm; }

StreamTimetable table() {
  TidalStreams streams{.kind = TidalStreams::Kind::by_hours, .steady = {}, .hours = {}, .high_waters = {{0}, {44'700}}};
  for (int hour = -k_stream_hours; hour <= k_stream_hours; ++hour)
    streams.hours.push_back({.hour = hour, .stream = {.set = TrueDirection(30 * hour), .drift_kn = 0.3 * (7 - std::abs(hour))}});
  return StreamTimetable(streams);
}

}  // namespace

TEST_CASE("reckoning begins at the leg's start, and the estimated position ends at its end") {
  const StreamTimetable streams = table();
  Random random(44);
  for (int i = 0; i < 200; ++i) {
    const Position start{.lat_deg = random.uniform(-70, 70), .lon_deg = random.uniform(-180, 180)};
    const Position end{.lat_deg = start.lat_deg + random.uniform(-0.3, 0.3), .lon_deg = start.lon_deg + random.uniform(-0.4, 0.4)};
    const RhumbLeg line = rhumb_inverse(start, end);
    const LegPlan plan{.track = line.course,
                       .distance_nm = line.distance_nm,
                       .speed_kn = 5.5,
                       .way = i % 2 == 0 ? Way::one_heading : Way::hour_by_hour,
                       .streams = &streams};
    const LegRun run = run_leg(plan, random.uniform(-20'000, 20'000)).value();
    CAPTURE(i);
    const Reckoned first = reckoned_at(start, plan, run, run.departure_s).value(), last = reckoned_at(start, plan, run, run.arrival_s).value();
    CHECK(apart_nm(first.estimated, start) <= k_millimetre_nm);
    CHECK(apart_nm(first.dead_reckoning, start) <= k_millimetre_nm);
    CHECK(apart_nm(last.estimated, end) <= 5 * k_millimetre_nm);
    CHECK(std::abs(last.run_nm - run.through_water_nm) <= 1e-9);
    // Dead reckoning is on the water track, as far as the log has run.
    const RhumbLeg water = rhumb_inverse(start, last.dead_reckoning);
    if (plan.way == Way::one_heading) CHECK(std::abs(water.distance_nm - last.run_nm) <= 1e-6);
    CHECK(std::abs(reduce_difference_deg(water.course.deg() - run.water_track.deg())) <= 1e-5);
    for (const RunPiece& piece : run.pieces) {
      const Reckoned there = reckoned_at(start, plan, run, piece.to_s).value();
      CHECK(std::abs(there.along_nm - piece.along_nm) <= 1e-8);
      CHECK(std::abs(there.across_nm - piece.across_nm) <= 1e-8);
    }
    CHECK(reckoned_at(start, plan, run, run.departure_s - 60).problem().fault == Fault::time_before_departure);
    CHECK(reckoned_at(start, plan, run, run.arrival_s + 600).ok());  // nothing was seen: she goes on
  }
}

TEST_CASE("the log overrules planned speed, the stream keeps to the clock") {
  const StreamTimetable streams = table();
  const Position start{.lat_deg = 44, .lon_deg = -31};
  const LegPlan plan{.track = TrueDirection(60), .distance_nm = 20, .speed_kn = 5, .way = Way::one_heading, .streams = &streams};
  const LegRun run = run_leg(plan, 0).value();
  const Reckoned planned = reckoned_at(start, plan, run, 2 * k_hour_s).value();
  CHECK(planned.run_nm == doctest::Approx(10));
  CHECK(reckoned_at_log(start, plan, run, 10)->at_s == doctest::Approx(2 * k_hour_s));
  const Reckoned slow = reckoned_by_log(start, plan, run, 2 * k_hour_s, 8).value();
  CHECK(slow.run_nm == doctest::Approx(8));
  CHECK(std::abs(apart_nm(start, slow.dead_reckoning) - 8) <= 1e-6);
  // Between dead reckoning and estimated position lies the same stream: to a metre in these few miles.
  const RhumbLeg a = rhumb_inverse(planned.dead_reckoning, planned.estimated), b = rhumb_inverse(slow.dead_reckoning, slow.estimated);
  CHECK(std::abs(a.distance_nm - b.distance_nm) <= 1e-3);
  CHECK(reckoned_by_log(start, plan, run, 0, 3)->run_nm == 0);
  CHECK(reckoned_at_log(start, plan, run, -1).problem().fault == Fault::number_out_of_range);
  CHECK(reckoned_by_log(start, plan, run, k_hour_s, 1e6).problem().fault == Fault::number_out_of_range);
}

TEST_CASE("every so many minutes is by the clock of the zone") {
  const StreamTimetable none{TidalStreams{}};
  const Position start{.lat_deg = 44, .lon_deg = -31};
  const LegPlan plan{.track = TrueDirection(60), .distance_nm = 7.5, .speed_kn = 5, .way = Way::one_heading, .streams = &none};
  const double departure_s = static_cast<double>(parse_iso_instant("2026-06-21T23:10:00Z")->seconds);
  const LegRun run = run_leg(plan, departure_s).value();  // to 0040
  const auto times = [&](int minutes, const Zone& zone) {
    const auto all = reckoned_every(start, plan, run, minutes, zone).value();
    std::string list;
    for (const Reckoned& one : all) list += iso_instant(nearest_instant(one.at_s)).substr(11, 5) + " ";
    return list;
  };
  CHECK(times(30, {}) == "23:30 00:00 00:30 ");
  CHECK(times(60, {.minutes_east = 330, .name = ""}) == "23:30 00:30 ");
  CHECK(times(1440, {.minutes_east = -60, .name = ""}).empty());
  CHECK(times(40, {}) == "23:20 00:00 ");  // the day's fortieth minutes; at the arrival there is the leg's end
  CHECK(reckoned_every(start, plan, run, 0, {}).problem().fault == Fault::number_out_of_range);
  CHECK(reckoned_every(start, plan, run, 1441, {}).problem().fault == Fault::number_out_of_range);
}

TEST_CASE("set and drift undo an estimated position") {
  Random random(2);
  for (int i = 0; i < 500; ++i) {
    const Position from{.lat_deg = random.uniform(-70, 70), .lon_deg = random.uniform(-180, 180)};
    const Motion water{.course = TrueDirection(random.uniform(0, 360)), .speed_kn = random.uniform(0, 10)};
    const Stream stream{.set = TrueDirection(random.uniform(0, 360)), .drift_kn = random.uniform(0.1, 5)};
    const double hours = random.uniform(0.1, 8);
    const Position there = estimated_position(from, water, stream, hours).value();
    const Stream found = set_and_drift(from, water, there, hours).value();
    CHECK(std::abs(found.drift_kn - stream.drift_kn) <= 1e-5);
    CHECK(std::abs(reduce_difference_deg(found.set.deg() - stream.set.deg())) <= 1e-3);
  }
  CHECK(set_and_drift({}, {}, {}, 0.0).problem().fault == Fault::time_not_positive);
  CHECK(estimated_position({}, {}, {}, -1).problem().fault == Fault::time_not_positive);
}

TEST_CASE("a published set and drift, on the ellipsoid") {
  // Coastal Navigation Course, chapter XIII, question 4: 214 degrees, 1.9 kn, drawn by hand; 214.0 and 2.01 kn by mid-latitude
  // sailing. WGS84's minutes of longitude are 0.2 % longer there than the sphere's.
  const Stream found = set_and_drift({41.591667, -70.675}, {.course = TrueDirection(328), .speed_kn = 5.5}, {41.633333, -70.75}, 50.0 / 60).value();
  CHECK(std::abs(found.set.deg() - 214) <= 1);
  CHECK(std::abs(found.drift_kn - 2.01) <= 0.02);
}
