#include "core/figure/thumb_wheel.h"

#include <cmath>
#include <string>

namespace fogsheet {
namespace {

constexpr double k_top = 1, k_foot = k_wheel_height - 1;
constexpr double k_centre = k_wheel_width / 2;
constexpr double k_figure_size = 12.5;

double graduation_length(int tenths) { return tenths % 10 == 0 ? 15 : tenths % 5 == 0 ? 12 : 8; }

}  // namespace

Figure thumb_wheel(double turned_deg) {
  Figure figure;
  Segments fine{.stroke = Ink::edge, .weight_mm = 1.1}, whole{.stroke = Ink::edge, .weight_mm = 1.8};
  const int reach = static_cast<int>(k_centre / k_wheel_tenth) + 1;
  const int nearest = static_cast<int>(std::lround(turned_deg * 10));
  for (int tenths = nearest - reach; tenths <= nearest + reach; ++tenths) {
    const double x = k_centre + (turned_deg * 10 - tenths) * k_wheel_tenth;
    if (x < 3 || x > k_wheel_width - 3) continue;
    const double end = k_top + graduation_length(tenths);
    Segments& kind = tenths % 10 == 0 ? whole : fine;
    kind.ends.insert(kind.ends.end(), {{x, k_top}, {x, end}, {x, k_foot}, {x, k_foot - graduation_length(tenths)}});
    if (tenths % 10 != 0 || x < 12 || x > k_wheel_width - 12 || std::abs(x - k_centre) < 14) continue;
    figure.on(Layer::labels).push_back(Text{.at = {x, (k_top + k_foot) / 2 + 4.5}, .text = std::to_string(std::abs(tenths / 10)) + "°", .height_mm = k_figure_size, .anchor = Anchor::middle, .ink = Ink::soft});
  }
  figure.on(Layer::border).push_back(Path{.points = {{1, k_top}, {k_wheel_width - 1, k_top}, {k_wheel_width - 1, k_foot}, {1, k_foot}}, .closed = true, .stroke = Ink::edge, .weight_mm = 1.3, .fill = Ink::field});
  for (Segments* kind : {&fine, &whole}) figure.on(Layer::marks).push_back(std::move(*kind));
  figure.on(Layer::marks).push_back(Segments{.ends = {{k_centre, k_top}, {k_centre, k_foot}}, .stroke = Ink::ink, .weight_mm = 2});
  return figure;
}

}  // namespace fogsheet
