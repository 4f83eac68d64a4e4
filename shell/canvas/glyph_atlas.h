// The glyphs of the embedded typeface as one image of distances from their outlines, so that one quad a glyph is crisp at
// any size, turn and pixel ratio, and its halo comes from the same texels. Glyphs are added as they are first used.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <span>
#include <vector>

#include "core/figure/figure.h"

namespace fogsheet {

/// Where a glyph lies in the image, texels, which stay true when the image grows; where about its pen position (em, y
/// downwards); and its advance, em.
struct Glyph {
  float u0_px = 0, v0_px = 0, u1_px = 0, v1_px = 0;
  double left_em = 0, top_em = 0, right_em = 0, bottom_em = 0;
  double advance_em = 1;
  bool empty = true;  // nothing to draw: a space, or no such glyph
};

class GlyphAtlas {
 public:
  GlyphAtlas();
  ~GlyphAtlas();

  /// @param bytes  an OpenType file, kept by the caller as long as the atlas. False when it can't be read.
  bool set_face(Face face, std::span<const std::uint8_t> bytes);

  /// The glyph, drawn into the image on first use. Without its face: an empty glyph of 1 em.
  const Glyph& glyph(Face face, char32_t code_point);

  std::span<const std::uint8_t> texels() const { return texels_; }
  int width() const { return k_width; }
  int height() const { return height_; }
  std::uint64_t revision() const { return revision_; }

  /// Texels from an outline (value 128) to value 0 or 255; and texels an em.
  static constexpr int k_range_px = 6;
  static constexpr double k_px_per_em = 40;

 private:
  static constexpr int k_width = 1024;
  struct FontFile;

  Glyph drawn(const FontFile& font, char32_t code_point);
  /// Room for a glyph of that size; the image grows downwards. Its top left corner.
  struct Place {
    int x = 0, y = 0;
  };
  Place room(int width, int height);

  std::unique_ptr<FontFile> faces_[3];
  std::map<std::pair<int, char32_t>, Glyph> glyphs_;
  std::vector<std::uint8_t> texels_;
  int height_ = 512;
  Place shelf_;           // where the next glyph goes
  int shelf_height_ = 0;
  std::uint64_t revision_ = 1;
};

}  // namespace fogsheet
