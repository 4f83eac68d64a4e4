#include "shell/canvas/canvas.h"

#include <cmath>

#include "core/figure/note_figure.h"
#include "core/figure/sheet_figure.h"
#include "core/figure/weights.h"
#include "shell/canvas/direction_view.h"
#include "shell/canvas/dividers_view.h"
#include "shell/canvas/edge_view.h"
#include "shell/canvas/focus_view.h"
#include "shell/canvas/loupe.h"
#include "shell/canvas/overlay.h"
#include "shell/own_position_on_sheet.h"
#include "shell/plotted_passage.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

// While a zoom goes on, the lists are stretched by up to this before they are drawn anew for the zoom they are seen at.
constexpr double k_most_stretch = 1.12;
constexpr double k_selected = 1.5;  // times the weight of a leg
constexpr double k_settled_ticks_ms = 400;  // how long ticks say that it has settled
constexpr double k_zoom_rest_ms = 160;  // after which the zoom counts as ended

enum LayerId { k_below = 1, k_tint, k_sheet, k_above, k_loupe_below, k_loupe_tint, k_loupe_sheet, k_loupe_above, k_loupe_rim, k_paper, k_loupe_paper };

/// @param scale, offset  of the paper on the canvas
DrawnLayer photograph_layer(double scale, ScreenPoint offset, bool in_lens) { return {.scale = scale, .offset = offset, .in_lens = in_lens, .is_photograph = true}; }

std::optional<DrawnPhotograph> drawn_photograph(const Session& session) {
  if (!is_shown(session.photograph)) return std::nullopt;
  const Palette palette = session.settings.palette;
  return DrawnPhotograph{.transform = laid(session, *session.photograph).transform,
                         .within = session.facts().projection->neat_line(),
                         .paper = colour_of(palette, Ink::paper),
                         .ink = colour_of(palette, Ink::graticule),
                         .opacity = opacity_of(session, *session.photograph),
                         .is_dark = is_dark(palette)};
}

}  // namespace

Canvas::Canvas()
    : sheet_{.paper = kit_.new_list(), .below = kit_.new_list(), .sheet = kit_.new_list()}, in_loupe_{.paper = kit_.new_list(), .below = kit_.new_list(), .sheet = kit_.new_list()},
      tint_(kit_.new_list()), above_(kit_.new_list()), above_in_loupe_(kit_.new_list()), loupe_rim_(kit_.new_list()) {}

void Canvas::draw_sheet(const Session& session, const Drawn& wanted, SheetLists& lists) {
  if (wanted == lists.drawn) return;
  const double px_per_mm = wanted.px_per_mm;
  const Facts& facts = session.facts();
  const FigureSettings settings{.legibility = session.settings.legibility(px_per_mm), .rounding = session.settings.rounding};
  const Figure figure = sheet_figure(session.document(), words::sheet_notes(session.document(), facts.rose_variations, session.settings.rounding), settings, plotted_passage(session));
  const auto draw_lists = [&] {
    kit_.glyphs.begin_drawing();
    kit_.begin(*lists.paper);
    kit_.begin(*lists.below);
    kit_.begin(*lists.sheet);
    Brush(kit_, *lists.paper).shapes(figure.on(Layer::paper), px_per_mm);
    Brush below(kit_, *lists.below), sheet(kit_, *lists.sheet);
    for (const Layer layer : {Layer::graticule, Layer::dangers}) below.shapes(figure.on(layer), px_per_mm);
    for (const Layer layer : {Layer::rose, Layer::legs, Layer::border, Layer::marks, Layer::labels, Layer::title}) sheet.shapes(figure.on(layer), px_per_mm);
  };
  draw_lists();
  if (kit_.glyphs.crowded()) {
    kit_.glyphs.start_anew();
    sheet_.drawn = in_loupe_.drawn = {};  // what was drawn before has lost its glyphs
    draw_lists();
  }
  lists.drawn = wanted;
  ++lists.revision;
}

void Canvas::draw_tint(const Session& session, const std::optional<StraightEdge>& edge) {
  kit_.begin(*tint_);
  if (!edge) return;
  Brush brush(kit_, *tint_);
  draw_edge_tint(session, *edge, brush);
}

void Canvas::draw_above(const Session& session, const Tool& tool, const std::optional<StraightEdge>& edge, ImDrawList& list, View view) {
  kit_.begin(list);
  Brush brush(kit_, list, view);
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
  if (const RoseInReach* rose = edge && settled_now_ ? settled_rose(session, *edge) : nullptr) overlay.snap_ticks(desk.camera.to_screen(rose->centre));
  if (desk.direction && edge) draw_line_along_edge(session, overlay);
  if (desk.dividers) draw_dividers(session, *desk.dividers, desk.tool == ToolId::dividers, overlay);
  draw_own_position(session, overlay);
  tool.draw_preview(session, overlay);
  if (session.in_focus) draw_focus(session, *session.in_focus, overlay);
  else if (session.run) draw_focus(session, session.run->thing, overlay);
}

void Canvas::draw_loupe(const Session& session, const Tool& tool, const std::optional<StraightEdge>& edge, ScreenPoint loupe_at) {
  const std::optional<Aimed> aimed = tool.aimed(session);
  if (!aimed) return;
  const Camera& camera = session.desk.camera;
  const FreeArea area = session.free_area();
  const ScreenPoint middle = loupe_middle(loupe_at, area, loupe_to_the_right_);
  const View view = loupe_view(middle, camera.to_screen(aimed->at));
  Brush ground(kit_, *above_);
  draw_loupe_ground(middle, ground);
  draw_above(session, tool, edge, *above_in_loupe_, view);
  kit_.begin(*loupe_rim_);
  Brush rim(kit_, *loupe_rim_);
  const Mark* on = aimed->on ? session.document().marks.find(*aimed->on) : nullptr;
  draw_loupe_rim(middle, area, on ? on->name : "", rim);

  frame_.lens = Lens{middle, k_loupe_radius_px};
  const double device = 1 / kit_.pixel_ratio;
  const ScreenPoint corner{k_loupe_scale * camera.origin.x_px + view.offset.x_px, k_loupe_scale * camera.origin.y_px + view.offset.y_px};
  for (const DrawnLayer& layer : {DrawnLayer{k_loupe_paper, in_loupe_.revision, in_loupe_.paper.get(), device, corner, true},
                                  photograph_layer(k_loupe_scale * camera.px_per_mm, corner, true),
                                  DrawnLayer{k_loupe_below, in_loupe_.revision, in_loupe_.below.get(), device, corner, true},
                                  DrawnLayer{k_loupe_tint, 0, tint_.get(), k_loupe_scale * device, view.offset, true},
                                  DrawnLayer{k_loupe_sheet, in_loupe_.revision, in_loupe_.sheet.get(), device, corner, true},
                                  DrawnLayer{k_loupe_above, 0, above_in_loupe_.get(), device, {}, true},
                                  DrawnLayer{k_loupe_rim, 0, loupe_rim_.get(), device, {}}})
    frame_.layers.push_back(layer);
}

std::optional<StraightEdge> Canvas::edge_shown(const Session& session, double now_ms) {
  const std::optional<StraightEdge>& edge = session.desk.edge;
  if (edge && last_edge_ && edge->settled_on && !last_edge_->settled_on) {
    settle_from_ = last_edge_;
    settled_at_ms_ = now_ms;
  }
  last_edge_ = edge;
  const double part = (now_ms - settled_at_ms_) / (k_settle_s * 1000);
  settled_now_ = edge && edge->settled_on && now_ms - settled_at_ms_ < k_settled_ticks_ms;
  if (settled_now_) moving_ = true;
  if (!edge || !edge->settled_on || !settle_from_ || part >= 1 || session.settings.reduced_motion) {
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

const DrawnFrame& Canvas::frame(const Session& session, const Tool& tool, std::optional<ScreenPoint> loupe_at, double now_ms) {
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
  const double drawn_px_per_mm = sheet_.drawn.px_per_mm;
  const double stretch = drawn_px_per_mm > 0 ? camera.px_per_mm / drawn_px_per_mm : 1e9;
  if (zooming && stretch < k_most_stretch && stretch > 1 / k_most_stretch) wanted.px_per_mm = drawn_px_per_mm;
  if (loupe_at) {
    Drawn enlarged = wanted;
    enlarged.px_per_mm = k_loupe_scale * camera.px_per_mm;
    draw_sheet(session, enlarged, in_loupe_);
  }
  draw_sheet(session, wanted, sheet_);  // after the loupe's, which may have made the glyphs start anew
  moving_ = wanted.px_per_mm != camera.px_per_mm;

  const std::optional<StraightEdge> edge = edge_shown(session, now_ms);
  draw_tint(session, edge);
  draw_above(session, tool, edge, *above_, {});

  const double device = 1 / kit_.pixel_ratio, stretched = device * camera.px_per_mm / wanted.px_per_mm;
  frame_.photograph = drawn_photograph(session);
  frame_.layers = {{k_paper, sheet_.revision, sheet_.paper.get(), stretched, camera.origin},
                   photograph_layer(camera.px_per_mm, camera.origin, false),
                   {k_below, sheet_.revision, sheet_.below.get(), stretched, camera.origin},
                   {k_tint, 0, tint_.get(), device, {}},
                   {k_sheet, sheet_.revision, sheet_.sheet.get(), stretched, camera.origin},
                   {k_above, 0, above_.get(), device, {}}};
  frame_.lens.reset();
  if (loupe_at) draw_loupe(session, tool, edge, *loupe_at);
  frame_.background = packed(colour_of(kit_.palette, Ink::table));
  frame_.halo = packed(colour_of(kit_.palette, Ink::paper));
  return frame_;
}

}  // namespace fogsheet
