#include "core/figure/plot_signs.h"

#include <algorithm>

#include "core/figure/labels.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

constexpr int k_half_circle_sides = 12;
constexpr double k_head_step = 0.8;  // from one arrowhead to the next, of their length

struct Measures {
  double radius_mm, stroke_mm, dot_mm, line_mm, head_mm;
};

Measures measures(const Legibility& legibility) {
  return {.radius_mm = measure_mm(1.5, 5.5, legibility),
          .stroke_mm = measure_mm(1.7, 6, legibility),
          .dot_mm = measure_mm(0.35, 1.3, legibility),
          .line_mm = weight_mm(Stroke::mark, legibility),
          .head_mm = measure_mm(2.4, 8, legibility)};
}

Path outline(std::vector<SheetPoint> points, double line_mm, bool closed) {
  return {.points = std::move(points), .closed = closed, .stroke = Ink::ink, .weight_mm = line_mm};
}

// Corners of a regular polygon about a place, the first in a direction.
std::vector<SheetPoint> corners(SheetPoint at, double radius_mm, int count, double first_deg) {
  std::vector<SheetPoint> points;
  for (int i = 0; i < count; ++i) points.push_back(at + radius_mm * towards(first_deg + 360.0 * i / count));
  return points;
}

void add_dot(std::vector<Shape>& layer, SheetPoint at, const Measures& m) {
  layer.push_back(Circle{.centre = at, .radius_mm = m.dot_mm, .stroke = Ink::none, .fill = Ink::ink});
}

void add_dead_reckoning(std::vector<Shape>& layer, SheetPoint at, double track_deg, SignSet set, const Measures& m) {
  if (set == SignSet::a) {
    layer.push_back(outline({at - m.stroke_mm * towards(track_deg + 90), at + m.stroke_mm * towards(track_deg + 90)}, m.line_mm, false));
    return;
  }
  // Above the line, whichever way it runs.
  std::vector<SheetPoint> arc;
  for (int i = 0; i <= k_half_circle_sides; ++i) arc.push_back(at + m.radius_mm * towards(upright_turn_deg(track_deg) + 90.0 - 180.0 * i / k_half_circle_sides));
  layer.push_back(outline(std::move(arc), m.line_mm, false));
  add_dot(layer, at, m);
}

}  // namespace

void add_position_sign(std::vector<Shape>& layer, PlotSign sign, SheetPoint at, double track_deg, SignSet set, const Legibility& legibility) {
  const Measures m = measures(legibility);
  switch (sign) {
    case PlotSign::dead_reckoning: return add_dead_reckoning(layer, at, track_deg, set, m);
    case PlotSign::estimated_position:
      layer.push_back(set == SignSet::a ? outline(corners(at, 1.25 * m.radius_mm, 3, 0), m.line_mm, true) : outline(corners(at, 1.35 * m.radius_mm, 4, 45), m.line_mm, true));
      return add_dot(layer, at, m);
    case PlotSign::fix:
      layer.push_back(Circle{.centre = at, .radius_mm = m.radius_mm, .stroke = Ink::ink, .weight_mm = m.line_mm});
      if (set == SignSet::a) add_dot(layer, at, m);
      return;
  }
}

double heads_length_mm(int count, const Legibility& legibility) { return (k_head_step * (count - 1) + 1) * measures(legibility).head_mm; }

void add_heads(std::vector<Shape>& layer, SheetPoint at, double direction_deg, int count, Ink ink, const Legibility& legibility, double room_mm) {
  const Measures m = measures(legibility);
  const double head_mm = m.head_mm * std::min(1.0, room_mm / heads_length_mm(count, legibility));
  for (int i = 0; i < count; ++i) {
    const SheetPoint point = at - (k_head_step * i * head_mm) * towards(direction_deg);
    layer.push_back(Path{.points = {point - head_mm * towards(direction_deg - 24), point, point - head_mm * towards(direction_deg + 24)}, .stroke = ink, .weight_mm = 1.25 * m.line_mm});
  }
}

}  // namespace fogsheet
