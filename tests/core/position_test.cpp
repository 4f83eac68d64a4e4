#include "core/positions/position.h"

#include <cmath>
#include <limits>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("positions are kept as whole 0.0001 minutes, longitude in [-180, 180)") {
  CHECK(quantise({.lat_deg = 50.5, .lon_deg = -4.25}) == GridPosition{30'300'000, -2'550'000});
  CHECK(quantise({.lat_deg = 0, .lon_deg = 180}).lon == -108'000'000);
  CHECK(quantise({.lat_deg = 0, .lon_deg = 179.99999999}).lon == -108'000'000);
  CHECK(quantise({.lat_deg = 0, .lon_deg = 359}).lon == -600'000);
  CHECK(quantise({.lat_deg = 0.5 / k_grid_per_degree, .lon_deg = -0.5 / k_grid_per_degree}) == GridPosition{1, -1});
  CHECK(quantise({.lat_deg = -75, .lon_deg = -180}) == GridPosition{-45'000'000, -108'000'000});
}

TEST_CASE("grid positions come back as themselves") {
  Random random(3);
  for (int i = 0; i < 100'000; ++i) {
    const GridPosition grid{static_cast<std::int32_t>(random.whole(-45'000'000, 45'000'000)),
                            static_cast<std::int32_t>(random.whole(-108'000'000, 107'999'999))};
    CHECK(quantise(unquantise(grid)) == grid);
  }
}

TEST_CASE("what a document may not hold is refused with its bound") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK(checked_position(75, 180)->lon == -108'000'000);
  CHECK(checked_position(75.0001, 0).problem() == Problem{.fault = Fault::latitude_out_of_range, .numbers = {75.0001, 75}});
  CHECK(checked_position(0, -180.5).problem() == Problem{.fault = Fault::longitude_out_of_range, .numbers = {-180.5, 180}});
  CHECK(checked_position(nan, 0).problem().fault == Fault::number_missing);
  CHECK(checked_position(0, std::numeric_limits<double>::infinity()).problem().texts.at(0) == "longitude");
}

TEST_CASE("longitudes reduce to [-180, 180)") {
  CHECK(reduce_longitude_deg(180) == -180);
  CHECK(reduce_longitude_deg(-180) == -180);
  CHECK(reduce_longitude_deg(190) == -170);
  CHECK(reduce_longitude_deg(-540) == -180);
}
