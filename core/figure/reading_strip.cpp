#include "core/figure/reading_strip.h"

#include <cmath>
#include <cstdio>

namespace fogsheet {
namespace {

constexpr double k_per_degree = 12.5;
constexpr double k_left = 28;          // room for the north signs
constexpr double k_top = 8;            // of the upper dot
constexpr double k_bottom = k_strip_height - k_top;  // of the lower dot
constexpr double k_middle = (k_top + k_bottom) / 2;
constexpr double k_centre = k_left + (k_strip_width - k_left) / 2;
constexpr double k_figure_size = 13, k_word_size = 12.5;

double graduation_length(int degree) { return degree % 10 == 0 ? 18 : degree % 5 == 0 ? 13.5 : 9; }

/// One ring, straightened: graduations up (-1) or down (+1) from the middle line, figures on tens and, where there is room, fives.
void add_ring(Figure& figure, double reading_deg, double side) {
  Segments fine{.stroke = Ink::magenta, .weight_mm = 0.9}, fives{.stroke = Ink::magenta, .weight_mm = 1.1}, tens{.stroke = Ink::magenta, .weight_mm = 1.5};
  const int reach = static_cast<int>((k_strip_width - k_left) / 2 / k_per_degree) + 1;
  const int nearest = static_cast<int>(std::floor(reading_deg));
  for (int degree = nearest - reach; degree <= nearest + reach; ++degree) {
    const double x = k_centre + (degree - reading_deg) * k_per_degree;
    if (x < k_left || x > k_strip_width) continue;
    const double end = k_middle + side * graduation_length(degree);
    Segments& kind = degree % 10 == 0 ? tens : degree % 5 == 0 ? fives : fine;
    kind.ends.push_back({x, k_middle});
    kind.ends.push_back({x, end});
    const bool clear_of_hairline = std::abs(x - k_centre) > 18, inside = x >= k_left + 13 && x <= k_strip_width - 13;
    if (degree % 10 != 0 || !clear_of_hairline || !inside) continue;
    char figures[16];
    std::snprintf(figures, sizeof figures, "%03d", ((degree % 360) + 360) % 360);
    figure.on(Layer::labels).push_back(Text{.at = {x, side < 0 ? end - 6 : end + 15}, .text = figures, .height_mm = k_figure_size, .face = Face::bold, .anchor = Anchor::middle, .ink = Ink::magenta});
  }
  for (Segments* kind : {&fine, &fives, &tens}) figure.on(Layer::rose).push_back(std::move(*kind));
}

void add_star(Figure& figure, SheetPoint at) {
  constexpr double k_radius = 8;
  for (int point = 0; point < 5; ++point) {
    const double deg = 72.0 * point;
    figure.on(Layer::rose).push_back(Path{.points = {at, at + 0.4 * k_radius * towards(deg - 36), at + k_radius * towards(deg), at + 0.4 * k_radius * towards(deg + 36)},
                                          .closed = true, .stroke = Ink::none, .fill = Ink::magenta});
  }
}

void add_half_arrow(Figure& figure, SheetPoint at) {
  constexpr double k_half = 11;
  figure.on(Layer::rose).push_back(Segments{.ends = {{at.x_mm, at.y_mm + k_half}, {at.x_mm, at.y_mm - k_half}}, .stroke = Ink::magenta, .weight_mm = 1.5});
  figure.on(Layer::rose).push_back(Path{.points = {{at.x_mm, at.y_mm - k_half - 1}, {at.x_mm + 5.7, at.y_mm - 0.5}, {at.x_mm, at.y_mm - 2.6}},
                                        .closed = true, .stroke = Ink::none, .fill = Ink::magenta});
}

void add_dot(Figure& figure, SheetPoint at) {
  figure.on(Layer::marks).push_back(Circle{.centre = at, .radius_mm = 4.6, .stroke = Ink::paper, .weight_mm = 1.3, .fill = Ink::ink});
}

}  // namespace

Figure reading_strip(double true_deg, std::optional<Variation> used) {
  Figure figure;
  figure.on(Layer::rose).push_back(Segments{.ends = {{k_left, k_middle}, {k_strip_width, k_middle}}, .stroke = Ink::magenta, .weight_mm = 1});
  add_ring(figure, true_deg, -1);
  add_star(figure, {8, k_middle - 18});
  const auto word = [&](double y, const char* text) {
    figure.on(Layer::labels).push_back(Text{.at = {0, y}, .text = text, .height_mm = k_word_size, .ink = Ink::soft});
  };
  word(12, "true ring");
  if (used) {
    add_ring(figure, true_deg - used->deg, 1);
    add_half_arrow(figure, {8, k_middle + 18});
    word(k_strip_height - 6, "magnetic ring");
  }
  const double foot = used ? k_bottom : k_middle;
  figure.on(Layer::marks).push_back(Segments{.ends = {{k_centre, k_top}, {k_centre, foot}}, .stroke = Ink::ink, .weight_mm = 2});
  add_dot(figure, {k_centre, k_top});
  if (used) add_dot(figure, {k_centre, foot});
  return figure;
}

}  // namespace fogsheet
