#include "core/compass/coefficients.h"

#include <cmath>

#include "core/base/units.h"

namespace fogsheet {

ByCoefficient coefficient_factors(CompassDirection heading) {
  const double z = heading.deg() * k_degree_rad;
  return {1, std::sin(z), std::cos(z), std::sin(2 * z), std::cos(2 * z)};
}

Deviation deviation_by(const ByCoefficient& coefficients_deg, CompassDirection heading) {
  const ByCoefficient factors = coefficient_factors(heading);
  double deg = 0;
  for (std::size_t i = 0; i < k_coefficient_count; ++i) deg += coefficients_deg[i] * factors[i];
  return {.deg = deg};
}

double deviation_slope(const ByCoefficient& coefficients_deg, CompassDirection heading) {
  const auto [one, sine, cosine, sine_twice, cosine_twice] = coefficient_factors(heading);
  const auto [a, b, c, d, e] = coefficients_deg;
  return (b * cosine - c * sine + 2 * (d * cosine_twice - e * sine_twice)) * k_degree_rad;
}

ByCoefficient coefficients_by_hand(const std::array<double, 8>& deviations_deg) {
  const auto [n, ne, e, se, s, sw, w, nw] = deviations_deg;
  return {(n + ne + e + se + s + sw + w + nw) / 8, (e - w) / 2, (n - s) / 2, (ne + sw - se - nw) / 4, (n + s - e - w) / 4};
}

}  // namespace fogsheet
