#include "core/figure/rose_figure.h"

#include <cstdio>

#include "core/base/units.h"
#include "core/figure/text_metrics.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

struct Ring {
  double circle;       // parts of the rose's radius
  double graduation;   // length of a 10-degree graduation
  double figures;      // where the figures' baseline runs
  double turn_deg;
  Lettering lettering;
  bool bold_thirties;
};

constexpr double k_note_room = 1.15;  // a line of the note wider than this would run into the magnetic ring's figures

void add_ring(std::vector<Shape>& layer, SheetPoint centre, double radius_mm, const Ring& ring, const Legibility& legibility) {
  const double circle_mm = ring.circle * radius_mm;
  layer.push_back(Circle{.centre = centre, .radius_mm = circle_mm, .stroke = Ink::magenta, .weight_mm = weight_mm(Stroke::ring, legibility)});

  struct Kind {
    int every;
    double length;  // parts of the 10-degree graduation
    Stroke stroke;
  };
  constexpr Kind k_kinds[] = {{1, 0.46, Stroke::ring_1_deg}, {5, 0.72, Stroke::ring_5_deg}, {10, 1.0, Stroke::ring_10_deg}};
  for (const Kind& kind : k_kinds) {
    if (kind.every < 10 && circle_mm * kind.every * k_degree_rad < legibility.least_gap_mm) continue;
    Segments graduations{.stroke = Ink::magenta, .weight_mm = weight_mm(kind.stroke, legibility)};
    for (int degree = 0; degree < 360; degree += kind.every) {
      if (kind.every == 1 && degree % 5 == 0) continue;
      if (kind.every == 5 && degree % 10 == 0) continue;
      const SheetVector out = towards(degree + ring.turn_deg);
      graduations.ends.push_back(centre + circle_mm * out);
      graduations.ends.push_back(centre + (circle_mm + ring.graduation * kind.length * radius_mm) * out);
    }
    layer.push_back(std::move(graduations));
  }

  const std::optional<double> height = height_mm(ring.lettering, legibility);
  if (!height) return;
  // Figures at each 10 degrees where they don't touch, else at each 30.
  const double room_mm = ring.figures * radius_mm * 10 * k_degree_rad;
  const int every = legibility.ring_tens && text_width_em("000", Face::bold) * *height * 1.1 < room_mm ? 10 : 30;
  for (int degree = 0; degree < 360; degree += every) {
    char figures[16];
    std::snprintf(figures, sizeof figures, "%03d", degree);
    layer.push_back(Text{.at = centre + ring.figures * radius_mm * towards(degree + ring.turn_deg),
                         .text = figures,
                         .height_mm = *height,
                         .face = ring.bold_thirties && degree % 30 == 0 ? Face::bold : Face::regular,
                         .anchor = Anchor::middle,
                         .turn_deg = degree + ring.turn_deg,
                         .ink = Ink::magenta});
  }
}

/// Five points, for true north. Drawn as five kites about its middle: fills are convex.
void add_star(std::vector<Shape>& layer, SheetPoint at, double radius_mm) {
  const double inner_mm = 0.4 * radius_mm;
  for (int point = 0; point < 5; ++point) {
    const double deg = 72.0 * point;
    layer.push_back(Path{.points = {at, at + inner_mm * towards(deg - 36), at + radius_mm * towards(deg), at + inner_mm * towards(deg + 36)},
                         .closed = true, .stroke = Ink::none, .fill = Ink::magenta});
  }
}

void add_half_arrow(std::vector<Shape>& layer, SheetPoint centre, double radius_mm, double direction, const Legibility& legibility) {
  const SheetVector up = towards(direction), right = towards(direction + 90);
  const SheetPoint tip = centre + 0.655 * radius_mm * up;
  layer.push_back(Segments{.ends = {centre + 0.40 * radius_mm * up, tip}, .stroke = Ink::magenta, .weight_mm = weight_mm(Stroke::ring_10_deg, legibility)});
  layer.push_back(Path{.points = {tip, tip + radius_mm * (-0.085 * up + 0.030 * right), tip + radius_mm * (-0.058 * up)},
                       .closed = true, .stroke = Ink::none, .fill = Ink::magenta});
}

}  // namespace

void add_rose(Figure& figure, SheetPoint centre, double radius_mm, std::optional<Variation> used, const std::vector<std::string>& note,
              const Legibility& legibility) {
  std::vector<Shape>& layer = figure.on(Layer::rose);
  add_ring(layer, centre, radius_mm,
           {.circle = k_true_ring, .graduation = 0.052, .figures = 0.957, .turn_deg = 0, .lettering = Lettering::ring_true, .bold_thirties = true}, legibility);
  add_star(layer, centre + 1.085 * radius_mm * towards(0), 0.042 * radius_mm);
  if (used) {
    add_ring(layer, centre, radius_mm,
             {.circle = k_magnetic_ring, .graduation = 0.045, .figures = 0.728, .turn_deg = used->deg, .lettering = Lettering::ring_magnetic, .bold_thirties = false},
             legibility);
    add_half_arrow(layer, centre, radius_mm, used->deg, legibility);
  }
  const double arm_mm = 0.035 * radius_mm;
  layer.push_back(Segments{.ends = {{centre.x_mm - arm_mm, centre.y_mm}, {centre.x_mm + arm_mm, centre.y_mm}, {centre.x_mm, centre.y_mm - arm_mm}, {centre.x_mm, centre.y_mm + arm_mm}},
                           .stroke = Ink::magenta, .weight_mm = weight_mm(Stroke::ring_5_deg, legibility)});
  if (const std::optional<double> height = height_mm(Lettering::rose_note, legibility)) {
    double y_mm = centre.y_mm + 0.30 * radius_mm;
    for (const std::string& line : note) {
      if (text_width_em(line, Face::regular) * *height > k_note_room * radius_mm) continue;
      layer.push_back(Text{.at = {centre.x_mm, y_mm}, .text = line, .height_mm = *height, .anchor = Anchor::middle, .ink = Ink::magenta});
      y_mm += 1.3 * *height;
    }
  }
}

}  // namespace fogsheet
