#include "core/passage/stream_triangle.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

// Published triangles are among the reference values (values/fixes.csv).

namespace {

double apart_deg(TrueDirection a, TrueDirection b) { return std::abs(reduce_difference_deg(a.deg() - b.deg())); }

}  // namespace

TEST_CASE("the triangle's questions are each other's inverses") {
  Random random(361);
  int stemmed = 0;
  for (int i = 0; i < 5000; ++i) {
    const TrueDirection track(random.uniform(0, 360));
    const Stream stream{.set = TrueDirection(random.uniform(0, 360)), .drift_kn = random.uniform(0.05, 6)};
    const double speed_kn = random.uniform(0.5, 12);
    CAPTURE(i);
    const Result<CourseToSteer> steered = course_to_steer(track, speed_kn, stream);
    if (!steered.ok()) {
      CHECK(steered.problem().fault == Fault::stream_not_stemmed);
      CHECK(speed_kn <= least_speed_kn(track, stream) * (1 + 1e-9));
      continue;
    }
    ++stemmed;
    CHECK(speed_kn >= least_speed_kn(track, stream) * (1 - 1e-9));
    const Motion water{.course = steered->water_track, .speed_kn = speed_kn};
    const Motion ground = made_good(water, stream);
    CHECK(std::abs(ground.speed_kn - steered->speed_over_ground_kn) <= 1e-9);  // kn
    if (ground.speed_kn > 0.01) CHECK(apart_deg(ground.course, track) <= 1e-6);
    const Motion back = through_water_for(ground, stream);
    CHECK(apart_deg(back.course, water.course) <= 1e-9);
    CHECK(std::abs(back.speed_kn - speed_kn) <= 1e-9);
    const Stream found = stream_between(water, ground);
    CHECK(apart_deg(found.set, stream.set) <= 1e-6);
    CHECK(std::abs(found.drift_kn - stream.drift_kn) <= 1e-9);
  }
  CHECK(stemmed > 2500);
}

TEST_CASE("a little over the least speed makes way, a little under does not") {
  Random random(19);
  for (int i = 0; i < 2000; ++i) {
    const TrueDirection track(random.uniform(0, 360));
    const Stream stream{.set = TrueDirection(random.uniform(0, 360)), .drift_kn = random.uniform(0.5, 6)};
    const double least_kn = least_speed_kn(track, stream);
    if (least_kn < 1e-3) continue;
    CAPTURE(i);
    CHECK(course_to_steer(track, least_kn * 1.0001, stream).ok());
    CHECK_FALSE(course_to_steer(track, least_kn * 0.9999, stream).ok());
  }
}

TEST_CASE("of two courses to steer the faster is given") {
  // Drift 5 kn, 30 degrees off the track, boat 3 kn: across 2.5 kn, along 4.330 kn; of 4.330 +- 1.658 kn the larger.
  const auto found = course_to_steer(TrueDirection(0), 3, {.set = TrueDirection(30), .drift_kn = 5});
  REQUIRE(found.ok());
  CHECK(std::abs(found->speed_over_ground_kn - 5.989) <= 0.001);
}

TEST_CASE("no speed, no stream and a stream dead against the boat") {
  CHECK(course_to_steer(TrueDirection(0), 0, {}).problem().fault == Fault::speed_not_positive);
  CHECK(course_to_steer(TrueDirection(0), -3, {}).problem().fault == Fault::speed_not_positive);
  CHECK(course_to_steer(TrueDirection(0), std::nan(""), {}).problem().fault == Fault::speed_not_positive);
  CHECK(course_to_steer(TrueDirection(270), 5, {})->water_track == TrueDirection(270));
  for (const double track_deg : {0.0, 33.0, 123.4, 251.0}) {
    const Stream against{.set = TrueDirection(track_deg + 180), .drift_kn = 4};
    const Result<CourseToSteer> held = course_to_steer(TrueDirection(track_deg), 4, against);
    CAPTURE(track_deg);
    REQUIRE_FALSE(held.ok());
    CHECK(held.problem().numbers[1] == doctest::Approx(4));
  }
  CHECK(through_water_for({.course = TrueDirection(50), .speed_kn = 3}, {.set = TrueDirection(50), .drift_kn = 3}).speed_kn <= 1e-12);
  CHECK(made_good({}, {}) == Motion{});
}
