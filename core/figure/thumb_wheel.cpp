#include "core/figure/thumb_wheel.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace fogsheet {
namespace {

constexpr double k_centre = k_wheel_left + (k_wheel_width - k_wheel_left) / 2;
constexpr double k_right = k_wheel_width - 1;
constexpr double k_band = 4.5;  // of the chequered edges
constexpr double k_figure_size = 12.5, k_sign_size = 17;

double graduation_length(int tenths) { return tenths % 10 == 0 ? 12 : tenths % 5 == 0 ? 9 : 5.5; }

void add_rectangle(Figure& figure, double left, double top, double right, double foot, Ink stroke, Ink fill) {
  figure.on(Layer::border).push_back(Path{.points = {{left, top}, {right, top}, {right, foot}, {left, foot}}, .closed = true, .stroke = stroke, .weight_mm = stroke == Ink::none ? 0 : 1.1, .fill = fill});
}

/// Every other half degree, within the rim.
void add_chequers(Figure& figure, double zero, double top) {
  constexpr double k_cell = 5 * k_wheel_tenth;
  const int first = static_cast<int>(std::floor((k_wheel_left - zero) / k_cell)), last = static_cast<int>(std::ceil((k_right - zero) / k_cell));
  for (int cell = first; cell < last; ++cell) {
    const double left = std::max(k_wheel_left, zero + cell * k_cell), right = std::min(k_right, zero + (cell + 1) * k_cell);
    if (cell % 2 == 0 && left < right) add_rectangle(figure, left, top, right, top + k_band, Ink::none, Ink::edge);
  }
}

}  // namespace

void add_thumb_wheel(Figure& figure, double top, double turned_deg) {
  const double rim = top + k_wheel_words, foot = top + k_wheel_height - 1, baseline = (rim + foot) / 2 + 4.5;
  Segments fine{.stroke = Ink::edge, .weight_mm = 1.1}, whole{.stroke = Ink::edge, .weight_mm = 1.8};
  const int reach = static_cast<int>((k_right - k_centre) / k_wheel_tenth) + 1;
  const int nearest = static_cast<int>(std::lround(turned_deg * 10));
  for (int tenths = nearest - reach; tenths <= nearest + reach; ++tenths) {
    const double x = k_centre + (turned_deg * 10 - tenths) * k_wheel_tenth;
    if (x < k_wheel_left + 3 || x > k_right - 3) continue;
    const double length = graduation_length(tenths);
    Segments& kind = tenths % 10 == 0 ? whole : fine;
    kind.ends.insert(kind.ends.end(), {{x, rim + k_band}, {x, rim + k_band + length}, {x, foot - k_band}, {x, foot - k_band - length}});
    if (tenths % 10 != 0 || x < k_wheel_left + 12 || x > k_right - 12 || std::abs(x - k_centre) < 14) continue;
    figure.on(Layer::labels).push_back(Text{.at = {x, baseline}, .text = std::to_string(std::abs(tenths / 10)) + "°", .height_mm = k_figure_size, .anchor = Anchor::middle, .ink = Ink::soft});
  }
  add_rectangle(figure, k_wheel_left, rim, k_right, foot, Ink::edge, Ink::field);
  add_rectangle(figure, k_wheel_left, rim + k_band, k_right, foot - k_band, Ink::edge, Ink::none);
  for (const double band : {rim, foot - k_band}) add_chequers(figure, k_centre + turned_deg * 10 * k_wheel_tenth, band);
  for (Segments* kind : {&fine, &whole}) figure.on(Layer::marks).push_back(std::move(*kind));
  figure.on(Layer::marks).push_back(Segments{.ends = {{k_centre, rim}, {k_centre, foot}}, .stroke = Ink::ink, .weight_mm = 2});
  figure.on(Layer::labels).push_back(Text{.at = {0, baseline + 1}, .text = "↔", .height_mm = k_sign_size, .ink = Ink::edge});
  figure.on(Layer::labels).push_back(Text{.at = {k_right, rim - 4}, .text = "turn by tenths", .height_mm = k_figure_size, .anchor = Anchor::end, .ink = Ink::soft});
}

}  // namespace fogsheet
