#include "core/compass/bearings_swung.h"

#include <cmath>

#include "core/base/units.h"
#include "core/directions/relative_bearing.h"

namespace fogsheet {

Deviation deviation_of_relative(MagneticDirection bearing, CompassDirection heading, double relative_deg) {
  // The bow lies as far anticlockwise of the object as the object lies clockwise of the bow.
  return deviation_between(bearing_from_relative(bearing, -relative_deg), heading);
}

std::optional<Deviation> as_reciprocal(Deviation deviation) {
  if (std::abs(deviation.deg) <= k_largest_plain_deviation_deg) return std::nullopt;
  const Deviation turned{.deg = reduce_difference_deg(deviation.deg + 180)};
  if (std::abs(turned.deg) > k_largest_plain_deviation_deg) return std::nullopt;
  return turned;
}

double largest_swinging_radius_m(double distance_m) { return distance_m * std::sin(k_largest_parallax_deg * k_degree_rad); }

double swinging_parallax_deg(double radius_m, double distance_m) {
  if (radius_m >= distance_m) return 180;
  return std::asin(radius_m / distance_m) / k_degree_rad;
}

}  // namespace fogsheet
