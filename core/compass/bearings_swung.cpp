#include "core/compass/bearings_swung.h"

#include <cmath>

#include "core/base/units.h"

namespace fogsheet {

Deviation deviation_of_bearing(MagneticDirection bearing, CompassDirection read) { return deviation_between(bearing, read); }

Deviation deviation_of_relative(MagneticDirection bearing, CompassDirection heading, double relative_deg) {
  return deviation_between(MagneticDirection(bearing.deg() - relative_deg), heading);
}

std::optional<Deviation> as_reciprocal(Deviation deviation) {
  if (std::abs(deviation.deg) <= k_largest_plain_deviation_deg) return std::nullopt;
  const Deviation turned{.deg = reduce_difference_deg(deviation.deg + 180)};
  if (std::abs(turned.deg) > k_largest_plain_deviation_deg) return std::nullopt;
  return turned;
}

double largest_swinging_radius(double distance) { return distance * std::sin(k_largest_parallax_deg * k_degree_rad); }

double swinging_parallax_deg(double radius, double distance) {
  if (radius >= distance) return 180;
  return std::asin(radius / distance) / k_degree_rad;
}

}  // namespace fogsheet
