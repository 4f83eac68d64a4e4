#include "shell/canvas/edge_view.h"

#include <algorithm>

#include "core/directions/direction_figures.h"
#include "core/figure/rose_figure.h"
#include "core/figure/text_metrics.h"
#include "core/figure/weights.h"
#include "core/instruments/rose_reading.h"
#include "shell/tools/target.h"

namespace fogsheet {
namespace {

constexpr double k_reading_px = 15;

/// Three bars across the middle of the strip: here it is taken to be slid.
void draw_slide_bars(const Session& session, const StraightEdge& edge, Overlay& overlay) {
  const Camera& camera = session.desk.camera;
  const SheetVector run = along(edge), side = body_side(edge);
  const SheetPoint middle = midpoint(edge.a, edge.b) + 0.5 * k_edge_body_mm * side;
  for (const double bar_px : {-5.0, 0.0, 5.0}) {
    const SheetPoint at = middle + (bar_px / camera.px_per_mm) * run;
    const double half_mm = 7 / camera.px_per_mm;
    overlay.brush().line(camera.to_screen(at + half_mm * side), camera.to_screen(at - half_mm * side), Ink::edge, 1.4);
  }
}

/// Where the edge cuts both rings in the direction of travel, what stands there, and the arrow that turns it round.
void draw_reading(const Session& session, const StraightEdge& edge, const RoseInReach& rose, Overlay& overlay) {
  const Camera& camera = session.desk.camera;
  Brush& brush = overlay.brush();
  const SheetPoint tip = *edge_arrow(session);
  const SheetVector run = along(edge);
  const SheetPoint end = edge_strip(session, edge).reading_end;
  if (dot(tip - end, run) > 0) brush.dotted(camera.to_screen(end), camera.to_screen(tip), Ink::edge, 2, 5);

  overlay.settle_mark(camera.to_screen(rose.centre));
  const RoseReading reading = read_rose(edge, session.variation_of_edge().value, session.settings.rounding, session.facts().card_or_none());
  overlay.cut_dot(camera.to_screen(cut(edge, rose.centre, k_true_ring * rose.radius_mm)));
  if (reading.on_magnetic_ring) overlay.cut_dot(camera.to_screen(cut(edge, rose.centre, k_magnetic_ring * rose.radius_mm)));

  const double direction = direction_deg(run);
  const ScreenPoint at = camera.to_screen(tip);
  const auto point = [&](double ahead_px, double right_px) {
    const SheetVector r = towards(direction + 90);
    return ScreenPoint{at.x_px + ahead_px * run.x_mm + right_px * r.x_mm, at.y_px + ahead_px * run.y_mm + right_px * r.y_mm};
  };
  brush.fill({point(17, 0), point(-5, 10), point(-5, -10)}, Ink::paper);
  brush.fill({point(14, 0), point(-3, 8), point(-3, -8)}, Ink::ink);

  // The readings stand beyond the arrow, on the side away from the body, upright.
  std::string text = direction_figures(reading.on_true_ring.deg(), session.settings.rounding) + "°T";
  if (reading.on_magnetic_ring) text += "  " + direction_figures(reading.on_magnetic_ring->deg(), session.settings.rounding) + "°M";
  if (const ChainRow* compass = row_of(reading.chain, ChainTerm::compass_direction)) text += "  " + direction_figures(compass->shown_deg, session.settings.rounding) + "°C";
  double turn = direction - 90;
  bool reversed = false;
  if (turn > 90 || turn <= -90) {
    turn += turn > 90 ? -180 : 180;
    reversed = true;
  }
  const SheetVector away = -body_side(edge);
  const SheetVector up = towards(turn);
  const double beside_px = 9 + (dot(away, up) > 0 ? 0 : k_reading_px * 0.73);
  // Where they would run off the canvas they are left out: the slip has them, larger.
  const double wide_px = text_width_em(text, Face::bold) * k_reading_px;
  const FreeArea area = session.free_area();
  const ScreenPoint far = point(wide_px, 0);
  if (far.x_px < 0 || far.x_px > area.width_px || far.y_px < 0 || far.y_px > area.height_px) return;
  const ScreenPoint foot = point(-14, 0);
  brush.text({foot.x_px + beside_px * away.x_mm, foot.y_px + beside_px * away.y_mm}, text, k_reading_px, Face::bold, reversed ? Anchor::end : Anchor::start, Ink::ink, true, turn);
}

}  // namespace

void draw_edge_tint(const Session& session, const StraightEdge& edge, Brush& brush) {
  const Camera& camera = session.desk.camera;
  const EdgeOutline o = edge_strip(session, edge);
  brush.fill({camera.to_screen(o.reading_start), camera.to_screen(o.reading_end), camera.to_screen(o.far_end), camera.to_screen(o.far_start)}, Ink::edge_fill, k_edge_tint);
}

void draw_edge(const Session& session, const StraightEdge& edge, bool sliding, Overlay& overlay) {
  const Camera& camera = session.desk.camera;
  const Legibility legibility = session.settings.legibility(camera.px_per_mm);
  const EdgeOutline own = outline(edge), strip = edge_strip(session, edge);
  const double thin_px = weight_mm(Stroke::edge, legibility) * camera.px_per_mm;
  Brush& brush = overlay.brush();
  // What lengthens the strip is dotted.
  const auto side = [&](SheetPoint strip_start, SheetPoint start, SheetPoint end, SheetPoint strip_end, double width_px) {
    const auto dotted = [&](SheetPoint from, SheetPoint to) {
      if (from != to) brush.dotted(camera.to_screen(from), camera.to_screen(to), Ink::edge, width_px, 2 + 2 * width_px);
    };
    dotted(strip_start, start);
    brush.line(camera.to_screen(start), camera.to_screen(end), Ink::edge, width_px);
    dotted(end, strip_end);
  };
  side(strip.far_start, own.far_start, own.far_end, strip.far_end, thin_px);
  brush.line(camera.to_screen(strip.reading_end), camera.to_screen(strip.far_end), Ink::edge, thin_px);
  brush.line(camera.to_screen(strip.reading_start), camera.to_screen(strip.far_start), Ink::edge, thin_px);
  side(strip.reading_start, own.reading_start, own.reading_end, strip.reading_end, weight_mm(Stroke::reading_edge, legibility) * camera.px_per_mm);
  draw_slide_bars(session, edge, overlay);
  // While it slides its ends are asleep.
  if (!sliding)
    for (const EdgeEnd which : {EdgeEnd::a, EdgeEnd::b}) overlay.grip(camera.to_screen(handle(strip, which)), bearing(edge).deg(), k_handle_radius_px);
  if (edge.on_a) overlay.snap_ticks(camera.to_screen(edge.a));
  if (edge.on_b) overlay.snap_ticks(camera.to_screen(edge.b));
  if (const RoseInReach* rose = settled_rose(session, edge)) draw_reading(session, edge, *rose, overlay);
}

}  // namespace fogsheet
