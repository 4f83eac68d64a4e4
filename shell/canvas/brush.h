// Draws core's shapes and our own signs into a draw list: the one place that knows ImGui's draw list. It is told CSS pixels;
// the lists it fills are in pixels of the device.
#pragma once

#include <memory>
#include <string_view>

#include "core/figure/figure.h"
#include "imgui.h"
#include "shell/canvas/glyph_atlas.h"
#include "shell/pointer.h"
#include "shell/style.h"

namespace fogsheet {

/// What every draw list needs: ImGui's shared tables, the glyphs, the palette, the pixel ratio.
class DrawKit {
 public:
  DrawKit();
  ~DrawKit();
  GlyphAtlas glyphs;
  Palette palette = Palette::day;
  int dim_step = 0;
  double pixel_ratio = 1;

  struct ListDeleter {
    void operator()(ImDrawList* list) const;
  };
  using List = std::unique_ptr<ImDrawList, ListDeleter>;
  List new_list() const;
  /// Empties it for drawing anew.
  void begin(ImDrawList& list) const;

 private:
  struct Shared;
  std::unique_ptr<Shared> shared_;
};

/// Where the points that a brush is told come to lie. What is drawn there keeps its weight and size.
struct View {
  double scale = 1;
  ScreenPoint offset;
};

class Brush {
 public:
  Brush(DrawKit& kit, ImDrawList& list, View view = {}) : kit_(kit), list_(list), view_(view) {}

  /// How far apart two points must be told to be, to lie that far apart in the view.
  double apart(double px) const { return px / view_.scale; }

  void line(ScreenPoint a, ScreenPoint b, Ink ink, double width_px, double opacity = 1);
  void dashed(ScreenPoint a, ScreenPoint b, Ink ink, double width_px, double on_px, double off_px);
  void dotted(ScreenPoint a, ScreenPoint b, Ink ink, double width_px, double step_px);
  /// Convex.
  void fill(std::initializer_list<ScreenPoint> corners, Ink ink, double opacity = 1);
  void disc(ScreenPoint centre, double radius_px, Ink fill, Ink stroke, double width_px);
  void ring(ScreenPoint centre, double radius_px, Ink stroke, double width_px);
  /// On the baseline at the anchor, turned about it. @param size_px  em
  void text(ScreenPoint at, std::string_view text, double size_px, Face face, Anchor anchor, Ink ink, bool halo, double turn_deg = 0);

  /// A layer of a figure, scaled so.
  void shapes(const std::vector<Shape>& shapes, double px_per_mm);

 private:
  void draw(const Path& path, double px_per_mm);
  void draw(const Segments& segments, double px_per_mm);
  void draw(const Circle& circle, double px_per_mm);
  void draw(const Text& text, double px_per_mm);
  struct Pen {
    std::uint32_t colour;
    float width;
  };
  Pen pen(Ink ink, double width_px, double opacity) const;
  std::uint32_t colour(Ink ink, double opacity = 1) const;
  ImVec2 point(ScreenPoint p) const;
  float length(double px) const;

  DrawKit& kit_;
  ImDrawList& list_;
  View view_;
};

}  // namespace fogsheet
