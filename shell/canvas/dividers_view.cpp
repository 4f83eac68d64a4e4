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
  constexpr double k_needle = 0.74, k_wide_px = 3.4, k_narrow_px = 1.8;
  const double length = std::hypot(point.x_px - hinge.x_px, point.y_px - hinge.y_px);
  if (length == 0) return;
  const ScreenPoint across{-(point.y_px - hinge.y_px) / length, (point.x_px - hinge.x_px) / length};
  const ScreenPoint ferrule = part_way(hinge, point, k_needle);
  const auto aside = [&](ScreenPoint p, double px) { return ScreenPoint{p.x_px + px * across.x_px, p.y_px + px * across.y_px}; };
  brush.line(ferrule, point, Ink::paper, 4.4, 0.7);
  brush.fill({aside(hinge, k_wide_px), aside(ferrule, k_narrow_px), aside(ferrule, -k_narrow_px), aside(hinge, -k_wide_px)}, Ink::paper);
  brush.fill({aside(hinge, k_wide_px), aside(ferrule, k_narrow_px), aside(ferrule, -k_narrow_px), aside(hinge, -k_wide_px)}, Ink::edge_fill, 0.5);
  for (const double side : {1.0, -1.0}) brush.line(aside(hinge, side * k_wide_px), aside(ferrule, side * k_narrow_px), Ink::edge, 1.2);
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

/// The distance, level, beyond the hinge: there it lies clear of the line and what is written along it.
void draw_distance(const Session& session, const DividersOnSheet& dividers, ScreenPoint a, ScreenPoint b, ScreenPoint hinge, Brush& brush) {
  constexpr double k_clear_px = k_handle_radius_px + 7;
  const ScreenPoint middle = part_way(a, b, 0.5);
  const double off_px = std::hypot(middle.x_px - hinge.x_px, middle.y_px - hinge.y_px);
  const ScreenPoint out{(hinge.x_px - middle.x_px) / off_px, (hinge.y_px - middle.y_px) / off_px};
  constexpr double k_aslant = 0.5;  // from here on it stands beside the hinge rather than over it
  const Anchor anchor = out.x_px > k_aslant ? Anchor::start : out.x_px < -k_aslant ? Anchor::end : Anchor::middle;
  const double down_px = (1 + out.y_px) / 2 * cap_height_em(Face::bold) * k_reading_px;
  brush.text({hinge.x_px + k_clear_px * out.x_px, hinge.y_px + k_clear_px * out.y_px + down_px}, words::distance(reading_of(session, dividers).distance_nm).text(),
             k_reading_px, Face::bold, anchor, Ink::ink, true);
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
