// A point on the paper: millimetres from its top left corner, x to the right, y downwards.
#pragma once

#include <cmath>

#include "core/base/units.h"

namespace fogsheet {

struct SheetPoint {
  double x_mm = 0;
  double y_mm = 0;

  bool operator==(const SheetPoint&) const = default;
};

/// A displacement on the paper, mm.
struct SheetVector {
  double x_mm = 0;
  double y_mm = 0;

  bool operator==(const SheetVector&) const = default;
};

inline SheetVector operator-(SheetPoint to, SheetPoint from) { return {to.x_mm - from.x_mm, to.y_mm - from.y_mm}; }
inline SheetPoint operator+(SheetPoint p, SheetVector v) { return {p.x_mm + v.x_mm, p.y_mm + v.y_mm}; }
inline SheetPoint operator-(SheetPoint p, SheetVector v) { return {p.x_mm - v.x_mm, p.y_mm - v.y_mm}; }
inline SheetVector operator+(SheetVector a, SheetVector b) { return {a.x_mm + b.x_mm, a.y_mm + b.y_mm}; }
inline SheetVector operator-(SheetVector v) { return {-v.x_mm, -v.y_mm}; }
inline SheetVector operator*(double k, SheetVector v) { return {k * v.x_mm, k * v.y_mm}; }
inline double dot(SheetVector a, SheetVector b) { return a.x_mm * b.x_mm + a.y_mm * b.y_mm; }
inline double length_mm(SheetVector v) { return std::hypot(v.x_mm, v.y_mm); }
inline double distance_mm(SheetPoint a, SheetPoint b) { return length_mm(b - a); }
inline SheetPoint midpoint(SheetPoint a, SheetPoint b) { return {(a.x_mm + b.x_mm) / 2, (a.y_mm + b.y_mm) / 2}; }

/// The unit vector in a direction on the paper, deg clockwise from north (up).
inline SheetVector towards(double direction_deg) {
  const double radians = direction_deg * k_degree_rad;
  return {std::sin(radians), -std::cos(radians)};
}

/// The direction of a vector, deg clockwise from north (up), in (-180, 180]. The null vector gives 0.
inline double direction_deg(SheetVector v) {
  return v.x_mm == 0 && v.y_mm == 0 ? 0 : std::atan2(v.x_mm, -v.y_mm) / k_degree_rad;
}

/// An upright rectangle on the paper, mm.
struct SheetRect {
  double left_mm = 0;
  double top_mm = 0;
  double right_mm = 0;
  double bottom_mm = 0;

  bool operator==(const SheetRect&) const = default;
  bool contains(SheetPoint p) const { return p.x_mm >= left_mm && p.x_mm <= right_mm && p.y_mm >= top_mm && p.y_mm <= bottom_mm; }
  double width_mm() const { return right_mm - left_mm; }
  double height_mm() const { return bottom_mm - top_mm; }
};

}  // namespace fogsheet
