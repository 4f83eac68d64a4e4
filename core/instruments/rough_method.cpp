#include "core/instruments/rough_method.h"

#include <algorithm>
#include <cmath>

#include "core/base/units.h"

namespace fogsheet {

double to_one_side_nm(double run_nm, double off_deg) {
  return run_nm * std::sin(std::clamp(off_deg, 0.0, 90.0) * k_degree_rad);
}

std::optional<RoughMean> rough_mean(std::span<const double> readings_deg, std::optional<double> run_nm) {
  const std::optional<CircularMean> mean = circular_mean(readings_deg);
  if (!mean) return std::nullopt;
  RoughMean rough{.mean = *mean, .to_either_side_nm = std::nullopt};
  if (run_nm && readings_deg.size() >= k_least_rough_readings) rough.to_either_side_nm = to_one_side_nm(*run_nm, mean->spread_deg);
  return rough;
}

}  // namespace fogsheet
