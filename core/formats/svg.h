// A figure as SVG. Inks are classes (fill-magenta, stroke-edge-fill), never style attributes, which a strict page policy
// forbids: a page gives the classes their colours, a file of its own brings them in a style sheet.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/figure/figure.h"
#include "core/sheet/paper.h"

namespace fogsheet {

/// A colour for each ink, by its number: "#rrggbb".
using SvgPalette = std::array<std::string, k_ink_count>;

/// The ink's name in classes: "edge-fill". @param ink any but none.
std::string_view ink_class(Ink ink);

/// A file that stands alone: at true size, a unit of its numbers a millimetre, so that it prints to scale; with its colours.
/// @param title what it is, for those who can't see it and for the window's head; UTF-8, any characters.
std::string svg_file(const Figure& figure, PaperSize size, const SvgPalette& palette, std::string_view title);

/// For inside a page's panel, which gives it its width, its typeface and its colours.
/// @param view  the part of the figure that is shown.
std::string panel_svg(const Figure& figure, const SheetRect& view);

}  // namespace fogsheet
