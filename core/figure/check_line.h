// A line of exactly 100 mm to lay a ruler on, with its centimetres: what shows whether a printer has scaled the page. Words
// stand under it, broken to its length.
#pragma once

#include <string>
#include <vector>

#include "core/figure/figure.h"

namespace fogsheet {

inline constexpr double k_check_line_mm = 100;

/// What stands on printed sheets alone, in the user's words; made by shell.
struct PrintWords {
  std::string check_line;  // what the line is for
  std::string cautions;    // in full
};

/// A check line with words under it, as it is laid out.
struct LaidCheckLine {
  std::vector<std::string> lines;
  std::vector<std::string> cautions;
  double height_mm = 0;  // of all of it; it is k_check_line_mm wide
};
LaidCheckLine lay_check_line(const PrintWords& words);

/// @param corner  its top left.
void add_check_line(Figure& figure, SheetPoint corner, const LaidCheckLine& laid);

/// Lines in the size of print that is small and still read, the first one's baseline at `at`.
/// @return the baseline that would come next.
double add_small_print(Figure& figure, SheetPoint at, const std::vector<std::string>& lines, Face face);
/// Broken to a width, in that size.
std::vector<std::string> small_print(const std::string& words, double width_mm, Face face);

}  // namespace fogsheet
