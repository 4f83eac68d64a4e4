#include "core/directions/circular_mean.h"

#include <cmath>
#include <vector>

#include "core/base/random.h"
#include "core/directions/directions.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("readings on both sides of north have their mean at north") {
  const std::vector<double> readings = {358, 2, 0};
  const auto mean = circular_mean(readings);
  REQUIRE(mean);
  CHECK(std::abs(reduce_difference_deg(mean->mean_deg)) <= 1e-9);
  CHECK(mean->spread_deg == doctest::Approx(2));  // sqrt((4 + 4 + 0) / 2)
  CHECK(mean->standard_error_deg == doctest::Approx(2 / std::sqrt(3.0)));
}

TEST_CASE("no readings, one, and readings that cancel") {
  CHECK_FALSE(circular_mean({}));
  const std::vector<double> one = {-10};
  CHECK(circular_mean(one)->mean_deg == doctest::Approx(350));
  CHECK(circular_mean(one)->spread_deg == 0);
  const std::vector<double> opposite = {0, 180}, thirds = {0, 120, 240};
  CHECK_FALSE(circular_mean(opposite));
  CHECK_FALSE(circular_mean(thirds));
}

TEST_CASE("turning every reading turns the mean and nothing else") {
  Random random(360);
  for (int i = 0; i < 1000; ++i) {
    std::vector<double> readings, turned;
    const double turn_deg = random.uniform(-720, 720);
    for (int k = 0; k < 5; ++k) {
      readings.push_back(100 + 5 * random.normal());
      turned.push_back(readings.back() + turn_deg);
    }
    const auto a = circular_mean(readings), b = circular_mean(turned);
    CHECK(std::abs(reduce_difference_deg(a->mean_deg + turn_deg - b->mean_deg)) <= 1e-9);
    CHECK(std::abs(a->spread_deg - b->spread_deg) <= 1e-9);
  }
}
