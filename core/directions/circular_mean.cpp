#include "core/directions/circular_mean.h"

#include <cmath>

#include "core/base/units.h"
#include "core/directions/directions.h"

namespace fogsheet {

std::optional<CircularMean> circular_mean(std::span<const double> directions_deg) {
  constexpr double k_cancelled = 1e-6;
  if (directions_deg.empty()) return std::nullopt;
  const double count = static_cast<double>(directions_deg.size());
  double north = 0, east = 0;
  for (const double deg : directions_deg) {
    north += std::cos(deg * k_degree_rad) / count;
    east += std::sin(deg * k_degree_rad) / count;
  }
  CircularMean mean{.resultant = std::hypot(north, east)};
  if (mean.resultant < k_cancelled) return std::nullopt;
  mean.mean_deg = reduce_direction_deg(std::atan2(east, north) / k_degree_rad);
  double squares = 0;
  for (const double deg : directions_deg) {
    const double off_deg = reduce_difference_deg(deg - mean.mean_deg);
    squares += off_deg * off_deg;
  }
  if (count > 1) mean.spread_deg = std::sqrt(squares / (count - 1));
  mean.standard_error_deg = mean.spread_deg / std::sqrt(count);
  return mean;
}

}  // namespace fogsheet
