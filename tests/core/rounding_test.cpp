#include "core/directions/rounding.h"

#include <cmath>

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("directions: halves go up, the full circle is nought") {
  CHECK(round_direction_deg(0.5, Rounding::whole_degrees) == 1);
  CHECK(round_direction_deg(1.5, Rounding::whole_degrees) == 2);
  CHECK(round_direction_deg(359.5, Rounding::whole_degrees) == 0);
  CHECK(round_direction_deg(359.49, Rounding::whole_degrees) == 359);
  CHECK(round_direction_deg(359.95, Rounding::tenths) == 0);
  CHECK(round_direction_deg(12.05, Rounding::tenths) == 12.1);
  CHECK(round_direction_deg(0.15, Rounding::tenths) == 0.2);  // 0.15 is a little less in binary
  CHECK(round_direction_deg(47.3 - 12.8, Rounding::whole_degrees) == 35);
}

TEST_CASE("corrections: halves go away from zero, never -0") {
  CHECK(round_correction_deg(0.5, Rounding::whole_degrees) == 1);
  CHECK(round_correction_deg(-0.5, Rounding::whole_degrees) == -1);
  CHECK(round_correction_deg(-9.5, Rounding::whole_degrees) == -10);
  CHECK(round_correction_deg(-9.4, Rounding::whole_degrees) == -9);
  CHECK(round_correction_deg(-0.25, Rounding::tenths) == -0.3);
  CHECK_FALSE(std::signbit(round_correction_deg(-0.4, Rounding::whole_degrees)));
  CHECK_FALSE(std::signbit(round_correction_deg(-0.0, Rounding::tenths)));
}

TEST_CASE("every half degree rounds by the rule") {
  for (int half = 0; half < 720; ++half) {
    CAPTURE(half);
    CHECK(round_direction_deg(half / 2.0, Rounding::whole_degrees) == ((half + 1) / 2) % 360);
    CHECK(round_correction_deg(-half / 2.0, Rounding::whole_degrees) == -((half + 1) / 2));
  }
}

TEST_CASE("rounding has moved far from three quarters of a degree on, either way round the circle") {
  CHECK(rounding_moved_far(10.75, 10));
  CHECK(rounding_moved_far(359.5, 0.25));
  CHECK(rounding_moved_far(0.25, 359.5));
  CHECK_FALSE(rounding_moved_far(10.74, 10));
  CHECK_FALSE(rounding_moved_far(0, 359.5));
}
