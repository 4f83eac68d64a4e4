#include "core/compass/swing_findings.h"

#include <algorithm>
#include <cmath>

#include "core/base/random.h"
#include "core/base/student.h"
#include "core/compass/compass_check.h"

namespace fogsheet {
namespace {

/// Amplitude of p sin + q cos and its standard error, to first order along the amplitude itself.
ShapeFound amplitude(const SwingFit& fit, DeviationShape shape, Coefficient sine, Coefficient cosine) {
  const double p = fit.coefficient_deg(sine), q = fit.coefficient_deg(cosine), size = std::hypot(p, q);
  const auto cov = [&](Coefficient i, Coefficient j) { return fit.covariance_deg2.at(static_cast<std::size_t>(i), static_cast<std::size_t>(j)); };
  if (size == 0) return {shape, 0, std::sqrt(std::max(cov(sine, sine), cov(cosine, cosine)))};
  const double u = p / size, v = q / size;
  const double variance = u * u * cov(sine, sine) + 2 * u * v * cov(sine, cosine) + v * v * cov(cosine, cosine);
  return {shape, size, std::sqrt(std::max(variance, 0.0))};
}

constexpr double k_by_chance = 0.05;  // how often a shape that is not there may be found

/// How many of its standard errors a lone coefficient must exceed.
double least_of_one(int freedom) { return freedom > 0 ? student_quantile(1 - k_by_chance / 2, freedom) : normal_quantile(1 - k_by_chance / 2); }

/// How many an amplitude must: of two coefficients the larger part always counts, so that chance alone reaches further than
/// with one. The square of the amplitude in its standard errors is twice F(2, freedom), whose tail is (1 + 2 F / freedom)^(-freedom / 2);
/// with the error known, chi-squared of two.
double least_of_two(int freedom) {
  const double nu = freedom;
  return freedom > 0 ? std::sqrt(nu * (std::pow(k_by_chance, -2 / nu) - 1)) : std::sqrt(-2 * std::log(k_by_chance));
}

bool is_given(const SwingFit& fit, Coefficient which) { return fit.coefficients_deg[static_cast<std::size_t>(which)].has_value(); }

}  // namespace

SwingFindings findings_of(const SwingFit& fit) {
  SwingFindings findings;
  const ByCoefficient curve_deg = fit.curve_deg();
  for (int deg = 0; deg < 360; ++deg) {
    const CompassDirection heading(deg);
    if (!fit.covers(heading)) continue;
    const Deviation deviation = fit.at(heading);
    if (std::abs(deviation.deg) > std::abs(findings.largest.deg)) {
      findings.largest = deviation;
      findings.largest_at = heading;
    }
    findings.largest_slope = std::max(findings.largest_slope, std::abs(deviation_slope(curve_deg, heading)));
  }
  findings.adjust = std::abs(findings.largest.deg) - fit.one_sigma_factor() * fit.sd_at_deg(findings.largest_at) > k_adjust_from_deg;
  const double least_of_one_sd = least_of_one(fit.degrees_of_freedom), least_of_two_sd = least_of_two(fit.degrees_of_freedom);
  const auto take = [&](const ShapeFound& shape, double least_sd) {
    if (shape.amplitude_deg > least_sd * shape.sd_deg) findings.shapes.push_back(shape);
  };
  const auto take_pair = [&](DeviationShape shape, Coefficient sine, Coefficient cosine) {
    take(amplitude(fit, shape, sine, cosine), is_given(fit, sine) && is_given(fit, cosine) ? least_of_two_sd : least_of_one_sd);
  };
  take({DeviationShape::constant, std::abs(fit.coefficient_deg(Coefficient::a)), of(fit.se_deg, Coefficient::a)}, least_of_one_sd);
  take_pair(DeviationShape::semicircular, Coefficient::b, Coefficient::c);
  take_pair(DeviationShape::quadrantal, Coefficient::d, Coefficient::e);
  std::sort(findings.shapes.begin(), findings.shapes.end(), [](const ShapeFound& one, const ShapeFound& other) { return one.amplitude_deg > other.amplitude_deg; });
  for (const Coefficient which : k_coefficients)
    if (!is_given(fit, which)) findings.missing.push_back(which);
  return findings;
}

}  // namespace fogsheet
