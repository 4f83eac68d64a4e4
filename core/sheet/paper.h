// The papers a sheet can be made on, and the margin between the paper's edge and the neat line.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/sheet/sheet_point.h"

namespace fogsheet {

enum class Paper {
  a4_upright, a4_across, a3_upright, a3_across, letter_upright, letter_across, tabloid_upright, tabloid_across,
  screen,  // 360 x 270 mm: not meant for a printer
};

struct PaperSize {
  double width_mm = 0;
  double height_mm = 0;
};

/// Source: ISO 216 (A4, A3), ANSI Y14.1 (Letter, Tabloid: 11 x 17 inches).
PaperSize paper_size(Paper paper);

/// Names as scripts and files have them: "A4-upright".
std::string_view paper_name(Paper paper);
std::optional<Paper> paper_named(std::string_view name);
const std::vector<Paper>& all_papers();

/// The neat line: the rectangle inside the margins that the sheet's water fills.
SheetRect neat_line(Paper paper);

}  // namespace fogsheet
