#include "shell/canvas/glyph_atlas.h"

#include <algorithm>
#include <cmath>

#include "shell/canvas/distance_field.h"

#define STBTT_STATIC
#define STB_TRUETYPE_IMPLEMENTATION
#if defined(__GNUC__)
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wunused-function"
#endif
#include "stb/stb_truetype.h"
#if defined(__GNUC__)
#pragma GCC diagnostic pop
#endif

namespace fogsheet {

struct GlyphAtlas::FontFile {
  stbtt_fontinfo info;
  float scale = 0;  // font units to texels
};

GlyphAtlas::GlyphAtlas() : texels_(static_cast<std::size_t>(k_width) * 512) {}
GlyphAtlas::~GlyphAtlas() = default;

bool GlyphAtlas::set_face(Face face, std::span<const std::uint8_t> bytes) {
  auto font = std::make_unique<FontFile>();
  const int offset = stbtt_GetFontOffsetForIndex(bytes.data(), 0);
  if (offset < 0 || !stbtt_InitFont(&font->info, bytes.data(), offset)) return false;
  font->scale = stbtt_ScaleForMappingEmToPixels(&font->info, static_cast<float>(k_px_per_em));
  faces_[static_cast<int>(face)] = std::move(font);
  return true;
}

const Glyph& GlyphAtlas::glyph(Face face, char32_t code_point) {
  const auto key = std::pair{static_cast<int>(face), code_point};
  const auto found = glyphs_.find(key);
  if (found != glyphs_.end()) return found->second;
  const std::unique_ptr<FontFile>& font = faces_[key.first];
  return glyphs_[key] = font ? drawn(*font, code_point) : Glyph{};
}

Glyph GlyphAtlas::drawn(const FontFile& font, char32_t code_point) {
  const int index = stbtt_FindGlyphIndex(&font.info, static_cast<int>(code_point));
  Glyph glyph;
  if (index == 0) return glyph;  // 1 em wide and empty: the embedded typeface lacks it
  int advance = 0, bearing = 0;
  stbtt_GetGlyphHMetrics(&font.info, index, &advance, &bearing);
  glyph.advance_em = static_cast<double>(advance) * font.scale / k_px_per_em;
  int x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  stbtt_GetGlyphBitmapBox(&font.info, index, font.scale, font.scale, &x0, &y0, &x1, &y1);
  if (x1 <= x0 || y1 <= y0) return glyph;

  const int width = x1 - x0 + 2 * k_range_px, height = y1 - y0 + 2 * k_range_px;
  std::vector<std::uint8_t> coverage(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  stbtt_MakeGlyphBitmap(&font.info, coverage.data() + k_range_px * width + k_range_px, x1 - x0, y1 - y0, width, font.scale, font.scale, index);
  const std::vector<std::uint8_t> field = distance_field(coverage, width, height, k_range_px);

  const Place place = room(width, height);
  for (int y = 0; y < height; ++y) std::copy_n(field.data() + y * width, width, texels_.data() + static_cast<std::size_t>(place.y + y) * k_width + place.x);
  ++revision_;
  glyph.u0_px = static_cast<float>(place.x);
  glyph.u1_px = static_cast<float>(place.x + width);
  glyph.v0_px = static_cast<float>(place.y);
  glyph.v1_px = static_cast<float>(place.y + height);
  glyph.left_em = (x0 - k_range_px) / k_px_per_em;
  glyph.right_em = (x1 + k_range_px) / k_px_per_em;
  glyph.top_em = (y0 - k_range_px) / k_px_per_em;
  glyph.bottom_em = (y1 + k_range_px) / k_px_per_em;
  glyph.empty = false;
  return glyph;
}

GlyphAtlas::Place GlyphAtlas::room(int width, int height) {
  if (shelf_.x + width > k_width) {
    shelf_ = {0, shelf_.y + shelf_height_ + 1};
    shelf_height_ = 0;
  }
  while (shelf_.y + height > height_) height_ *= 2;
  texels_.resize(static_cast<std::size_t>(k_width) * static_cast<std::size_t>(height_));
  const Place place = shelf_;
  shelf_.x += width + 1;
  shelf_height_ = std::max(shelf_height_, height);
  return place;
}

}  // namespace fogsheet
