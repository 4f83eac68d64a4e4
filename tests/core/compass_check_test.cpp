#include "core/compass/compass_check.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

CompassCheck checked(const std::vector<double>& deviations_deg, double sd_deg) {
  std::vector<CheckedBearing> bearings;
  double trusted_deg = 20;
  for (const double deviation_deg : deviations_deg) {
    bearings.push_back({MagneticDirection(trusted_deg), CompassDirection(trusted_deg - deviation_deg)});
    trusted_deg += 73;
  }
  return check_compass(bearings, sd_deg);
}

}  // namespace

TEST_CASE("a check says what the readings allow to be said") {
  CHECK(checked({4}, 1).verdict == CheckVerdict::too_few);
  CHECK(checked({0.5, -1, 0.5, 0}, 1).verdict == CheckVerdict::agrees);
  CHECK(checked({4, 3, 4.5, 3.5}, 1).verdict == CheckVerdict::constant);
  CHECK(checked({6, -5, 1, 0}, 1).verdict == CheckVerdict::by_heading);
  const CompassCheck check = checked({6, -5, 1, 0}, 1);
  CHECK(check.worst == 0);
  CHECK(check.beyond_handbook);
  CHECK(check.mean_deg == doctest::Approx(0.5));
  CHECK(check.mean_allowed_deg == doctest::Approx(1));
  CHECK(check.single_allowed_deg == 3);
  CHECK_FALSE(checked({5, 4, 5}, 1).beyond_handbook);
}

TEST_CASE("a compass that reads the wrong way round has one mean, to either side of 180 degrees") {
  const CompassCheck check = checked({179, -179, 178, -180}, 1);
  CHECK(check.mean_deg == doctest::Approx(179.5));
  CHECK(check.spread_deg == doctest::Approx(std::sqrt((0.25 + 2.25 + 2.25 + 0.25) / 3)));
  CHECK(check.verdict == CheckVerdict::constant);
}

TEST_CASE("good compasses are seldom called bad, a lubber line 4 degrees out is seldom missed") {
  // Of normal readings 4.6 % lie over two standard errors and 0.27 % each over three standard deviations.
  Random random(101);
  constexpr int k_trials = 4000;
  int blamed = 0, missed = 0;
  for (int i = 0; i < k_trials; ++i) {
    std::vector<double> good, out;
    for (int k = 0; k < 6; ++k) {
      good.push_back(1.5 * random.normal());
      out.push_back(4 + 1.5 * random.normal());
    }
    if (checked(good, 1.5).verdict != CheckVerdict::agrees) ++blamed;
    if (checked(out, 1.5).verdict == CheckVerdict::agrees) ++missed;
  }
  CHECK(std::abs(100.0 * blamed / k_trials - 6) <= 1.5);
  CHECK(100.0 * missed / k_trials <= 0.5);
}

TEST_CASE("a reading taken the wrong way round is noticed") {
  const CompassCheck check = checked({1, 178, 0}, 1);
  REQUIRE(check.reciprocal);
  CHECK(*check.reciprocal == 1);
}
