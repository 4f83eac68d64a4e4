#include "core/instruments/rough_method.h"

#include <cmath>
#include <vector>

#include "core/base/random.h"
#include "core/earth/rhumb.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("one degree out is a sixtieth of the run to one side") {
  // The one-in-sixty rule: common practice, no source. It holds to a part in twenty.
  CHECK(std::abs(to_one_side_nm(60, 1) - 1) <= 0.05);
  CHECK(std::abs(to_one_side_nm(60, 4) - 4) <= 0.2);
  CHECK(to_one_side_nm(0, 30) == 0);
  CHECK(to_one_side_nm(5, 0) == 0);
  CHECK(to_one_side_nm(5, 90) == doctest::Approx(5));
  CHECK(to_one_side_nm(5, 170) == doctest::Approx(5));
}

TEST_CASE("to one side is the distance across, as rhumb lines have it") {
  // By another path: along a meridian and along a rhumb line so far out from the same place, the departure between their
  // ends. Over some ten miles near the equator the earth is as good as flat.
  Random random(21);
  for (int i = 0; i < 200; ++i) {
    const double run_nm = random.uniform(0.5, 10), off_deg = random.uniform(0.5, 40);
    const Position start{.lat_deg = 0, .lon_deg = -30};
    const Result<Position> end = rhumb_direct(start, TrueDirection(off_deg), run_nm);
    REQUIRE(end.ok());
    const RhumbLeg across = rhumb_inverse({end->lat_deg, start.lon_deg}, *end);
    CHECK(std::abs(across.distance_nm - to_one_side_nm(run_nm, off_deg)) <= 1e-4);
  }
}

TEST_CASE("what a spread means needs three readings and a run") {
  const std::vector<double> two = {58, 62}, three = {58, 62, 60};
  CHECK_FALSE(rough_mean({}, 4.1));
  CHECK(rough_mean(two, 4.1)->mean.mean_deg == doctest::Approx(60));
  CHECK_FALSE(rough_mean(two, 4.1)->to_either_side_nm);
  CHECK_FALSE(rough_mean(three, std::nullopt)->to_either_side_nm);
  CHECK(*rough_mean(three, 4.1)->to_either_side_nm == doctest::Approx(4.1 * std::sin(2 * 3.14159265358979323846 / 180)));  // spread sqrt((4 + 4 + 0) / 2) = 2
}
