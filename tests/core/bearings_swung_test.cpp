#include "core/compass/bearings_swung.h"

#include <cmath>

#include "core/base/random.h"
#include "core/base/units.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("bearings and relative bearings of one object give one deviation") {
  Random random(102);
  for (int i = 0; i < 500; ++i) {
    const MagneticDirection bearing(random.uniform(0, 360));
    const CompassDirection heading(random.uniform(0, 360));
    const double deviation_deg = random.uniform(-40, 40);
    const CompassDirection read = to_compass(bearing, Deviation{.deg = deviation_deg});
    const MagneticDirection head = to_magnetic(heading, Deviation{.deg = deviation_deg});
    CHECK(std::abs(deviation_between(bearing, read).deg - deviation_deg) <= 1e-9);
    CHECK(std::abs(deviation_of_relative(bearing, heading, bearing.deg() - head.deg()).deg - deviation_deg) <= 1e-9);
  }
}

TEST_CASE("a deviation too large to be one may be a reading of the reciprocal") {
  CHECK(as_reciprocal({.deg = 178})->deg == doctest::Approx(-2));
  CHECK_FALSE(as_reciprocal({.deg = 20}));
  CHECK_FALSE(as_reciprocal({.deg = 90}));  // neither way round
}

TEST_CASE("the circle to swing on keeps parallax under half a degree") {
  // tan 0.5 deg is 1 in 114.6: at a mile, a circle of 16 m.
  CHECK(largest_swinging_radius_m(1852) == doctest::Approx(16.16).epsilon(0.001));
  CHECK(swinging_parallax_deg(largest_swinging_radius_m(700), 700) == doctest::Approx(0.5));
  CHECK(swinging_parallax_deg(0, 700) == 0);
  CHECK(swinging_parallax_deg(700, 700) == 180);
  CHECK(swinging_parallax_deg(0, 0) == 180);
  // By another path: the largest angle seen from points of the circle to a far point, against the one from its middle.
  const double radius_m = 30, distance_m = 900;
  double worst_deg = 0;
  for (int deg = 0; deg < 3600; ++deg) {
    const double turn = deg / 10.0 * k_degree_rad;
    worst_deg = std::max(worst_deg, std::abs(std::atan2(radius_m * std::sin(turn), distance_m - radius_m * std::cos(turn))) / k_degree_rad);
  }
  CHECK(std::abs(worst_deg - swinging_parallax_deg(radius_m, distance_m)) <= 1e-4);
}
