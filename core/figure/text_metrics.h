// Advance widths of the embedded typeface, for placing labels alike on screen, in print and in export.
#pragma once

#include <cstdint>
#include <string_view>

#include "core/base/utf8.h"
#include "core/figure/figure.h"

namespace fogsheet {

/// Width of a UTF-8 text, em. A character that the typeface lacks counts 1 em; broken UTF-8 counts 1 em a byte.
double text_width_em(std::string_view text, Face face);

/// Height of a capital and of a figure, em.
double cap_height_em(Face face);

}  // namespace fogsheet
