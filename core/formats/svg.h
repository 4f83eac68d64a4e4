// A figure as SVG. In a page's panel inks are classes (fill-magenta, stroke-edge-fill), to which the page gives its colours;
// what goes to paper or into a file brings its own, as attributes. Style attributes, which a strict page policy forbids,
// are nowhere.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/figure/paper_pages.h"
#include "core/sheet/paper.h"

namespace fogsheet {

/// A colour for each ink, by its number: "#rrggbb".
using SvgPalette = std::array<std::string, k_ink_count>;

/// The ink's name in classes: "edge-fill". @param ink any but none.
std::string_view ink_class(Ink ink);

/// A file that stands alone: at true size, a unit of its numbers a millimetre, so that it prints to scale; with its colours.
/// @param title what it is, for those who can't see it and for the window's head; UTF-8, any characters.
std::string svg_file(const Figure& figure, PaperSize size, const SvgPalette& palette, std::string_view title);

/// A page for a printer, the same way, a hair short of the paper's foot: its part of the sheet cut at its edges, and what is
/// its own.
std::string page_svg(const PaperPage& page, PaperSize size, const SvgPalette& palette, std::string_view title);

/// For inside a page's panel, which gives it its width, its typeface and its colours.
/// @param view  the part of the figure that is shown.
std::string panel_svg(const Figure& figure, const SheetRect& view);

}  // namespace fogsheet
