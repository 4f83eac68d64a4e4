#include "shell/canvas/dividers_view.h"

#include <cmath>

#include "core/figure/text_metrics.h"
#include "shell/dividers.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

constexpr double k_reading_px = 15;
constexpr double k_least_step_px = 4;  // closer, strokes run into one another

ScreenPoint part_way(ScreenPoint from, ScreenPoint to, double part) { return {from.x_px + part * (to.x_px - from.x_px), from.y_px + part * (to.y_px - from.y_px)}; }

/// A leg: a slender limb, and the needle that it holds.
void draw_leg(ScreenPoint hinge, ScreenPoint point, Brush& brush) {
  constexpr double k_needle = 0.74, k_half_width_px = 3.2;
  const double length = std::hypot(point.x_px - hinge.x_px, point.y_px - hinge.y_px);
  if (length == 0) return;
  const ScreenPoint across{-(point.y_px - hinge.y_px) / length, (point.x_px - hinge.x_px) / length};
  const ScreenPoint shoulder = part_way(hinge, point, 0.16), ferrule = part_way(hinge, point, k_needle);
  const auto aside = [&](ScreenPoint p, double px) { return ScreenPoint{p.x_px + px * across.x_px, p.y_px + px * across.y_px}; };
  brush.line(hinge, point, Ink::paper, 5, 0.7);
  brush.fill({aside(shoulder, k_half_width_px), aside(ferrule, 1.8), aside(ferrule, -1.8), aside(shoulder, -k_half_width_px)}, Ink::edge_fill, 0.6);
  for (const double side : {1.0, -1.0}) brush.line(aside(shoulder, side * k_half_width_px), aside(ferrule, side * 1.8), Ink::edge, 1.2);
  brush.line(hinge, shoulder, Ink::edge, 2.4);
  brush.line(aside(ferrule, 3), aside(ferrule, -3), Ink::edge, 1.6);
  brush.line(ferrule, point, Ink::edge, 1.6);
}

void draw_steps(const Session& session, const DividersOnSheet& dividers, Brush& brush) {
  const Camera& camera = session.desk.camera;
  const SheetPoint start = place_of(session, dividers.stepped->from);
  const SheetVector run = dividers.lie.points.b - dividers.lie.points.a;
  const double open_mm = opening_mm(dividers.lie.points);
  if (open_mm * camera.px_per_mm < k_least_step_px) return;
  const SheetVector across{-run.y_mm / open_mm, run.x_mm / open_mm};
  const auto stroke = [&](SheetPoint at, double half_px) {
    const ScreenPoint p = camera.to_screen(at);
    brush.line({p.x_px + half_px * across.x_mm, p.y_px + half_px * across.y_mm}, {p.x_px - half_px * across.x_mm, p.y_px - half_px * across.y_mm}, Ink::edge, 2);
  };
  stroke(start, 9);
  int count = 0;
  for (const SheetPoint& step : steps_of(session, dividers)) stroke(step, ++count % 5 == 0 ? 9 : 6);
}

/// The distance, below the line between the points.
void draw_distance(const Session& session, const DividersOnSheet& dividers, ScreenPoint a, ScreenPoint b, ScreenPoint hinge, Brush& brush) {
  const std::string text = words::distance(reading_of(session, dividers).distance_nm).text();
  const double wide_px = text_width_em(text, Face::bold) * k_reading_px, open_px = std::hypot(b.x_px - a.x_px, b.y_px - a.y_px);
  const ScreenPoint middle = part_way(a, b, 0.5);
  const double off_px = std::hypot(middle.x_px - hinge.x_px, middle.y_px - hinge.y_px);
  const ScreenPoint away{(middle.x_px - hinge.x_px) / off_px, (middle.y_px - hinge.y_px) / off_px};
  // Along the line where that holds it, else level beside it.
  double turn = std::atan2(b.y_px - a.y_px, b.x_px - a.x_px) * 180 / 3.14159265358979323846;
  if (turn > 90) turn -= 180;
  if (turn <= -90) turn += 180;
  if (open_px > wide_px + 12) {
    const double radians = turn * 3.14159265358979323846 / 180;
    const bool below = away.x_px * -std::sin(radians) + away.y_px * std::cos(radians) > 0;
    const double off = 9 + (below ? k_reading_px * 0.73 : 0);
    brush.text({middle.x_px + off * away.x_px, middle.y_px + off * away.y_px}, text, k_reading_px, Face::bold, Anchor::middle, Ink::ink, true, turn);
    return;
  }
  const double aside = 14 + (away.x_px == 0 ? 0 : std::abs(away.x_px) * wide_px / 2), down = away.y_px > 0 ? 0.73 * k_reading_px : 0;
  brush.text({middle.x_px + aside * away.x_px, middle.y_px + (12 + down) * away.y_px + (std::abs(away.y_px) < 0.5 ? 0.36 * k_reading_px : 0)}, text, k_reading_px, Face::bold, Anchor::middle, Ink::ink, true);
}

}  // namespace

void draw_dividers(const Session& session, const DividersOnSheet& dividers, bool with_handles, Overlay& overlay) {
  const Camera& camera = session.desk.camera;
  Brush& brush = overlay.brush();
  const ScreenPoint a = camera.to_screen(dividers.lie.points.a), b = camera.to_screen(dividers.lie.points.b);
  const ScreenPoint hinge = camera.to_screen(hinge_of(session, dividers));
  if (dividers.stepped) draw_steps(session, dividers, brush);
  if (dividers.work) {
    const DividersPlace& work = *dividers.work;
    overlay.dotted_line(camera.to_screen(work.points.a), camera.to_screen(work.points.b), Ink::edge, 1.4);
    overlay.dotted_line(camera.to_screen(midpoint(work.points.a, work.points.b)), part_way(a, b, 0.5), Ink::edge, 1.2);
  }
  brush.line(a, b, Ink::edge, 1.2);
  draw_leg(hinge, a, brush);
  draw_leg(hinge, b, brush);
  if (dividers.lie.on_a) overlay.snap_ticks(a);
  if (dividers.lie.on_b) overlay.snap_ticks(b);
  if (with_handles) overlay.grip(hinge, direction_deg(dividers.lie.points.b - dividers.lie.points.a), k_handle_radius_px);
  else brush.disc(hinge, 6, Ink::paper, Ink::edge, 1.5);
  draw_distance(session, dividers, a, b, hinge, brush);
}

}  // namespace fogsheet
