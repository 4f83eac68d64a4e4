#include "core/directions/directions.h"

#include <cmath>

namespace fogsheet {
namespace {

// Exact as fmod is, which takes long in WebAssembly and has nothing to do for most angles.
double within_circle_deg(double deg) { return std::abs(deg) < 360 ? deg : std::fmod(deg, 360.0); }

}  // namespace

double reduce_direction_deg(double deg) {
  double reduced = within_circle_deg(deg);
  if (reduced < 0) reduced += 360;
  // A tiny negative angle rounds up to the full circle; -0 becomes 0 by the addition.
  return reduced >= 360 ? 0 : reduced + 0.0;
}

double reduce_difference_deg(double deg) {
  double reduced = within_circle_deg(deg);
  if (reduced >= 180) reduced -= 360;
  if (reduced < -180) reduced += 360;
  return reduced >= 180 ? -180 : reduced + 0.0;
}

MagneticDirection to_magnetic(TrueDirection direction, Variation variation) { return MagneticDirection(direction.deg() - variation.deg); }

TrueDirection to_true(MagneticDirection direction, Variation variation) { return TrueDirection(direction.deg() + variation.deg); }

CompassDirection to_compass(MagneticDirection direction, Deviation deviation) { return CompassDirection(direction.deg() - deviation.deg); }

MagneticDirection to_magnetic(CompassDirection direction, Deviation deviation) { return MagneticDirection(direction.deg() + deviation.deg); }

Variation variation_between(TrueDirection direction, MagneticDirection magnetic) {
  return {.deg = reduce_difference_deg(direction.deg() - magnetic.deg())};
}

Deviation deviation_between(MagneticDirection direction, CompassDirection compass) {
  return {.deg = reduce_difference_deg(direction.deg() - compass.deg())};
}

double compass_error_deg(Variation variation, Deviation deviation) { return reduce_difference_deg(variation.deg + deviation.deg); }

}  // namespace fogsheet
