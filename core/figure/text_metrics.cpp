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

double advance_em(const generated::FaceMetrics& metrics, char32_t character) {
  const auto found = std::lower_bound(metrics.widths.begin(), metrics.widths.end(), character,
                                      [](const generated::GlyphWidth& width, char32_t wanted) { return width.character < wanted; });
  if (found == metrics.widths.end() || found->character != character) return 1;
  return static_cast<double>(found->advance_units) / metrics.units_per_em;
}

}  // namespace

double text_width_em(std::string_view text, Face face) {
  const generated::FaceMetrics& metrics = metrics_of(face);
  double width_em = 0;
  while (!text.empty()) width_em += advance_em(metrics, next_code_point(text));
  return width_em;
}

double cap_height_em(Face face) { return metrics_of(face).cap_height_em; }

}  // namespace fogsheet
