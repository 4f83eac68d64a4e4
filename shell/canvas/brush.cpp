#include "shell/canvas/brush.h"

#include <cmath>
#include <numbers>

#include "core/figure/text_metrics.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "shell/app.h"

namespace fogsheet {
namespace {

constexpr float k_circle_error_px = 0.15f;  // how far a drawn circle may lie from a true one

ScreenPoint scaled(SheetPoint p, double px_per_mm) { return {p.x_mm * px_per_mm, p.y_mm * px_per_mm}; }

}  // namespace

struct DrawKit::Shared {
  ImDrawListSharedData data;
};

DrawKit::DrawKit() : shared_(std::make_unique<Shared>()) {
  shared_->data.TexUvWhitePixel = ImVec2(-1, -1);
  shared_->data.InitialFlags = ImDrawListFlags_AntiAliasedLines | ImDrawListFlags_AntiAliasedFill;
  shared_->data.ClipRectFullscreen = ImVec4(-1e6f, -1e6f, 1e6f, 1e6f);
  shared_->data.SetCircleTessellationMaxError(k_circle_error_px);
}

DrawKit::~DrawKit() = default;

void DrawKit::ListDeleter::operator()(ImDrawList* list) const { delete list; }

DrawKit::List DrawKit::new_list() const {
  List list(new ImDrawList(&shared_->data));
  begin(*list);
  return list;
}

void DrawKit::begin(ImDrawList& list) const {
  list._ResetForNewFrame();
  list.PushClipRectFullScreen();
}

// ImGui draws nothing in a colour without opacity.
std::uint32_t Brush::colour(Ink ink, double opacity) const { return shown_at(kit_.dim_step, ink) ? packed(colour_of(kit_.palette, ink), opacity) : 0; }

// Lists are in pixels of the device, so that their soft rims are one such pixel wide.
ImVec2 Brush::point(ScreenPoint p) const { return {length(p.x_px * view_.scale + view_.offset.x_px), length(p.y_px * view_.scale + view_.offset.y_px)}; }
float Brush::length(double px) const { return static_cast<float>(px * kit_.pixel_ratio); }

Brush::Pen Brush::pen(Ink ink, double width_px, double opacity) const {
  const float width = length(width_px);
  // Thinner than a pixel can't be drawn: such a line is drawn paler instead.
  return {colour(ink, width < 1 ? opacity * width : opacity), width < 1 ? 1 : width};
}

void Brush::line(ScreenPoint a, ScreenPoint b, Ink ink, double width_px, double opacity) {
  // Not AddLine: it moves lines by half a pixel.
  const Pen drawn = pen(ink, width_px, opacity);
  list_.PathLineTo(point(a));
  list_.PathLineTo(point(b));
  list_.PathStroke(drawn.colour, 0, drawn.width);
}

void Brush::dashed(ScreenPoint a, ScreenPoint b, Ink ink, double width_px, double on_px, double off_px) {
  const double run_px = std::hypot(b.x_px - a.x_px, b.y_px - a.y_px);
  if (run_px <= 0) return;
  on_px = apart(on_px);
  off_px = apart(off_px);
  const double ux = (b.x_px - a.x_px) / run_px, uy = (b.y_px - a.y_px) / run_px;
  for (double from = 0; from < run_px; from += on_px + off_px) {
    const double to = std::min(from + on_px, run_px);
    line({a.x_px + ux * from, a.y_px + uy * from}, {a.x_px + ux * to, a.y_px + uy * to}, ink, width_px);
  }
}

void Brush::dotted(ScreenPoint a, ScreenPoint b, Ink ink, double width_px, double step_px) {
  const double run_px = std::hypot(b.x_px - a.x_px, b.y_px - a.y_px);
  const int dots = static_cast<int>(run_px / apart(step_px));
  for (int i = 0; i <= dots; ++i) {
    const double t = run_px > 0 ? i * apart(step_px) / run_px : 0;
    list_.AddCircleFilled(point({a.x_px + t * (b.x_px - a.x_px), a.y_px + t * (b.y_px - a.y_px)}), length(width_px / 2), colour(ink), 8);
  }
}

void Brush::fill(std::initializer_list<ScreenPoint> corners, Ink ink, double opacity) {
  for (const ScreenPoint corner : corners) list_.PathLineTo(point(corner));
  list_.PathFillConvex(colour(ink, opacity));
}

void Brush::disc(ScreenPoint centre, double radius_px, Ink inside, Ink stroke, double width_px) {
  list_.AddCircleFilled(point(centre), length(radius_px), colour(inside));
  ring(centre, radius_px, stroke, width_px);
}

void Brush::ring(ScreenPoint centre, double radius_px, Ink stroke, double width_px) {
  const Pen drawn = pen(stroke, width_px, 1);
  list_.AddCircle(point(centre), length(radius_px) + 0.5f, drawn.colour, 0, drawn.width);  // AddCircle draws half a pixel inside
}

void Brush::text(ScreenPoint at, std::string_view text, double size_px, Face face, Anchor anchor, Ink ink, bool halo, double turn_deg) {
  const std::uint32_t ink_colour = colour(ink);
  if (ink_colour == 0) return;
  const double turn = turn_deg * std::numbers::pi / 180, cos_turn = std::cos(turn), sin_turn = std::sin(turn);
  const float halo_u = halo ? k_halo_u : 0;
  const Glyph* line = is_in_typeface(text, face) ? nullptr : kit_.glyphs.line(face, text);
  double pen_em = 0;
  if (anchor != Anchor::start) pen_em = -(line ? line->advance_em : text_width_em(text, face)) * (anchor == Anchor::middle ? 0.5 : 1);
  const auto put = [&](const Glyph& glyph) {
    const auto corner = [&](double x_em, double y_em) {
      const double x = (pen_em + x_em) * apart(size_px), y = y_em * apart(size_px);
      return point({at.x_px + x * cos_turn - y * sin_turn, at.y_px + x * sin_turn + y * cos_turn});
    };
    list_.PrimReserve(6, 4);
    list_.PrimQuadUV(corner(glyph.left_em, glyph.top_em), corner(glyph.right_em, glyph.top_em), corner(glyph.right_em, glyph.bottom_em),
                     corner(glyph.left_em, glyph.bottom_em), ImVec2(glyph.u0_px + halo_u, glyph.v0_px), ImVec2(glyph.u1_px + halo_u, glyph.v0_px),
                     ImVec2(glyph.u1_px + halo_u, glyph.v1_px), ImVec2(glyph.u0_px + halo_u, glyph.v1_px), ink_colour);
  };
  if (line) return put(*line);
  while (!text.empty()) {
    const Glyph& glyph = kit_.glyphs.glyph(face, next_code_point(text));
    if (!glyph.empty) put(glyph);
    pen_em += glyph.advance_em;
  }
}

void Brush::shapes(const std::vector<Shape>& shapes, double px_per_mm) {
  for (const Shape& shape : shapes) std::visit([&](const auto& each) { draw(each, px_per_mm); }, shape);
}

void Brush::draw(const Path& path, double px_per_mm) {
  const auto trace = [&] {
    for (const SheetPoint p : path.points) list_.PathLineTo(point(scaled(p, px_per_mm)));
  };
  if (path.fill == Ink::bar && !shown_at(kit_.dim_step, Ink::bar)) {  // hollow
    trace();
    list_.PathStroke(packed(colour_of(kit_.palette, Ink::bar)), ImDrawFlags_Closed, 1);
  } else if (path.fill != Ink::none) {
    trace();
    list_.PathFillConvex(colour(path.fill, path.fill_opacity));
  }
  if (path.weight_mm > 0 && path.stroke != Ink::none) {
    trace();
    const Pen drawn = pen(path.stroke, path.weight_mm * px_per_mm, 1);
    list_.PathStroke(drawn.colour, path.closed ? ImDrawFlags_Closed : 0, drawn.width);
  }
}

void Brush::draw(const Segments& segments, double px_per_mm) {
  const double width_px = segments.weight_mm * px_per_mm;
  for (std::size_t i = 0; i + 1 < segments.ends.size(); i += 2) line(scaled(segments.ends[i], px_per_mm), scaled(segments.ends[i + 1], px_per_mm), segments.stroke, width_px);
}

void Brush::draw(const Circle& circle, double px_per_mm) {
  const ScreenPoint centre = scaled(circle.centre, px_per_mm);
  const double radius_px = circle.radius_mm * px_per_mm, width_px = circle.weight_mm * px_per_mm;
  if (circle.fill != Ink::none) list_.AddCircleFilled(point(centre), length(radius_px), colour(circle.fill, circle.fill_opacity));
  if (circle.stroke == Ink::none || width_px <= 0) return;
  if (circle.dash == Dash{}) return ring(centre, radius_px, circle.stroke, width_px);
  // Dots: as many as fit evenly.
  const double around_px = 2 * std::numbers::pi * radius_px;
  const int dots = std::max(8, static_cast<int>(around_px / (circle.dash.off_mm * px_per_mm)));
  for (int i = 0; i < dots; ++i) {
    const double a = 2 * std::numbers::pi * i / dots;
    list_.AddCircleFilled(point({centre.x_px + radius_px * std::cos(a), centre.y_px + radius_px * std::sin(a)}), length(width_px / 2), colour(circle.stroke), 8);
  }
}

void Brush::draw(const Text& text, double px_per_mm) {
  this->text(scaled(text.at, px_per_mm), text.text, text.height_mm * px_per_mm, text.face, text.anchor, text.ink, text.halo, text.turn_deg);
}

}  // namespace fogsheet
