#include "core/compass/swing_findings.h"

#include <algorithm>
#include <cmath>

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

double slope(const ByCoefficient& curve_deg, double heading_deg) {
  const double z = heading_deg * (3.14159265358979323846 / 180);
  const auto [a, b, c, d, e] = curve_deg;
  return (b * std::cos(z) - c * std::sin(z) + 2 * d * std::cos(2 * z) - 2 * e * std::sin(2 * z)) * (3.14159265358979323846 / 180);
}

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
    findings.largest_slope = std::max(findings.largest_slope, std::abs(slope(curve_deg, deg)));
  }
  findings.adjust = std::abs(findings.largest.deg) - fit.sd_at_deg(findings.largest_at) > k_adjust_from_deg;
  const ShapeFound constant{DeviationShape::constant, std::abs(fit.coefficient_deg(Coefficient::a)), of(fit.se_deg, Coefficient::a)};
  for (const ShapeFound& shape : {constant, amplitude(fit, DeviationShape::semicircular, Coefficient::b, Coefficient::c),
                                  amplitude(fit, DeviationShape::quadrantal, Coefficient::d, Coefficient::e)})
    if (shape.amplitude_deg > 2 * shape.sd_deg) findings.shapes.push_back(shape);
  std::sort(findings.shapes.begin(), findings.shapes.end(), [](const ShapeFound& one, const ShapeFound& other) { return one.amplitude_deg > other.amplitude_deg; });
  for (const Coefficient which : k_coefficients)
    if (!fit.coefficients_deg[static_cast<std::size_t>(which)]) findings.missing.push_back(which);
  return findings;
}

}  // namespace fogsheet
