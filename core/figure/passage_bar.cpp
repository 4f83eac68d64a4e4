#include "core/figure/passage_bar.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"

namespace fogsheet {
namespace {

constexpr double k_left = 8, k_right = k_passage_bar_width - 8;
constexpr double k_top = 19, k_thick = 6;
constexpr double k_text = 13;
constexpr double k_cross = 6, k_lozenge = 9;
constexpr int k_most_blocks = 24;

/// Of 1, 2, 5, 10 ... miles, the least that makes no more blocks than can be told apart.
double block_nm(double whole_nm) {
  for (double decade = 1;; decade *= 10)
    for (const double step : {1.0, 2.0, 5.0})
      if (whole_nm / (step * decade) <= k_most_blocks) return step * decade;
}

Path box(double from, double to, bool inked) {
  return {.points = {{from, k_top}, {to, k_top}, {to, k_top + k_thick}, {from, k_top + k_thick}}, .closed = true, .stroke = Ink::ink, .weight_mm = 1.2, .fill = inked ? Ink::bar : Ink::paper};
}

void add_figures(std::vector<Shape>& layer, double x, Anchor anchor, std::string text) {
  layer.push_back(Text{.at = {x, k_text}, .text = std::move(text), .height_mm = k_text, .anchor = anchor});
}

}  // namespace

Figure passage_bar(const PassageBar& bar) {
  Figure figure;
  std::vector<Shape>& layer = figure.on(Layer::title);
  const double whole_nm = bar.turns_nm.empty() ? 0 : bar.turns_nm.back();
  if (!(whole_nm > 0)) {
    layer.push_back(box(k_left, k_right, false));
    return figure;
  }
  const auto x_of = [&](double nm) { return k_left + (k_right - k_left) * std::clamp(nm / whole_nm, 0.0, 1.0); };
  const double step_nm = block_nm(whole_nm);
  for (int block = 0; block * step_nm < whole_nm; ++block) layer.push_back(box(x_of(block * step_nm), x_of((block + 1) * step_nm), block % 2 == 0));

  const double middle = k_top + k_thick / 2;
  add_figures(layer, k_left, Anchor::start, "0");
  add_figures(layer, k_right, Anchor::end, print_fixed(whole_nm, 1) + " nm");
  double last_x = k_left + 1.5 * k_text;
  for (std::size_t i = 0; i + 1 < bar.turns_nm.size(); ++i) {
    const double x = x_of(bar.turns_nm[i]);
    layer.push_back(Path{.points = {{x - k_cross, middle - k_cross}, {x + k_cross, middle + k_cross}}, .stroke = Ink::ink, .weight_mm = 2});
    layer.push_back(Path{.points = {{x - k_cross, middle + k_cross}, {x + k_cross, middle - k_cross}}, .stroke = Ink::ink, .weight_mm = 2});
    if (x - last_x < 2.2 * k_text || k_right - x < 5.5 * k_text) continue;  // figures would touch
    add_figures(layer, x, Anchor::middle, print_fixed(bar.turns_nm[i], 1));
    last_x = x;
  }
  const double x = x_of(bar.at_nm);
  layer.push_back(Path{.points = {{x, middle - k_lozenge}, {x + 0.7 * k_lozenge, middle}, {x, middle + k_lozenge}, {x - 0.7 * k_lozenge, middle}}, .closed = true, .stroke = Ink::ink, .weight_mm = 2, .fill = Ink::paper});
  return figure;
}

}  // namespace fogsheet
