// A picture of a chart laid on the sheet by points that are known on both. The sheet is Mercator, and so is the chart where
// it is worth laying under one: then picture and sheet differ by a similarity (turned, sized, moved), or by an affine
// transformation where paper or camera has stretched it more one way than the other. Both are fitted by least squares in
// the sheet's millimetres, where an error of a press weighs the same at every latitude; what is left is given on the ground.
// Source: Ghilani and Wolf, Adjustment Computations (5th ed. 2010), 18.2 (two-dimensional conformal) and 18.5 (affine).
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/sheet/projection.h"

namespace fogsheet {

/// Pixels of the upright picture from its upper left corner: x to the right, y downwards.
struct PicturePoint {
  double x_px = 0;
  double y_px = 0;

  bool operator==(const PicturePoint&) const = default;
};

/// Where the picture's pixels come to lie on the sheet.
struct PictureTransform {
  SheetPoint corner;     // the upper left one
  SheetVector across;    // of a pixel to the right
  SheetVector down;      // of a pixel downwards

  SheetPoint to_sheet(PicturePoint at) const { return corner + at.x_px * across + at.y_px * down; }
  PicturePoint to_picture(SheetPoint at) const;
};

/// A point that is known on the picture and on the earth.
struct KnownPoint {
  PicturePoint at;
  Position position;
};

enum class PictureFitKind {
  similarity,  // two points or more
  affine,      // three or more, not in a line
};

struct PictureFit {
  PictureTransform transform;
  std::vector<double> residuals_m;  // of each point, on the ground: where it was put from where it should lie
  std::size_t worst = 0;            // the point with the largest
  std::optional<double> standard_error_m;  // of a coordinate: sqrt(sum of squares / (2 n - unknowns)); none where nothing is left over
};

inline constexpr std::size_t k_most_known_points = 50;

/// @param points  coordinates finite, latitude within +-75 deg.
/// Faults: picture_points_too_few (numbers: given, the least), picture_points_together (numbers: which two, from 1: under two
/// pixels apart, or under 2 m on the ground), picture_points_in_line (an affine one whose points lie within 2 degrees' breadth of a line),
/// picture_mirrored (three points or more that fit its mirror image better).
Result<PictureFit> fit_picture(std::span<const KnownPoint> points, PictureFitKind kind, const Projection& projection);

/// The whole picture in the middle of the sheet, upright: where it lies until it is placed.
PictureTransform picture_across_sheet(double width_px, double height_px, const SheetRect& neat_line);

}  // namespace fogsheet
