#include "shell/canvas/glyph_atlas.h"

#include <algorithm>
#include <cmath>

#include "core/figure/text_metrics.h"
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

GlyphAtlas::GlyphAtlas() : texels_(static_cast<std::size_t>(k_width) * k_least_height) {}
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
  return glyphs_[key] = font ? drawn(face, *font, code_point) : Glyph{};
}

Glyph GlyphAtlas::drawn(Face face, const FontFile& font, char32_t code_point) {
  const int index = stbtt_FindGlyphIndex(&font.info, static_cast<int>(code_point));
  if (index == 0) {
    const double width_em = character_width_em(code_point, face);
    Glyph sign = width_em > 0 && code_point != '?' ? glyph(face, '?') : Glyph{};
    const double aside_em = (width_em - sign.advance_em) / 2;
    sign.left_em += aside_em;
    sign.right_em += aside_em;
    sign.advance_em = width_em;
    return sign;
  }
  int advance = 0, bearing = 0;
  stbtt_GetGlyphHMetrics(&font.info, index, &advance, &bearing);
  int x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  stbtt_GetGlyphBitmapBox(&font.info, index, font.scale, font.scale, &x0, &y0, &x1, &y1);
  Glyph glyph;
  if (x1 > x0 && y1 > y0) {
    const int width = x1 - x0 + 2 * k_range_px, height = y1 - y0 + 2 * k_range_px;
    std::vector<std::uint8_t> coverage(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    stbtt_MakeGlyphBitmap(&font.info, coverage.data() + k_range_px * width + k_range_px, x1 - x0, y1 - y0, width, font.scale, font.scale, index);
    glyph = put(coverage, width, height);
    glyph.left_em = (x0 - k_range_px) / k_px_per_em;
    glyph.right_em = (x1 + k_range_px) / k_px_per_em;
    glyph.top_em = (y0 - k_range_px) / k_px_per_em;
    glyph.bottom_em = (y1 + k_range_px) / k_px_per_em;
  }
  glyph.advance_em = static_cast<double>(advance) * font.scale / k_px_per_em;
  return glyph;
}

const Glyph* GlyphAtlas::line(Face face, std::string_view text) {
  auto key = std::pair{static_cast<int>(face), std::string(text)};
  auto found = lines_.find(key);
  if (found == lines_.end()) {
    const Line line = drawn_line(face, key.second);
    found = lines_.emplace(std::move(key), line).first;
  }
  Line& line = found->second;
  line.drawing = drawing_;
  left_out_ = left_out_ || line.left_out;
  return line.glyph.empty ? nullptr : &line.glyph;
}

GlyphAtlas::Line GlyphAtlas::drawn_line(Face face, const std::string& text) {
  const double counted_em = text_width_em(text, face);
  if (!machine_ || counted_em <= 0) return {};
  if (left_out_) return {.left_out = true};  // whatever the next needs, it is not worth drawing
  // An overlong line is drawn coarser rather than cut: with half an em that may hang over at either end it fills the image.
  const double px_per_em = std::min(k_px_per_em, (k_width - k_first_x - 2 * k_range_px) / (counted_em + 1));
  const TextImage image = machine_->text_image(text, face, px_per_em, counted_em * px_per_em);
  const int width = image.width + 2 * k_range_px, height = image.height + 2 * k_range_px;
  if (image.width <= 0 || image.height <= 0 || width > k_width - k_first_x) return {};
  const bool next_row = shelf_.x + width > k_width;
  if ((next_row ? shelf_.y + shelf_height_ + 1 : shelf_.y) + height > k_most_lines_px) return {.left_out = true};
  std::vector<std::uint8_t> coverage(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  for (int y = 0; y < image.height; ++y) std::copy_n(image.coverage.data() + y * image.width, image.width, coverage.data() + (y + k_range_px) * width + k_range_px);
  Glyph glyph = put(coverage, width, height);
  glyph.left_em = -(image.pen_x + k_range_px) / px_per_em;
  glyph.right_em = glyph.left_em + width / px_per_em;
  glyph.top_em = -(image.baseline + k_range_px) / px_per_em;
  glyph.bottom_em = glyph.top_em + height / px_per_em;
  glyph.advance_em = image.advance_px / px_per_em;
  return {.glyph = glyph};
}

void GlyphAtlas::begin_drawing() {
  ++drawing_;
  left_out_ = false;
}

bool GlyphAtlas::crowded() const {
  return left_out_ && std::any_of(lines_.begin(), lines_.end(), [this](const auto& each) { return !each.second.glyph.empty && each.second.drawing != drawing_; });
}

void GlyphAtlas::start_anew() {
  glyphs_.clear();
  lines_.clear();
  shelf_ = {k_first_x, 0};
  shelf_height_ = 0;
  height_ = k_least_height;
  texels_.assign(static_cast<std::size_t>(k_width) * k_least_height, 0);
  ++revision_;
}

Glyph GlyphAtlas::put(const std::vector<std::uint8_t>& coverage, int width, int height) {
  const std::vector<std::uint8_t> field = distance_field(coverage, width, height, k_range_px);
  const Place place = room(width, height);
  for (int y = 0; y < height; ++y) std::copy_n(field.data() + y * width, width, texels_.data() + static_cast<std::size_t>(place.y + y) * k_width + place.x);
  ++revision_;
  Glyph glyph;
  glyph.u0_px = static_cast<float>(place.x);
  glyph.u1_px = static_cast<float>(place.x + width);
  glyph.v0_px = static_cast<float>(place.y);
  glyph.v1_px = static_cast<float>(place.y + height);
  glyph.empty = false;
  return glyph;
}

GlyphAtlas::Place GlyphAtlas::room(int width, int height) {
  if (shelf_.x + width > k_width) {
    shelf_ = {k_first_x, shelf_.y + shelf_height_ + 1};
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
