#include "core/compass/compass_check.h"

#include <cmath>

#include "core/base/random.h"
#include "core/compass/bearings_swung.h"
#include "core/compass/card_place.h"
#include "core/compass/interference.h"
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
  CHECK(as_reciprocal({.deg = 178})->deg == doctest::Approx(-2));
  CHECK_FALSE(as_reciprocal({.deg = 20}));
  CHECK_FALSE(as_reciprocal({.deg = 90}));  // neither way round
}

TEST_CASE("bearings and relative bearings of one object give one deviation") {
  Random random(102);
  for (int i = 0; i < 500; ++i) {
    const MagneticDirection bearing(random.uniform(0, 360));
    const CompassDirection heading(random.uniform(0, 360));
    const double deviation_deg = random.uniform(-40, 40);
    const CompassDirection read = to_compass(bearing, Deviation{.deg = deviation_deg});
    const MagneticDirection head = to_magnetic(heading, Deviation{.deg = deviation_deg});
    CHECK(std::abs(deviation_of_bearing(bearing, read).deg - deviation_deg) <= 1e-9);
    CHECK(std::abs(deviation_of_relative(bearing, heading, bearing.deg() - head.deg()).deg - deviation_deg) <= 1e-9);
  }
}

TEST_CASE("the circle to swing on keeps parallax under half a degree") {
  // tan 0.5 deg is 1 in 114.6: at a mile, a circle of 16 m.
  CHECK(largest_swinging_radius(1852) == doctest::Approx(16.16).epsilon(0.001));
  CHECK(swinging_parallax_deg(largest_swinging_radius(700), 700) == doctest::Approx(0.5));
  CHECK(swinging_parallax_deg(0, 700) == 0);
  CHECK(swinging_parallax_deg(700, 700) == 180);
  CHECK(swinging_parallax_deg(0, 0) == 180);
  // By another path: the largest angle seen from points of the circle to a far point, against the one from its middle.
  const double radius = 30, distance = 900;
  double worst_deg = 0;
  for (int deg = 0; deg < 3600; ++deg) {
    const double turn = deg * (3.14159265358979323846 / 1800);
    worst_deg = std::max(worst_deg, std::abs(std::atan2(radius * std::sin(turn), distance - radius * std::cos(turn))) * (180 / 3.14159265358979323846));
  }
  CHECK(std::abs(worst_deg - swinging_parallax_deg(radius, distance)) <= 1e-4);
}

TEST_CASE("a card used far from where it was made says so") {
  const CardField made{.horizontal_nt = 20000, .inclination_deg = 65};
  CHECK_FALSE(card_away(made, made).swing_again());
  CHECK(card_away(made, made).permanent_factor == 1);
  CHECK(card_away(made, made).soft_iron_factor == 1);
  CHECK_FALSE(card_away(made, {.horizontal_nt = 22900, .inclination_deg = 60}).swing_again());
  CHECK(card_away(made, {.horizontal_nt = 23100, .inclination_deg = 60}).horizontal_far);
  CHECK(card_away(made, {.horizontal_nt = 16900, .inclination_deg = 60}).horizontal_far);
  CHECK(card_away(made, {.horizontal_nt = 20000, .inclination_deg = 54}).dip_far);
  const CardAway south = card_away(made, {.horizontal_nt = 20000, .inclination_deg = -50});
  CHECK(south.other_hemisphere);
  CHECK(south.soft_iron_factor < 0);  // it pulls the other way
  CHECK(card_away(made, {.horizontal_nt = 40000, .inclination_deg = 0}).permanent_factor == doctest::Approx(0.5));
  CHECK_FALSE(card_away({.horizontal_nt = 30000, .inclination_deg = 4}, {.horizontal_nt = 30000, .inclination_deg = -4}).other_hemisphere);
}

TEST_CASE("what is switched on matters when the compass moves by more than two readings differ anyhow") {
  const std::vector<OnAndOff> trials = {{CompassDirection(359), CompassDirection(4)}, {CompassDirection(10), CompassDirection(9)}};
  const std::vector<Pull> pulls = interference(trials, 1);
  CHECK(pulls[0].deg == 5);
  CHECK(pulls[0].matters);
  CHECK(pulls[1].deg == -1);
  CHECK_FALSE(pulls[1].matters);
}
