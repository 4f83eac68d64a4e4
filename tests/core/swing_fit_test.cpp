#include "core/compass/swing_fit.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/base/random.h"
#include "core/base/student.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

std::vector<CompassDirection> evenly(int count) {
  std::vector<CompassDirection> headings;
  for (int i = 0; i < count; ++i) headings.push_back(CompassDirection(360.0 * i / count));
  return headings;
}

std::vector<DeviationReading> read_off(const ByCoefficient& truth_deg, const std::vector<CompassDirection>& headings, Random* noise = nullptr, double sd_deg = 1) {
  std::vector<DeviationReading> readings;
  for (const CompassDirection& heading : headings)
    readings.push_back({heading, {.deg = deviation_by(truth_deg, heading).deg + (noise ? sd_deg * noise->normal() : 0)}});
  return readings;
}

ByCoefficient some_coefficients(Random& random) {
  return {random.uniform(-5, 5), random.uniform(-20, 20), random.uniform(-20, 20), random.uniform(-8, 8), random.uniform(-3, 3)};
}

std::vector<Coefficient> given(const SwingFit& fit) {
  std::vector<Coefficient> found;
  for (const Coefficient which : k_coefficients)
    if (fit.coefficients_deg[static_cast<std::size_t>(which)]) found.push_back(which);
  return found;
}

}  // namespace

TEST_CASE("readings without error give the coefficients they were made of") {
  Random random(81);
  double worst_deg = 0;
  for (int i = 0; i < 500; ++i) {
    const ByCoefficient truth_deg = some_coefficients(random);
    std::vector<CompassDirection> headings = evenly(static_cast<int>(random.whole(8, 24)));
    for (CompassDirection& heading : headings) heading = CompassDirection(heading.deg() + random.uniform(-8, 8));
    const Result<SwingFit> fit = fit_swing(read_off(truth_deg, headings), {});
    REQUIRE(fit.ok());
    for (const Coefficient which : k_coefficients) worst_deg = std::max(worst_deg, std::abs(fit->coefficient_deg(which) - of(truth_deg, which)));
    CHECK(fit->reading_sd_deg <= 1e-9);
    for (const Misfit& misfit : fit->misfits) CHECK_FALSE(misfit.does_not_belong);
  }
  MESSAGE("largest error: ", worst_deg, " deg");
  CHECK(worst_deg <= 1e-9);
}

TEST_CASE("the books' hand method and least squares are one on the eight headings") {
  // Of the curve of five coefficients both give the same; with readings that miss it A, D, E are the same still, and B and C
  // differ, since the hand method leaves the headings between the cardinals out of them.
  Random random(82);
  for (int i = 0; i < 100; ++i) {
    const ByCoefficient truth_deg = some_coefficients(random);
    const std::vector<DeviationReading> readings = read_off(truth_deg, evenly(8));
    std::array<double, 8> deviations_deg{};
    for (std::size_t k = 0; k < 8; ++k) deviations_deg[k] = readings[k].deviation.deg;
    const ByCoefficient by_hand_deg = coefficients_by_hand(deviations_deg);
    const Result<SwingFit> fit = fit_swing(readings, {});
    for (const Coefficient which : k_coefficients) CHECK(std::abs(of(by_hand_deg, which) - fit->coefficient_deg(which)) <= 1e-9);
  }
}

TEST_CASE("the interval of one standard error covers the truth as often as it says") {
  // 68.27 % by Student's t at the degrees of freedom; 10 000 seeded trials, so that one standard deviation of the share itself
  // is 0.5 %.
  for (const int headings : {8, 16, 24}) {
    Random random(static_cast<std::uint64_t>(900 + headings));
    constexpr int k_trials = 10000;
    std::array<int, k_coefficient_count> covered{};
    const double factor = one_sigma_student(headings - 5);
    for (int i = 0; i < k_trials; ++i) {
      const ByCoefficient truth_deg = some_coefficients(random);
      const Result<SwingFit> fit = fit_swing(read_off(truth_deg, evenly(headings), &random), {});
      REQUIRE(given(*fit).size() == 5);
      CHECK(fit->one_sigma_factor() == factor);
      for (std::size_t k = 0; k < k_coefficient_count; ++k)
        if (std::abs(*fit->coefficients_deg[k] - truth_deg[k]) <= factor * fit->se_deg[k]) ++covered[k];
    }
    for (std::size_t k = 0; k < k_coefficient_count; ++k) {
      const double percent = 100.0 * covered[k] / k_trials;
      MESSAGE(headings, " headings, ", std::string(1, "ABCDE"[k]), ": ", percent, " %");
      CHECK(std::abs(percent - 68.27) <= 2);
    }
  }
}

TEST_CASE("the curve's own band covers the truth as often as it says") {
  Random random(83);
  int covered = 0;
  constexpr int k_trials = 4000;
  for (int i = 0; i < k_trials; ++i) {
    const ByCoefficient truth_deg = some_coefficients(random);
    const Result<SwingFit> fit = fit_swing(read_off(truth_deg, evenly(12), &random), {});
    const CompassDirection heading(random.uniform(0, 360));
    if (std::abs(fit->at(heading).deg - deviation_by(truth_deg, heading).deg) <= fit->one_sigma_factor() * fit->sd_at_deg(heading)) ++covered;
  }
  CHECK(std::abs(100.0 * covered / k_trials - 68.27) <= 2.5);
}

TEST_CASE("headings within 60 degrees give only what they support, and name the rest") {
  Random random(84);
  for (int i = 0; i < 300; ++i) {
    const double from_deg = random.uniform(0, 360);
    std::vector<CompassDirection> headings;
    for (int k = 0; k < 8; ++k) headings.push_back(CompassDirection(from_deg + random.uniform(0, 60)));
    const Result<SwingFit> fit = fit_swing(read_off(some_coefficients(random), headings, &random), {});
    REQUIRE(fit.ok());
    CHECK(given(*fit).size() < 5);
    CHECK(given(*fit).size() >= 1);
    if (given(*fit).size() > 1)
      for (const double se_deg : fit->se_deg) CHECK(se_deg <= k_largest_coefficient_se_deg);
    CHECK_FALSE(fit->covers(CompassDirection(from_deg + 180)));
    const Result<DeviationCard> card = fit->card(10);
    REQUIRE(card.ok());
    CHECK_FALSE(card->at(CompassDirection(from_deg + 180)));  // no card where nothing was read
  }
}

TEST_CASE("headings north and south alone tell A and C, east and west A and B, one heading A") {
  const std::vector<CompassDirection> north_south = {CompassDirection(0), CompassDirection(180)}, east_west = {CompassDirection(90), CompassDirection(270)};
  const ByCoefficient truth_deg = {2, 5, -3, 0, 0};
  using enum Coefficient;
  Result<SwingFit> fit = fit_swing(read_off(truth_deg, north_south), {});
  CHECK(given(*fit) == std::vector{a, c});
  CHECK(std::abs(fit->coefficient_deg(c) + 3) <= 1e-12);
  CHECK(fit->degrees_of_freedom == 0);
  CHECK(fit->reading_sd_deg == 1);  // as assumed: two readings and two unknowns tell nothing of it
  fit = fit_swing(read_off(truth_deg, east_west), {});
  CHECK(given(*fit) == std::vector{a, b});
  fit = fit_swing(read_off(truth_deg, {CompassDirection(40)}), {});
  CHECK(given(*fit) == std::vector{a});
  CHECK_FALSE(fit->covers(CompassDirection(41)));
  CHECK(fit->covers(CompassDirection(40)));
  const Result<SwingFit> none = fit_swing({}, {});
  REQUIRE_FALSE(none.ok());
  CHECK(none.problem().fault == Fault::too_few_readings);
}

TEST_CASE("readings all about one heading make no card, and it is the headings that are blamed") {
  // Nothing at the whole tens, which are what a card of that step has; six readings are more than a card takes.
  const std::vector<CompassDirection> bunched(6, CompassDirection(43));
  const Result<DeviationCard> card = fit_swing(read_off({2, 0, 0, 0, 0}, bunched), {})->card(10);
  REQUIRE_FALSE(card.ok());
  CHECK(card.problem().fault == Fault::headings_too_close);
  CHECK(card.problem().numbers == std::vector<double>{6});
}

TEST_CASE("what the reference is worth goes into A, and an unknown bearing leaves A open") {
  const ByCoefficient truth_deg = {2, 5, -3, 1, 0.5};
  Random random(85);
  const std::vector<DeviationReading> readings = read_off(truth_deg, evenly(12), &random, 0.5);
  const Result<SwingFit> plain = fit_swing(readings, {}), referred = fit_swing(readings, {.reference_sd_deg = 0.4}), unknown = fit_swing(readings, {.bearing_known = false});
  CHECK(referred->se_deg[0] == doctest::Approx(std::hypot(plain->se_deg[0], 0.4)));
  CHECK(referred->se_deg[1] == plain->se_deg[1]);
  const CompassDirection heading(77);
  CHECK(referred->sd_at_deg(heading) == doctest::Approx(std::hypot(plain->sd_at_deg(heading), 0.4)));
  CHECK_FALSE(unknown->a_found);
  CHECK_FALSE(unknown->coefficients_deg[0]);
  CHECK(unknown->coefficient_deg(Coefficient::b) == plain->coefficient_deg(Coefficient::b));
  CHECK(unknown->at(heading).deg == doctest::Approx(plain->at(heading).deg - plain->coefficient_deg(Coefficient::a)));
}

TEST_CASE("a reading that does not belong is pointed out, and seldom a good one") {
  const ByCoefficient truth_deg = {1, 6, -4, 2, 0};
  Random random(86);
  int pointed_out = 0, false_alarms = 0;
  constexpr int k_trials = 1000;
  for (int i = 0; i < k_trials; ++i) {
    std::vector<DeviationReading> readings = read_off(truth_deg, evenly(12), &random);
    const Result<SwingFit> good = fit_swing(readings, {});
    if (std::any_of(good->misfits.begin(), good->misfits.end(), [](const Misfit& misfit) { return misfit.does_not_belong; })) ++false_alarms;
    readings[5].deviation.deg += 12;
    if (fit_swing(readings, {})->misfits[5].does_not_belong) ++pointed_out;
  }
  MESSAGE("of ", k_trials, " swings: 12 degrees out pointed out ", pointed_out, " times, a good one ", false_alarms, " times");
  CHECK(pointed_out > 0.95 * k_trials);
  CHECK(std::abs(100.0 * false_alarms / k_trials - 5) <= 2);  // 1 in 20, by Bonferroni's bound
}

TEST_CASE("360 degrees wrap") {
  const ByCoefficient truth_deg = {1, 6, -4, 2, 0};
  std::vector<CompassDirection> headings;
  for (int i = 0; i < 8; ++i) headings.push_back(CompassDirection(355 + 45 * i));
  const Result<SwingFit> fit = fit_swing(read_off(truth_deg, headings), {});
  for (const double deg : {0.0, 359.9999, 355.0, 2.5, 180.0}) {
    CHECK(fit->covers(CompassDirection(deg)));
    CHECK(std::abs(fit->at(CompassDirection(deg)).deg - deviation_by(truth_deg, CompassDirection(deg)).deg) <= 1e-9);
  }
  CHECK(fit->card(15)->entries().size() == 24);
}

TEST_CASE("magnetic to compass to magnetic is identity for every card of slope below one") {
  Random random(87);
  int cards = 0;
  while (cards < 300) {
    const ByCoefficient truth_deg = some_coefficients(random);
    const Result<SwingFit> fit = fit_swing(read_off(truth_deg, evenly(24)), {});
    const Result<DeviationCard> card = fit->card(10);
    bool gentle = true;
    const auto& entries = card->entries();
    for (std::size_t i = 0; i < entries.size(); ++i)
      gentle &= std::abs(entries[(i + 1) % entries.size()].deviation.deg - entries[i].deviation.deg) < 10;
    if (!gentle) continue;
    ++cards;
    for (int k = 0; k < 20; ++k) {
      const MagneticDirection magnetic(random.uniform(0, 360));
      const std::vector<CompassDirection> compass = card->compass_for(magnetic);
      REQUIRE(compass.size() == 1);
      const MagneticDirection back = to_magnetic(compass[0], *card->at(compass[0]));
      CHECK(std::abs(reduce_difference_deg(back.deg() - magnetic.deg())) <= 1e-9);
    }
  }
}
