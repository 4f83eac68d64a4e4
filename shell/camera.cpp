#include "shell/camera.h"

#include <algorithm>

namespace fogsheet {
namespace {

constexpr double k_border_px = 10;        // of table left about a fitted paper
constexpr double k_readable_px_per_mm = 2.6;  // the figures of border and rose stand at their least size without leaving room
constexpr double k_opening_px_per_mm = 3.4;   // a first view comes no closer than this
constexpr double k_kept_px = 80;          // of the paper that can't be pushed out of sight

double between(double value, double low, double high) { return std::max(low, std::min(value, high)); }

double fit_px_per_mm(double width_mm, double height_mm, FreeArea area) {
  return std::min((area.width_px - 2 * k_border_px) / width_mm, (area.height_px - 2 * k_border_px) / height_mm);
}

/// Where one side of the paper starts: in the middle of the free side where it fits, else at its low end where `focus` can be
/// seen so, else with `focus` in the middle.
double placed(double paper_px, double free_px, double focus_low_px, double focus_high_px) {
  if (paper_px + 2 * k_border_px <= free_px) return (free_px - paper_px) / 2;
  if (k_border_px + focus_high_px <= free_px) return k_border_px;
  return (free_px - focus_low_px - focus_high_px) / 2;
}

}  // namespace

Camera zoomed(const Camera& camera, ScreenPoint about, double factor) {
  const double px_per_mm = between(camera.px_per_mm * factor, k_least_px_per_mm, k_most_px_per_mm);
  const double k = px_per_mm / camera.px_per_mm;
  return {px_per_mm, {about.x_px - (about.x_px - camera.origin.x_px) * k, about.y_px - (about.y_px - camera.origin.y_px) * k}};
}

Camera panned(const Camera& camera, ScreenPoint by) { return {camera.px_per_mm, camera.origin + by}; }

Camera fitted(PaperSize paper, FreeArea area) {
  const double px_per_mm = between(fit_px_per_mm(paper.width_mm, paper.height_mm, area), k_least_px_per_mm, k_most_px_per_mm);
  return {px_per_mm, {(area.width_px - paper.width_mm * px_per_mm) / 2, (area.height_px - paper.height_mm * px_per_mm) / 2}};
}

Camera opening(PaperSize paper, FreeArea canvas, FreeArea area, SheetRect focus) {
  const double whole = fit_px_per_mm(paper.width_mm, paper.height_mm, canvas);
  const double focused = fit_px_per_mm(focus.width_mm(), focus.height_mm(), area);
  const double px_per_mm = between(std::min(std::max(whole, k_readable_px_per_mm), focused), k_least_px_per_mm, std::max(whole, k_opening_px_per_mm));
  return {px_per_mm,
          {placed(paper.width_mm * px_per_mm, area.width_px, focus.left_mm * px_per_mm, focus.right_mm * px_per_mm),
           placed(paper.height_mm * px_per_mm, area.height_px, focus.top_mm * px_per_mm, focus.bottom_mm * px_per_mm)}};
}

Camera held(const Camera& camera, PaperSize paper, FreeArea area) {
  const double width_px = paper.width_mm * camera.px_per_mm, height_px = paper.height_mm * camera.px_per_mm;
  const double kept_x = std::min({k_kept_px, width_px, area.width_px / 2}), kept_y = std::min({k_kept_px, height_px, area.height_px / 2});
  return {camera.px_per_mm,
          {between(camera.origin.x_px, kept_x - width_px, area.width_px - kept_x), between(camera.origin.y_px, kept_y - height_px, area.height_px - kept_y)}};
}

}  // namespace fogsheet
