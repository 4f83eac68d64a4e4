// Words written on the sheet: broken into lines, their first line's left end at a place.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/figure/figure.h"
#include "core/figure/legibility.h"

namespace fogsheet {

/// At line breaks, else at the last blank that fits, else within a word; lines of no more than `width_em`, which is over 1.
/// Bytes that are no UTF-8 count as characters of their own.
std::vector<std::string> broken_lines(std::string_view text, double width_em, Face face);

/// A note as it is laid out: what it covers, for presses and labels. Empty where it can't be read, and so is not drawn.
struct LaidNote {
  SheetRect covers;
  double height_mm = 0;  // em
  std::vector<std::string> lines;
};
std::optional<LaidNote> lay_note(SheetPoint at, std::string_view text, const Legibility& legibility);

/// Onto the layer of labels.
void add_note(Figure& figure, SheetPoint at, const LaidNote& note);

}  // namespace fogsheet
