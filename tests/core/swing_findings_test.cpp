#include "core/compass/swing_findings.h"

#include <cmath>

#include "core/base/random.h"
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
