// Draws the application's draw lists on the canvas through WebGL2. Each layer has vertex and index buffers of its own that
// are filled only when its revision changes, so that panning and zooming send nothing but a scale and an offset.
// One program draws all: solid shapes, and glyphs from an image of distances to their outlines, with a halo where asked.
#pragma once

#include <GLES3/gl3.h>
#include <emscripten/html5.h>

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "imgui.h"
#include "shell/app.h"

namespace fogsheet {

/// What a vertex belongs to is in its uv (GlyphImage in shell/app.h); all vertices of a triangle agree.
class GlRenderer {
 public:
  /// @param canvas  a selector of the page's canvas, which must outlive the renderer
  explicit GlRenderer(const char* canvas) : canvas_(canvas) {}
  ~GlRenderer();
  GlRenderer(const GlRenderer&) = delete;
  GlRenderer& operator=(const GlRenderer&) = delete;

  /// Makes the context (the first time) and everything in it. False when there is no WebGL2.
  bool attach();
  /// The browser took the context away, and all that was in it. attach() again when it gives it back.
  void lose();
  bool attached() const { return program_ != 0; }

  /// @param width, height  of the canvas in its own pixels
  void draw(const DrawnFrame& frame, const GlyphImage& glyphs, double pixel_ratio, int width, int height);

 private:
  /// A stretch of indices drawn with one call.
  struct Run {
    ImVec4 clip;
    unsigned first = 0;
    unsigned count = 0;
    bool halo = false;
  };
  struct Buffers {
    GLuint array = 0;
    GLuint vertices = 0;
    GLuint indices = 0;
    std::uint64_t revision = 0;
    std::vector<Run> runs;
  };

  Buffers& buffers_of(const DrawnLayer& layer);
  void upload(Buffers& buffers, const DrawnLayer& layer);
  void draw_photograph(const DrawnPhotograph& photograph, const DrawnLayer& layer, const std::optional<Lens>& lens, double pixel_ratio, int width, int height);
  void upload(const GlyphImage& glyphs);
  /// Of the canvas, in its pixels from the upper left.
  struct PixelBox {
    int left = 0, top = 0, right = 0, bottom = 0;
  };
  void clip(const ImVec4& rectangle, const DrawnLayer& layer, double pixel_ratio, const PixelBox& seen, int width, int height);
  static std::vector<Run> runs_of(const ImDrawList& list);

  const char* canvas_;
  EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context_ = 0;
  GLuint program_ = 0;
  GLuint texture_ = 0;
  std::optional<std::uint64_t> glyph_revision_;
  GLint place_ = -1;
  GLint pass_ = -1;
  GLint halo_ = -1;
  GLint lens_ = -1;
  GLint image_ = -1;
  std::map<int, Buffers> layers_;
};

}  // namespace fogsheet
