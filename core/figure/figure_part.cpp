#include "core/figure/figure_part.h"

#include <algorithm>

#include "core/figure/text_metrics.h"

namespace fogsheet {
namespace {

// How far letters reach above and below their baseline, em.
constexpr double k_ascent_em = 0.95;
constexpr double k_descent_em = 0.30;

bool touch(const SheetRect& a, const SheetRect& b) { return a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.top_mm < b.bottom_mm && b.top_mm < a.bottom_mm; }

/// Around points, and so much further.
SheetRect around(const SheetPoint* first, std::size_t count, double reach_mm) {
  SheetRect box{first->x_mm, first->y_mm, first->x_mm, first->y_mm};
  for (const SheetPoint* p = first; p != first + count; ++p)
    box = {std::min(box.left_mm, p->x_mm), std::min(box.top_mm, p->y_mm), std::max(box.right_mm, p->x_mm), std::max(box.bottom_mm, p->y_mm)};
  return {box.left_mm - reach_mm, box.top_mm - reach_mm, box.right_mm + reach_mm, box.bottom_mm + reach_mm};
}

bool seen(Path& path, const SheetRect& window) { return !path.points.empty() && touch(around(path.points.data(), path.points.size(), path.weight_mm / 2), window); }

bool seen(Circle& circle, const SheetRect& window) { return touch(around(&circle.centre, 1, circle.radius_mm + circle.weight_mm / 2), window); }

/// Of many lines those that are seen.
bool seen(Segments& segments, const SheetRect& window) {
  std::vector<SheetPoint> kept;
  for (std::size_t i = 0; i + 1 < segments.ends.size(); i += 2)
    if (touch(around(&segments.ends[i], 2, segments.weight_mm / 2), window)) kept.insert(kept.end(), {segments.ends[i], segments.ends[i + 1]});
  segments.ends = std::move(kept);
  return !segments.ends.empty();
}

bool seen(Text& text, const SheetRect& window) {
  const double wide_mm = text_width_em(text.text, text.face) * text.height_mm;
  const double from_mm = text.anchor == Anchor::start ? 0 : text.anchor == Anchor::middle ? -wide_mm / 2 : -wide_mm;
  const SheetVector along = towards(90 + text.turn_deg), down = towards(180 + text.turn_deg);
  const SheetVector start = from_mm * along, end = (from_mm + wide_mm) * along, up = -k_ascent_em * text.height_mm * down, low = k_descent_em * text.height_mm * down;
  const SheetPoint corners[] = {text.at + start + up, text.at + end + up, text.at + end + low, text.at + start + low};
  return touch(around(corners, 4, 0), window);
}

}  // namespace

Figure part_of(const Figure& figure, const SheetRect& window) {
  Figure part = figure;
  for (std::vector<Shape>& layer : part.layers)
    std::erase_if(layer, [&](Shape& shape) { return !std::visit([&](auto& each) { return seen(each, window); }, shape); });
  return part;
}

}  // namespace fogsheet
