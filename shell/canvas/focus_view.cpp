#include "shell/canvas/focus_view.h"

#include <algorithm>
#include <array>

#include "core/figure/note_figure.h"
#include "shell/things.h"
#include "shell/tools/target.h"

namespace fogsheet {
namespace {

constexpr double k_ring_px = 3;
constexpr double k_clear_px = 2 + k_ring_px / 2;  // from what it rings to the middle of the ring
constexpr double k_mark_sign_px = 9;
constexpr double k_point_px = 6;

/// Four sides, from corner to corner.
void ring_strip(ScreenPoint a, ScreenPoint b, ScreenPoint c, ScreenPoint d, Overlay& overlay) {
  const std::array<ScreenPoint, 4> corners{a, b, c, d};
  for (std::size_t i = 0; i < corners.size(); ++i) overlay.brush().line(corners[i], corners[(i + 1) % corners.size()], Ink::focus, k_ring_px);
}

void ring_box(const Camera& camera, const SheetRect& box, Overlay& overlay, double clear_px = k_clear_px) {
  const ScreenPoint low = camera.to_screen({box.left_mm, box.top_mm}), high = camera.to_screen({box.right_mm, box.bottom_mm});
  const double left = low.x_px - clear_px, top = low.y_px - clear_px, right = high.x_px + clear_px, bottom = high.y_px + clear_px;
  ring_strip({left, top}, {right, top}, {right, bottom}, {left, bottom}, overlay);
}

/// About a line of that half width.
void ring_line(const Camera& camera, SheetPoint from, SheetPoint to, double half_px, Overlay& overlay) {
  if (from == to) return;
  const SheetVector run = (1 / distance_mm(from, to)) * (to - from), side{-run.y_mm, run.x_mm};
  const double off_mm = (half_px + k_clear_px) / camera.px_per_mm;
  const auto corner = [&](SheetPoint at, double ahead, double aside) { return camera.to_screen(at + (ahead * off_mm) * run + (aside * off_mm) * side); };
  ring_strip(corner(from, -1, -1), corner(to, 1, -1), corner(to, 1, 1), corner(from, -1, 1), overlay);
}

void ring_edge_body(const Session& session, Overlay& overlay) {
  const Camera& camera = session.desk.camera;
  const StraightEdge& edge = *session.desk.edge;
  const EdgeOutline strip = edge_strip(session, edge);
  const double off_mm = k_clear_px / camera.px_per_mm;
  const SheetVector run = off_mm * along(edge), side = off_mm * body_side(edge);
  ring_strip(camera.to_screen(strip.reading_start - run - side), camera.to_screen(strip.reading_end + run - side), camera.to_screen(strip.far_end + run + side), camera.to_screen(strip.far_start - run + side), overlay);
}

}  // namespace

void draw_focus(const Session& session, const Thing& thing, Overlay& overlay) {
  if (!place_among_things(session, thing)) return;
  const Camera& camera = session.desk.camera;
  const auto ring = [&](SheetPoint at, double radius_px) { overlay.brush().ring(camera.to_screen(at), radius_px + k_clear_px, Ink::focus, k_ring_px); };
  const auto* leg = std::get_if<LegId>(&thing);
  if (std::holds_alternative<SheetItself>(thing)) {
    const PaperSize paper = paper_size(session.document().sheet.paper);
    return ring_box(camera, {0, 0, paper.width_mm, paper.height_mm}, overlay);
  }
  if (leg) {
    const Leg& found = *session.document().legs.find(*leg);
    return ring_line(camera, place_of(session, found.from), place_of(session, found.to), 2, overlay);
  }
  if (const auto* part = std::get_if<EdgePart>(&thing)) {
    if (*part == EdgePart::body) return ring_edge_body(session, overlay);
    return ring(handle(edge_strip(session, *session.desk.edge), *part == EdgePart::end_a ? EdgeEnd::a : EdgeEnd::b), k_handle_radius_px);
  }
  const SheetPoint stands = *hold_of(session, thing);
  const bool moved = session.run && session.run->thing == thing && !std::holds_alternative<DividersPart>(thing);
  const SheetPoint at = moved ? session.run->at : stands;
  if (moved) overlay.dashed_line(camera.to_screen(stands), camera.to_screen(at), Ink::focus, 1.4);
  if (const auto* note = std::get_if<NoteId>(&thing)) {
    const std::optional<LaidNote> laid = lay_note(at, session.document().text_notes.find(*note)->text, session.settings.legibility(camera.px_per_mm));
    if (laid) return ring_box(camera, laid->covers, overlay);
  }
  if (const auto* rose = std::get_if<RoseId>(&thing)) return ring(at, session.document().roses.find(*rose)->radius_mm * camera.px_per_mm);
  ring(at, std::holds_alternative<MarkId>(thing) ? k_mark_sign_px : k_point_px);
}

}  // namespace fogsheet
