#include "core/figure/labels.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <vector>

#include "core/figure/text_metrics.h"

namespace fogsheet {
namespace {

// Offsets of labels, em of their own height.
constexpr double k_gap_em = 0.45;
constexpr double k_air_em = 0.10;  // kept free about a label
constexpr double k_off_line_em = 0.30;

}  // namespace

double upright_turn_deg(double direction_deg) {
  double turn_deg = direction_deg - 90;
  while (turn_deg <= -90) turn_deg += 180;
  while (turn_deg > 90) turn_deg -= 180;
  return turn_deg;
}

bool add_label_beside(Figure& figure, LabelPlacer& placer, const Box& sign, Text label, bool further_off) {
  const double height = label.height_mm;
  const double half_text = text_width_em(label.text, label.face) * height / 2, half_w = half_text + k_air_em * height, half_h = height * 0.52;
  const double gap = k_gap_em * height;
  const double dx = sign.half_width_mm + gap + half_w, dy = sign.half_height_mm + gap * 0.5 + half_h, slant = sign.half_width_mm * 0.4 + gap * 0.4 + half_w;
  const auto beside = [&](double x, double y) { return Box{.middle = {sign.middle.x_mm + x, sign.middle.y_mm + y}, .half_width_mm = half_w, .half_height_mm = half_h}; };
  const double far = dy + 1.1 * height;  // a line further off, where two signs stand close
  const std::array<Box, 12> places = {beside(dx, 0),       beside(0, -dy),      beside(0, dy),        beside(-dx, 0),
                                      beside(slant, dy),   beside(slant, -dy),  beside(-slant, dy),   beside(-slant, -dy),
                                      beside(0, far),      beside(0, -far),     beside(slant, far),   beside(-slant, far)};
  const std::optional<std::size_t> place = placer.place(std::span(places).first(further_off ? places.size() : 8));
  if (!place) return false;
  // Held at the end that is next to the sign, so that a name that is drawn narrower than it counts stays beside it.
  const SheetPoint middle = places[*place].middle;
  const double aside = middle.x_mm - sign.middle.x_mm;
  label.anchor = aside > 0 ? Anchor::start : aside < 0 ? Anchor::end : Anchor::middle;
  const double held_mm = label.anchor == Anchor::start ? -half_text : label.anchor == Anchor::end ? half_text : 0;
  label.at = {middle.x_mm + held_mm, middle.y_mm + cap_height_em(label.face) * height / 2};
  label.halo = true;
  figure.on(Layer::labels).push_back(std::move(label));
  return true;
}

bool add_label_along(Figure& figure, LabelPlacer& placer, SheetPoint from, SheetPoint to, double weight_mm, bool above, Text label, double most_part) {
  const double height = label.height_mm, turn_deg = upright_turn_deg(direction_deg(to - from));
  const SheetVector up = towards(turn_deg);
  const double half_w = text_width_em(label.text, label.face) * height / 2 + 0.2 * height, half_h = height * 0.45;
  const double length = distance_mm(from, to), off = (above ? 1 : -1) * (weight_mm / 2 + k_off_line_em * height + half_h);
  if (2 * half_w > most_part * length) return false;
  std::vector<Box> places;
  for (const double part : {0.5, 0.42, 0.58, 0.35, 0.65, 0.28, 0.72})
    if (std::min(part, 1 - part) * length >= half_w) places.push_back({.middle = from + part * (to - from) + off * up, .half_width_mm = half_w, .half_height_mm = half_h, .turn_deg = turn_deg});
  const std::optional<std::size_t> place = placer.place(places);
  if (!place) return false;
  label.at = places[*place].middle - (cap_height_em(label.face) * height / 2) * up;
  label.anchor = Anchor::middle;
  label.turn_deg = turn_deg;
  label.halo = true;
  figure.on(Layer::labels).push_back(std::move(label));
  return true;
}

}  // namespace fogsheet
