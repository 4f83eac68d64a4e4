#include "shell/canvas/canvas.h"

#include <cmath>

#include "core/figure/note_figure.h"
#include "core/figure/sheet_figure.h"
#include "core/figure/weights.h"
#include "shell/canvas/direction_view.h"
#include "shell/canvas/dividers_view.h"
#include "shell/canvas/edge_view.h"
#include "shell/canvas/focus_view.h"
#include "shell/canvas/overlay.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

// While a zoom goes on, the lists are stretched by up to this before they are drawn anew for the zoom they are seen at.
constexpr double k_most_stretch = 1.12;
constexpr double k_selected = 1.5;  // times the weight of a leg
constexpr double k_zoom_rest_ms = 160;  // after which the zoom counts as ended

enum LayerId { k_below = 1, k_tint, k_sheet, k_above };

}  // namespace

Canvas::Canvas() : below_(kit_.new_list()), tint_(kit_.new_list()), sheet_(kit_.new_list()), above_(kit_.new_list()) {}

void Canvas::draw_sheet(const Session& session, double px_per_mm) {
  const Facts& facts = session.facts();
  const FigureSettings settings{.legibility = session.settings.legibility(px_per_mm), .rounding = session.settings.rounding};
  const Figure figure = sheet_figure(session.document(), words::sheet_notes(session.document(), facts.rose_variations, session.settings.rounding), settings);
  const auto draw_lists = [&] {
    kit_.glyphs.begin_drawing();
    kit_.begin(*below_);
    kit_.begin(*sheet_);
    Brush below(kit_, *below_), sheet(kit_, *sheet_);
    for (const Layer layer : {Layer::paper, Layer::graticule, Layer::dangers}) below.shapes(figure.on(layer), px_per_mm);
    for (const Layer layer : {Layer::rose, Layer::legs, Layer::border, Layer::marks, Layer::labels, Layer::title}) sheet.shapes(figure.on(layer), px_per_mm);
  };
  draw_lists();
  if (kit_.glyphs.crowded()) {
    kit_.glyphs.start_anew();
    draw_lists();
  }
  ++lists_revision_;
}

void Canvas::draw_tint(const Session& session, const std::optional<StraightEdge>& edge) {
  kit_.begin(*tint_);
  if (!edge) return;
  Brush brush(kit_, *tint_);
  draw_edge_tint(session, *edge, brush);
}

void Canvas::draw_above(const Session& session, const Tool& tool, const std::optional<StraightEdge>& edge) {
  kit_.begin(*above_);
  Brush brush(kit_, *above_);
  Overlay overlay(brush);
  const Desk& desk = session.desk;
  if (desk.selected_mark) overlay.snap_ticks(desk.camera.to_screen(place_of(session, *desk.selected_mark)));
  if (desk.selected_leg) {
    const Leg& leg = *session.document().legs.find(*desk.selected_leg);
    brush.line(desk.camera.to_screen(place_of(session, leg.from)), desk.camera.to_screen(place_of(session, leg.to)), Ink::ink, k_selected * weight_mm(Stroke::leg, session.settings.legibility(desk.camera.px_per_mm)) * desk.camera.px_per_mm);
  }
  if (desk.selected_note) {
    const TextNote& note = *session.document().text_notes.find(*desk.selected_note);
    if (const std::optional<LaidNote> laid = lay_note(session.facts().projection->to_sheet(unquantise(note.at)), note.text, session.settings.legibility(desk.camera.px_per_mm)))
      overlay.dashed_line(desk.camera.to_screen({laid->covers.left_mm, laid->covers.bottom_mm}), desk.camera.to_screen({laid->covers.right_mm, laid->covers.bottom_mm}), Ink::focus, 1.6);
  }
  if (desk.first_end) {
    const ScreenPoint at = desk.camera.to_screen(desk.first_end->at);
    overlay.snap_ticks(at);
    brush.disc(at, 3, Ink::edge, Ink::paper, 1);
  }
  if (desk.direction && edge) draw_set_here(session, *desk.direction, overlay);
  if (edge) draw_edge(session, *edge, tool.sliding(), overlay);
  if (desk.direction && edge) draw_line_along_edge(session, overlay);
  if (desk.dividers) draw_dividers(session, *desk.dividers, desk.tool == ToolId::dividers, overlay);
  tool.draw_preview(session, overlay);
  if (session.in_focus) draw_focus(session, *session.in_focus, overlay);
  else if (session.run) draw_focus(session, session.run->thing, overlay);
}

std::optional<StraightEdge> Canvas::edge_shown(const Session& session, double now_ms) {
  const std::optional<StraightEdge>& edge = session.desk.edge;
  if (edge && last_edge_ && edge->settled_on && !last_edge_->settled_on && !session.settings.reduced_motion) {
    settle_from_ = last_edge_;
    settled_at_ms_ = now_ms;
  }
  last_edge_ = edge;
  const double part = (now_ms - settled_at_ms_) / (k_settle_s * 1000);
  if (!edge || !edge->settled_on || !settle_from_ || part >= 1) {
    settle_from_.reset();
    return edge;
  }
  moving_ = true;
  const double eased = 1 - (1 - part) * (1 - part);
  const SheetVector left = (1 - eased) * (settle_from_->a - edge->a);
  StraightEdge on_its_way = *edge;
  on_its_way.a = on_its_way.a + left;
  on_its_way.b = on_its_way.b + left;
  return on_its_way;
}

const DrawnFrame& Canvas::frame(const Session& session, const Tool& tool, double now_ms) {
  moving_ = false;
  kit_.palette = session.settings.palette;
  kit_.dim_step = session.settings.dim_step();
  kit_.pixel_ratio = session.viewport.pixel_ratio;
  const Camera& camera = session.desk.camera;
  if (camera.px_per_mm != last_px_per_mm_) {
    if (last_px_per_mm_ != 0) zoomed_at_ms_ = now_ms;
    last_px_per_mm_ = camera.px_per_mm;
  }
  const bool zooming = now_ms - zoomed_at_ms_ < k_zoom_rest_ms;
  Drawn wanted{session.history().revision(), kit_.palette, session.settings.rounding, session.settings.bold_lines, kit_.dim_step, camera.px_per_mm, kit_.pixel_ratio};
  const double stretch = drawn_.px_per_mm > 0 ? camera.px_per_mm / drawn_.px_per_mm : 1e9;
  if (zooming && stretch < k_most_stretch && stretch > 1 / k_most_stretch) wanted.px_per_mm = drawn_.px_per_mm;
  if (wanted != drawn_) {
    draw_sheet(session, wanted.px_per_mm);
    drawn_ = wanted;
  }
  moving_ = wanted.px_per_mm != camera.px_per_mm;

  const std::optional<StraightEdge> edge = edge_shown(session, now_ms);
  draw_tint(session, edge);
  draw_above(session, tool, edge);

  const double device = 1 / kit_.pixel_ratio, stretched = device * camera.px_per_mm / drawn_.px_per_mm;
  frame_.layers = {{k_below, lists_revision_, below_.get(), stretched, camera.origin},
                   {k_tint, 0, tint_.get(), device, {}},
                   {k_sheet, lists_revision_, sheet_.get(), stretched, camera.origin},
                   {k_above, 0, above_.get(), device, {}}};
  frame_.background = packed(colour_of(kit_.palette, Ink::table));
  frame_.halo = packed(colour_of(kit_.palette, Ink::paper));
  return frame_;
}

}  // namespace fogsheet
