#include "core/figure/text_metrics.h"

#include <algorithm>

#include "core/base/check.h"
#include "generated/glyph_widths.h"

namespace fogsheet {
namespace {

const generated::FaceMetrics& metrics_of(Face face) {
  switch (face) {
    case Face::regular: return generated::k_regular;
    case Face::bold: return generated::k_bold;
    case Face::italic: return generated::k_italic;
  }
  check_failed("face", "a face without metrics", __FILE__, __LINE__);
}

/// Null when the face lacks it.
const generated::GlyphWidth* in_table(const generated::FaceMetrics& metrics, char32_t character) {
  const auto found = std::lower_bound(metrics.widths.begin(), metrics.widths.end(), character,
                                      [](const generated::GlyphWidth& width, char32_t wanted) { return width.character < wanted; });
  return found == metrics.widths.end() || found->character != character ? nullptr : &*found;
}

bool has_no_width(char32_t character) {
  char32_t end = 0;
  bool without = false;
  for (const std::uint16_t length : generated::k_zero_width_runs) {
    end += length;
    if (character < end) return without;
    without = !without;
  }
  return without;
}

}  // namespace

double character_width_em(char32_t character, Face face) {
  const generated::FaceMetrics& metrics = metrics_of(face);
  if (const generated::GlyphWidth* width = in_table(metrics, character)) return static_cast<double>(width->advance_units) / metrics.units_per_em;
  return has_no_width(character) ? 0 : 1;
}

double text_width_em(std::string_view text, Face face) {
  double width_em = 0;
  while (!text.empty()) width_em += character_width_em(next_code_point(text), face);
  return width_em;
}

bool is_in_typeface(std::string_view text, Face face) {
  const generated::FaceMetrics& metrics = metrics_of(face);
  while (!text.empty())
    if (!in_table(metrics, next_code_point(text))) return false;
  return true;
}

double cap_height_em(Face face) { return metrics_of(face).cap_height_em; }

}  // namespace fogsheet
