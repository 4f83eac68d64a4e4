// The words of printing: what a slip asks, and what stands on paper alone.
#pragma once

#include <string>

#include "core/figure/paper_pages.h"

namespace fogsheet::words {

inline std::string print_title() { return "Print the sheet"; }
inline std::string print_beside() { return "to true scale, for real instruments"; }
inline std::string print_what_question() { return "What is on it"; }
inline std::string print_plotted() { return "as plotted"; }
inline std::string print_blank() { return "blank"; }
inline std::string print_ink_question() { return "Rose and lines"; }
inline std::string print_magenta() { return "rose magenta"; }
inline std::string print_black() { return "all black"; }
/// Why the one or the other.
std::string print_ink_hint(bool black);
inline std::string sheet_on_paper() { return "The sheet on its paper"; }
/// "4 pages, 2 across and 2 down, ..."
std::string pages_there_will_be(const PagePlan& plan);
inline std::string print_at_full_size() { return "In the browser’s window choose 100 %, not “fit to page”, then lay a ruler on the line of 100 mm."; }
inline std::string print_it() { return "Print"; }
inline std::string as_a_file() { return "As a file"; }
inline std::string file_hint() { return "The whole sheet at its true size, as chosen above."; }
inline std::string picture_question() { return "Dots an inch of a picture"; }
inline std::string save_as_svg() { return "Save as SVG"; }
inline std::string save_as_png() { return "Save as PNG"; }
/// @param largest  that would work; 0 for none.
std::string picture_too_large(int largest_dots_an_inch);

std::string check_line();
std::string print_cautions();
std::string page_number(const PagePlan& plan, int page);  // "page 2 of 4"
/// What joins it, how pages are put together, and what they are not.
std::string page_joins(const PagePlan& plan, int page);

}  // namespace fogsheet::words
