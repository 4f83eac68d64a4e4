#include "core/figure/mark_figure.h"

#include "core/figure/weights.h"

namespace fogsheet {
namespace {

constexpr double k_halo_px = 2.4;  // paper-coloured room about a sign's lines, so that it stands clear of what it lies on

struct Measures {
  double circle_mm, top_mm, half_bar_mm, arm_mm, line_mm, turn_line_mm, halo_mm;
};

Measures measures(const Legibility& legibility) {
  return {.circle_mm = measure_mm(0.75, 2.8, legibility),
          .top_mm = measure_mm(3.4, 12, legibility),
          .half_bar_mm = measure_mm(1.0, 3.6, legibility),
          .arm_mm = measure_mm(1.35, 5, legibility),
          .line_mm = weight_mm(Stroke::mark, legibility),
          .turn_line_mm = weight_mm(Stroke::turn, legibility),
          .halo_mm = k_halo_px * legibility.least_line_mm};
}

SheetPoint by(SheetPoint at, double right_mm, double up_mm) { return {at.x_mm + right_mm, at.y_mm - up_mm}; }

void add_lines(std::vector<Shape>& layer, std::vector<SheetPoint> ends, double line_mm, double halo_mm) {
  if (halo_mm > 0) layer.push_back(Segments{.ends = ends, .stroke = Ink::paper, .weight_mm = line_mm + halo_mm});
  layer.push_back(Segments{.ends = std::move(ends), .stroke = Ink::ink, .weight_mm = line_mm});
}

void add_post(std::vector<Shape>& layer, SheetPoint at, bool is_light, const Measures& m) {
  std::vector<SheetPoint> lines = {by(at, 0, m.circle_mm), by(at, 0, m.top_mm)};
  if (is_light) {
    const double inner = m.half_bar_mm * 0.55, outer = m.half_bar_mm * 1.5;
    for (const double direction : {-55.0, 0.0, 55.0}) {
      const SheetPoint top = by(at, 0, m.top_mm);
      lines.push_back(top + inner * towards(direction));
      lines.push_back(top + outer * towards(direction));
    }
  } else {
    lines.push_back(by(at, -m.half_bar_mm, m.top_mm));
    lines.push_back(by(at, m.half_bar_mm, m.top_mm));
  }
  add_lines(layer, std::move(lines), m.line_mm, m.halo_mm);
  layer.push_back(Circle{.centre = at, .radius_mm = m.circle_mm, .stroke = Ink::ink, .weight_mm = m.line_mm * 0.85, .fill = Ink::paper});
}

void add_danger(Figure& figure, SheetPoint at, double radius_mm, const Legibility& legibility) {
  std::vector<Shape>& layer = figure.on(Layer::dangers);
  const double weight = weight_mm(Stroke::danger, legibility), arm = measure_mm(1.3, 4.5, legibility);
  layer.push_back(Circle{.centre = at, .radius_mm = radius_mm, .stroke = Ink::danger, .weight_mm = weight, .fill = Ink::danger_fill, .fill_opacity = 0.75,
                         .dash = {.on_mm = 0, .off_mm = 2.1 * weight}});
  layer.push_back(Segments{.ends = {by(at, -arm, 0), by(at, arm, 0), by(at, 0, -arm), by(at, 0, arm)}, .stroke = Ink::danger, .weight_mm = 0.8 * weight});
}

}  // namespace

void add_mark_sign(Figure& figure, MarkKind kind, SheetPoint at, double danger_radius_mm, const Legibility& legibility) {
  std::vector<Shape>& layer = figure.on(Layer::marks);
  const Measures m = measures(legibility);
  switch (kind) {
    case MarkKind::landmark: return add_post(layer, at, false, m);
    case MarkKind::light: return add_post(layer, at, true, m);
    case MarkKind::turn:
      return add_lines(layer, {by(at, -m.arm_mm, m.arm_mm), by(at, m.arm_mm, -m.arm_mm), by(at, -m.arm_mm, -m.arm_mm), by(at, m.arm_mm, m.arm_mm)}, m.turn_line_mm, m.halo_mm);
    case MarkKind::danger: return add_danger(figure, at, danger_radius_mm, legibility);
    case MarkKind::other:
      layer.push_back(Circle{.centre = at, .radius_mm = m.circle_mm * 1.2, .stroke = Ink::ink, .weight_mm = m.line_mm, .fill = Ink::paper});
      layer.push_back(Circle{.centre = by(at, 0, -2.6 * m.circle_mm), .radius_mm = m.circle_mm * 0.5, .stroke = Ink::none, .fill = Ink::ink});
      return;
  }
}

Box sign_box(MarkKind kind, SheetPoint at, const Legibility& legibility) {
  const Measures m = measures(legibility);
  const auto around = [&](double half_width, double up, double down) {
    return Box{.middle = by(at, 0, (up - down) / 2), .half_width_mm = half_width, .half_height_mm = (up + down) / 2};
  };
  switch (kind) {
    case MarkKind::landmark:
    case MarkKind::light: return around(m.half_bar_mm, m.top_mm, m.circle_mm);
    case MarkKind::turn: return around(m.arm_mm, m.arm_mm, m.arm_mm);
    case MarkKind::danger: return around(m.arm_mm, m.arm_mm, m.arm_mm);
    case MarkKind::other: return around(m.circle_mm * 1.2, m.circle_mm * 1.2, m.circle_mm * 3.1);
  }
  return around(m.arm_mm, m.arm_mm, m.arm_mm);
}

}  // namespace fogsheet
