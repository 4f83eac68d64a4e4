#include "core/directions/directions.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("directions reduce to [0, 360)") {
  CHECK(reduce_direction_deg(360) == 0);
  CHECK(reduce_direction_deg(-1) == 359);
  CHECK(reduce_direction_deg(725) == 5);
  CHECK(reduce_direction_deg(-1e-20) == 0);
  CHECK_FALSE(std::signbit(reduce_direction_deg(-0.0)));
  CHECK_FALSE(std::signbit(reduce_direction_deg(-360)));
}

TEST_CASE("differences reduce to [-180, 180)") {
  CHECK(reduce_difference_deg(180) == -180);
  CHECK(reduce_difference_deg(-180) == -180);
  CHECK(reduce_difference_deg(179) == 179);
  CHECK(reduce_difference_deg(181) == -179);
  CHECK(reduce_difference_deg(-541) == 179);
  CHECK_FALSE(std::signbit(reduce_difference_deg(-0.0)));
}

TEST_CASE("variation and deviation are the roads between references") {
  // Source: Coastal Navigation Course, chapter VII, answers to the deviation practice lesson (BoatSafe).
  const MagneticDirection magnetic = to_magnetic(TrueDirection(152), Variation{-5});
  CHECK(magnetic.deg() == 157);
  CHECK(to_compass(magnetic, Deviation{-7}).deg() == 164);
  // 200 T with 10 E, 100 T with 8 E, 100 T with 3 W: common practice, no source.
  CHECK(to_magnetic(TrueDirection(200), Variation{10}).deg() == 190);
  CHECK(to_magnetic(TrueDirection(100), Variation{8}).deg() == 92);
  CHECK(to_magnetic(TrueDirection(100), Variation{-3}).deg() == 103);
  CHECK(TrueDirection(350).reciprocal().deg() == 170);
}

TEST_CASE("there and back is the same direction") {
  Random random(11);
  for (int i = 0; i < 10'000; ++i) {
    const TrueDirection direction(random.uniform(0, 360));
    const Variation variation{random.uniform(-180, 180)};
    const Deviation deviation{random.uniform(-30, 30)};
    const MagneticDirection magnetic = to_magnetic(direction, variation);
    const MagneticDirection back = to_magnetic(to_compass(magnetic, deviation), deviation);
    CHECK(std::abs(reduce_difference_deg(to_true(back, variation).deg() - direction.deg())) <= 1e-12);
  }
}
