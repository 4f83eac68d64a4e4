// Speeds and short runs as parts to the north and to the east: what triangles of streams are added up in.
#pragma once

#include <cmath>

#include "core/base/units.h"
#include "core/directions/directions.h"

namespace fogsheet {

struct PlaneVector {
  double north = 0;
  double east = 0;
  bool operator==(const PlaneVector&) const = default;
};

inline PlaneVector operator+(PlaneVector a, PlaneVector b) { return {a.north + b.north, a.east + b.east}; }
inline PlaneVector operator-(PlaneVector a, PlaneVector b) { return {a.north - b.north, a.east - b.east}; }
inline PlaneVector operator*(double k, PlaneVector a) { return {k * a.north, k * a.east}; }

/// Scalar product.
inline double dot(PlaneVector a, PlaneVector b) { return a.north * b.north + a.east * b.east; }

/// What `b` is to starboard of `a`, times the length of `a`.
inline double to_starboard(PlaneVector a, PlaneVector b) { return a.north * b.east - a.east * b.north; }

inline double length_of(PlaneVector a) { return std::sqrt(dot(a, a)); }

/// North for no vector at all.
inline TrueDirection direction_of(PlaneVector a) {
  return a == PlaneVector{} ? TrueDirection() : TrueDirection(std::atan2(a.east, a.north) / k_degree_rad);
}

inline PlaneVector along(TrueDirection direction, double length = 1) {
  const double angle_rad = direction.deg() * k_degree_rad;
  return {length * std::cos(angle_rad), length * std::sin(angle_rad)};
}

}  // namespace fogsheet
