// Advance widths of the embedded typeface, for placing labels alike on screen, in print and in export.
#pragma once

#include <cstdint>
#include <string_view>

#include "core/base/utf8.h"
#include "core/figure/figure.h"

namespace fogsheet {

/// Width of a UTF-8 text, em. A character that the typeface lacks counts 1 em, whatever typeface will draw it, but nothing
/// where it stands on or joins the one before it; broken UTF-8 counts 1 em a byte. Nothing is drawn wider than is counted.
double text_width_em(std::string_view text, Face face);
double character_width_em(char32_t character, Face face);

/// Whether the typeface has every character of a text.
bool is_in_typeface(std::string_view text, Face face);

/// Height of a capital and of a figure, em.
double cap_height_em(Face face);

}  // namespace fogsheet
