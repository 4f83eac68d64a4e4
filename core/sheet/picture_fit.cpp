#include "core/sheet/picture_fit.h"

#include <algorithm>
#include <cmath>

#include "core/base/units.h"

namespace fogsheet {
namespace {

constexpr double k_least_apart_px = 2;
constexpr double k_least_apart_m = 2;
constexpr double k_least_breadth = 0.035;  // of a cloud of points, in its length: 2 degrees

/// Points of the picture and of the sheet from their own middles, and the sums of their products that both fits are made of.
struct Cloud {
  double x = 0, y = 0, X = 0, Y = 0;                // the middles
  double xx = 0, xy = 0, yy = 0;                    // picture by picture
  double xX = 0, xY = 0, yX = 0, yY = 0;            // picture by sheet
  double XX = 0, XY = 0, YY = 0;                    // sheet by sheet
};

Cloud cloud_of(std::span<const KnownPoint> points, std::span<const SheetPoint> places) {
  Cloud c;
  const double count = static_cast<double>(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    c.x += points[i].at.x_px / count;
    c.y += points[i].at.y_px / count;
    c.X += places[i].x_mm / count;
    c.Y += places[i].y_mm / count;
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double x = points[i].at.x_px - c.x, y = points[i].at.y_px - c.y, X = places[i].x_mm - c.X, Y = places[i].y_mm - c.Y;
    c.xx += x * x;
    c.xy += x * y;
    c.yy += y * y;
    c.xX += x * X;
    c.xY += x * Y;
    c.yX += y * X;
    c.yY += y * Y;
    c.XX += X * X;
    c.XY += X * Y;
    c.YY += Y * Y;
  }
  return c;
}

/// Whether the points of that scatter lie along a line: by the ratio of its principal axes.
bool in_line(double xx, double xy, double yy) {
  const double mean = (xx + yy) / 2, half_range = std::hypot((xx - yy) / 2, xy);
  return mean - half_range <= k_least_breadth * k_least_breadth * (mean + half_range);
}

std::optional<Problem> together(std::span<const KnownPoint> points, std::span<const SheetPoint> places, const Projection& projection) {
  for (std::size_t j = 1; j < points.size(); ++j)
    for (std::size_t i = 0; i < j; ++i) {
      const double apart_px = std::hypot(points[i].at.x_px - points[j].at.x_px, points[i].at.y_px - points[j].at.y_px);
      const double apart_m = distance_mm(places[i], places[j]) / projection.mm_per_nm(points[i].position.lat_deg) * k_metres_per_nm;
      if (apart_px < k_least_apart_px || apart_m < k_least_apart_m)
        return Problem{.fault = Fault::picture_points_together, .numbers = {static_cast<double>(i + 1), static_cast<double>(j + 1)}};
    }
  return std::nullopt;
}

}  // namespace

PicturePoint PictureTransform::to_picture(SheetPoint at) const {
  const SheetVector from = at - corner;
  const double area = across.x_mm * down.y_mm - across.y_mm * down.x_mm;
  return {(from.x_mm * down.y_mm - from.y_mm * down.x_mm) / area, (across.x_mm * from.y_mm - across.y_mm * from.x_mm) / area};
}

Result<PictureFit> fit_picture(std::span<const KnownPoint> points, PictureFitKind kind, const Projection& projection) {
  const bool is_affine = kind == PictureFitKind::affine;
  const std::size_t least = is_affine ? 3 : 2;
  if (points.size() < least) return Problem{.fault = Fault::picture_points_too_few, .numbers = {static_cast<double>(points.size()), static_cast<double>(least)}};
  std::vector<SheetPoint> places;
  for (const KnownPoint& point : points) places.push_back(projection.to_sheet(point.position));
  if (std::optional<Problem> problem = together(points, places, projection)) return *problem;

  const Cloud c = cloud_of(points, places);
  const bool is_line = points.size() < 3 || in_line(c.xx, c.xy, c.yy) || in_line(c.XX, c.XY, c.YY);
  if (is_affine && is_line) return Fault::picture_points_in_line;
  SheetVector across, down;
  const double area = c.xx * c.yy - c.xy * c.xy;
  // The affine one's determinant tells a mirror image from a turned one, whatever is fitted.
  if (!is_line && c.xX * c.yY - c.xY * c.yX <= 0) return Fault::picture_mirrored;
  if (is_affine) {
    across = {(c.xX * c.yy - c.yX * c.xy) / area, (c.xY * c.yy - c.yY * c.xy) / area};
    down = {(c.yX * c.xx - c.xX * c.xy) / area, (c.yY * c.xx - c.xY * c.xy) / area};
  } else {
    const double a = (c.xX + c.yY) / (c.xx + c.yy), b = (c.xY - c.yX) / (c.xx + c.yy);
    across = {a, b};
    down = {-b, a};
  }

  PictureFit fit{.transform = {.corner = SheetPoint{c.X, c.Y} - (c.x * across + c.y * down), .across = across, .down = down}};
  double squares = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double left_mm = distance_mm(fit.transform.to_sheet(points[i].at), places[i]);
    const double left_m = left_mm / projection.mm_per_nm(points[i].position.lat_deg) * k_metres_per_nm;
    fit.residuals_m.push_back(left_m);
    squares += left_m * left_m;
    if (left_m > fit.residuals_m[fit.worst]) fit.worst = i;
  }
  const std::size_t unknowns = is_affine ? 6 : 4;
  if (2 * points.size() > unknowns) fit.standard_error_m = std::sqrt(squares / static_cast<double>(2 * points.size() - unknowns));
  return fit;
}

PictureTransform picture_across_sheet(double width_px, double height_px, const SheetRect& neat_line) {
  const double mm_per_px = std::min(neat_line.width_mm() / width_px, neat_line.height_mm() / height_px);
  const SheetPoint middle = midpoint({neat_line.left_mm, neat_line.top_mm}, {neat_line.right_mm, neat_line.bottom_mm});
  return {.corner = middle - SheetVector{width_px * mm_per_px / 2, height_px * mm_per_px / 2}, .across = {mm_per_px, 0}, .down = {0, mm_per_px}};
}

}  // namespace fogsheet
