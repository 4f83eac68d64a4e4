// The glyphs of the embedded typeface as one image of distances from their outlines, so that one quad a glyph is crisp at
// any size, turn and pixel ratio, and its halo comes from the same texels. Glyphs are added as they are first used. A line
// with characters that the typeface lacks is one glyph, drawn by the machine's own typefaces.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/figure/figure.h"
#include "shell/platform.h"

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

  /// Who draws what the typeface lacks; none: nobody does.
  void set_machine(Platform& machine) { machine_ = &machine; }

  /// @param bytes  an OpenType file, kept by the caller as long as the atlas. False when it can't be read.
  bool set_face(Face face, std::span<const std::uint8_t> bytes);

  /// The glyph, drawn into the image on first use. Without its face: an empty glyph of 1 em. One that the face lacks: a
  /// question mark in the width that core counts for it.
  const Glyph& glyph(Face face, char32_t code_point);

  /// A line that the typeface can't draw alone, as one glyph no wider than core counts. Null when it can't be had.
  const Glyph* line(Face face, std::string_view text);

  /// A drawing of all that is on the sheet begins. When it is crowded at its end, lines were left out of the image for want
  /// of room that others take which are not in this drawing: start anew, and draw again.
  void begin_drawing();
  bool crowded() const;
  /// Forgets every glyph; the image shrinks to nothing. What was drawn with it before is void.
  void start_anew();

  std::span<const std::uint8_t> texels() const { return texels_; }
  int width() const { return k_width; }
  int height() const { return height_; }
  std::uint64_t revision() const { return revision_; }

  /// Texels from an outline (value 128) to value 0 or 255; and texels an em.
  static constexpr int k_range_px = 6;
  static constexpr double k_px_per_em = 40;

 private:
  static constexpr int k_width = 2048;        // any WebGL2 has textures of this side
  static constexpr int k_least_height = 256;
  static constexpr int k_most_lines_px = 1536;  // rows that lines may take up; below is room for every glyph of the faces
  struct FontFile;

  struct Line {
    Glyph glyph;
    bool left_out = false;      // for want of room
    std::uint64_t drawing = 0;  // the last that it was in
  };

  Glyph drawn(Face face, const FontFile& font, char32_t code_point);
  Line drawn_line(Face face, const std::string& text);
  /// Puts a coverage with k_range_px of nothing around it into the image, and says where it lies there.
  Glyph put(const std::vector<std::uint8_t>& coverage, int width, int height);
  /// Room for a glyph of that size; the image grows downwards. Its top left corner.
  struct Place {
    int x = 0, y = 0;
  };
  Place room(int width, int height);

  Platform* machine_ = nullptr;
  std::unique_ptr<FontFile> faces_[3];
  std::map<std::pair<int, char32_t>, Glyph> glyphs_;
  std::map<std::pair<int, std::string>, Line> lines_;
  std::uint64_t drawing_ = 0;
  bool left_out_ = false;
  std::vector<std::uint8_t> texels_;
  int height_ = k_least_height;
  // Where the next glyph goes. None begins at the image's left edge: what is interpolated to a hair less than nought there
  // would count as a solid shape (k_halo_u).
  static constexpr int k_first_x = 1;
  Place shelf_{k_first_x, 0};
  int shelf_height_ = 0;
  std::uint64_t revision_ = 1;
};

}  // namespace fogsheet
