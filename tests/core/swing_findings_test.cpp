#include "core/compass/swing_findings.h"

#include <array>
#include <cmath>

#include "core/base/random.h"
#include "core/compass/compass_check.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

SwingFit fitted(const ByCoefficient& truth_deg, int count, double sd_deg, std::uint64_t seed) {
  Random random(seed);
  std::vector<DeviationReading> readings;
  for (int i = 0; i < count; ++i) {
    const CompassDirection heading(360.0 * i / count);
    readings.push_back({heading, {.deg = deviation_by(truth_deg, heading).deg + sd_deg * random.normal()}});
  }
  Result<SwingFit> fit = fit_swing(readings, {});
  REQUIRE(fit.ok());
  return std::move(fit).value();
}

}  // namespace

TEST_CASE("the shape of the curve points to its causes, the largest first") {
  const SwingFindings findings = findings_of(fitted({0, 3, -4, 2, 0}, 16, 0.3, 111));
  REQUIRE(findings.shapes.size() == 2);
  CHECK(findings.shapes[0].shape == DeviationShape::semicircular);
  CHECK(std::abs(findings.shapes[0].amplitude_deg - 5) <= 0.4);
  CHECK(findings.shapes[1].shape == DeviationShape::quadrantal);
  CHECK(findings.missing.empty());
  const SwingFindings constant = findings_of(fitted({4, 0, 0, 0, 0}, 16, 0.5, 112));
  REQUIRE(constant.shapes.size() >= 1);
  CHECK(constant.shapes[0].shape == DeviationShape::constant);
}

TEST_CASE("the largest deviation, its heading, and whether to have it adjusted") {
  const SwingFindings large = findings_of(fitted({0, 8, 0, 0, 0}, 16, 0.3, 113));
  CHECK(std::abs(std::abs(large.largest.deg) - 8) <= 0.5);
  CHECK(std::min(std::abs(reduce_difference_deg(large.largest_at.deg() - 90)), std::abs(reduce_difference_deg(large.largest_at.deg() - 270))) <= 20);
  CHECK(large.adjust);
  CHECK_FALSE(findings_of(fitted({0, 3, 0, 0, 0}, 16, 0.3, 114)).adjust);
}

TEST_CASE("a shape that is not there is found 1 time in 20, however many readings there are") {
  struct Case { int count; double sd_deg; };
  // 5 readings for 5 coefficients leave no freedom: their error is as assumed, 1 degree.
  for (const Case& c : {Case{5, 1}, Case{6, 0.7}, Case{8, 0.5}, Case{16, 2}, Case{36, 1}}) {
    CAPTURE(c.count);
    constexpr int k_trials = 3000;
    std::array<int, 3> found{};
    for (int i = 0; i < k_trials; ++i)
      for (const ShapeFound& shape : findings_of(fitted({}, c.count, c.sd_deg, static_cast<std::uint64_t>(1000 * c.count + 7 * i))).shapes) ++found[static_cast<std::size_t>(shape.shape)];
    // One standard deviation of such a share of 3000 is 0.4 %.
    for (const int times : found) CHECK(std::abs(100.0 * times / k_trials - 5) <= 1.5);
  }
}

TEST_CASE("few readings that scatter do not have a compass adjusted") {
  // Six readings and five coefficients leave one degree of freedom.
  int adjusted = 0;
  for (std::uint64_t seed = 0; seed < 400; ++seed) {
    const SwingFit fit = fitted({0, 5, 0, 0, 0}, 6, 0.6, 900 + seed);
    const SwingFindings findings = findings_of(fit);
    REQUIRE(fit.degrees_of_freedom == 1);
    const double beyond_deg = std::abs(findings.largest.deg) - k_adjust_from_deg, sd_deg = fit.sd_at_deg(findings.largest_at);
    CHECK(findings.adjust == (beyond_deg > 1.8373 * sd_deg));  // t of one freedom below which 84.13 % lies: tan(pi (0.8413 - 1/2))
    adjusted += findings.adjust;
  }
  CHECK(adjusted > 0);
}

TEST_CASE("the slope of the curve, by differences") {
  const ByCoefficient truth_deg = {2, 20, -12, 10, 4};
  const SwingFindings findings = findings_of(fitted(truth_deg, 16, 0, 115));
  double steepest = 0;
  for (int deg = 0; deg < 360; ++deg)
    steepest = std::max(steepest, std::abs(deviation_by(truth_deg, CompassDirection(deg + 0.01)).deg - deviation_by(truth_deg, CompassDirection(deg - 0.01)).deg) / 0.02);
  CHECK(std::abs(findings.largest_slope - steepest) <= 1e-5);
}

TEST_CASE("headings that support less name what is missing") {
  std::vector<DeviationReading> readings;
  for (const double deg : {0.0, 180.0}) readings.push_back({CompassDirection(deg), {.deg = 2}});
  const Result<SwingFit> fit = fit_swing(readings, {});
  using enum Coefficient;
  CHECK(findings_of(*fit).missing == std::vector{b, d, e});
}
