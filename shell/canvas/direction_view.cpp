#include "shell/canvas/direction_view.h"

#include <algorithm>
#include <cmath>

#include "core/directions/direction_figures.h"
#include "core/earth/rhumb.h"
#include "core/figure/rose_figure.h"
#include "core/figure/text_metrics.h"
#include "core/figure/weights.h"
#include "shell/direction.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

constexpr double k_words_px = 15;

/// Upright along a line, the baseline that far off it on one side.
void text_along(Brush& brush, ScreenPoint at, SheetVector run, SheetVector side, double off_px, const std::string& text) {
  double turn = direction_deg(run) - 90;
  if (turn > 90) turn -= 180;
  if (turn <= -90) turn += 180;
  const double below = dot(side, towards(turn)) > 0 ? 0 : cap_height_em(Face::bold) * k_words_px;
  brush.text({at.x_px + (off_px + below) * side.x_mm, at.y_px + (off_px + below) * side.y_mm}, text, k_words_px, Face::bold, Anchor::middle, Ink::ink, true, turn);
}

}  // namespace

void draw_set_here(const Session& session, const DirectionSet& direction, Overlay& overlay) {
  const RoseInReach* rose = settled_rose(session, direction.set_here);
  if (!rose || session.desk.edge->settled_on == direction.set_here.settled_on) return;  // the edge itself lies there
  const Camera& camera = session.desk.camera;
  const StraightEdge& lay = direction.set_here;
  constexpr double k_past_ring = 1.12;
  const SheetPoint far = cut(lay, rose->centre, k_past_ring * rose->radius_mm);
  overlay.ghost(camera.to_screen(cut(turned_round(lay), rose->centre, k_past_ring * rose->radius_mm)), camera.to_screen(far));
  overlay.cut_dot(camera.to_screen(cut(lay, rose->centre, k_true_ring * rose->radius_mm)));
  if (variation_of_direction(session).used) overlay.cut_dot(camera.to_screen(cut(lay, rose->centre, k_magnetic_ring * rose->radius_mm)));
  // What was set stands where the ghost ends, level, outwards of it.
  const SheetVector run = along(lay);
  constexpr double k_aslant = 0.35;  // from here on beside the end rather than over or under it
  const Anchor anchor = run.x_mm > k_aslant ? Anchor::start : run.x_mm < -k_aslant ? Anchor::end : Anchor::middle;
  const std::string text = words::set_here(direction.deg, session.settings.rounding, direction.reference);
  const ScreenPoint end = camera.to_screen(far);
  const double wide_px = text_width_em(text, Face::bold) * k_words_px, down_px = (1 + run.y_mm) / 2 * cap_height_em(Face::bold) * k_words_px;
  ScreenPoint at{end.x_px + 8 * run.x_mm, end.y_px + 8 * run.y_mm + down_px};
  // Where it would run off the canvas it moves in, under the ghost.
  const double left = anchor == Anchor::start ? 0 : anchor == Anchor::end ? wide_px : wide_px / 2;
  const double inside = std::clamp(at.x_px, left + 6, std::max(left + 6, session.free_area().width_px - (wide_px - left) - 6));
  if (inside != at.x_px) at = {inside, at.y_px + 1.4 * k_words_px};
  overlay.brush().text(at, text, k_words_px, Face::bold, anchor, Ink::ink, true);
}

void draw_line_along_edge(const Session& session, Overlay& overlay) {
  const std::optional<LineAlongEdge> line = line_along_edge(session);
  if (!line) return;
  const Camera& camera = session.desk.camera;
  const StraightEdge& edge = *session.desk.edge;
  const ScreenPoint start = camera.to_screen(line->start), end = camera.to_screen(line->end);
  overlay.snap_ticks(start);
  overlay.dashed_line(start, end, Ink::ink, weight_mm(Stroke::leg, session.settings.legibility(camera.px_per_mm)) * camera.px_per_mm);
  overlay.grip(end, bearing(edge).deg(), k_handle_radius_px);

  const Projection& projection = *session.facts().projection;
  const Rounding rounding = session.settings.rounding;
  const RhumbLeg leg = rhumb_inverse(projection.to_position(line->start), projection.to_position(line->end));
  const VariationInUse& variation = variation_of_direction(session);
  std::string text = words::with_letter(bearing(edge).deg(), rounding, Reference::true_north);
  if (variation.used) text += "  " + words::with_letter(to_magnetic(bearing(edge), *variation.used).deg(), rounding, Reference::magnetic);
  text += " · " + words::distance(leg.distance_nm).text();
  const double long_px = std::hypot(end.x_px - start.x_px, end.y_px - start.y_px);
  constexpr double k_off_px = 9;
  const SheetVector away = -body_side(edge);
  // Where the line is shorter than its words they stand past the handle's disc.
  const double off_px = text_width_em(text, Face::bold) * k_words_px + 2 * k_handle_radius_px < long_px ? k_off_px : k_off_px + k_handle_radius_px;
  text_along(overlay.brush(), {(start.x_px + end.x_px) / 2, (start.y_px + end.y_px) / 2}, along(edge), away, off_px, text);
}

}  // namespace fogsheet
