#include "core/sheet/paper.h"

#include "core/base/check.h"

namespace fogsheet {
namespace {

struct Row {
  Paper paper;
  std::string_view name;
  PaperSize size;
};

constexpr double k_inch_mm = 25.4;

constexpr Row k_rows[] = {
    {Paper::a4_upright, "A4-upright", {210, 297}},
    {Paper::a4_across, "A4-across", {297, 210}},
    {Paper::a3_upright, "A3-upright", {297, 420}},
    {Paper::a3_across, "A3-across", {420, 297}},
    {Paper::letter_upright, "Letter-upright", {8.5 * k_inch_mm, 11 * k_inch_mm}},
    {Paper::letter_across, "Letter-across", {11 * k_inch_mm, 8.5 * k_inch_mm}},
    {Paper::tabloid_upright, "Tabloid-upright", {11 * k_inch_mm, 17 * k_inch_mm}},
    {Paper::tabloid_across, "Tabloid-across", {17 * k_inch_mm, 11 * k_inch_mm}},
    {Paper::screen, "screen", {360, 270}},
};

// Room for the border and its figures; a printer's unprintable edge (about 5 mm) is inside it.
constexpr double k_side_margin_mm = 16;
constexpr double k_top_margin_mm = 13;
constexpr double k_bottom_margin_mm = 12;

const Row& row_of(Paper paper) {
  for (const Row& row : k_rows)
    if (row.paper == paper) return row;
  check_failed("paper", "a paper without a row in the table", __FILE__, __LINE__);
}

}  // namespace

PaperSize paper_size(Paper paper) { return row_of(paper).size; }

std::string_view paper_name(Paper paper) { return row_of(paper).name; }

std::optional<Paper> paper_named(std::string_view name) {
  for (const Row& row : k_rows)
    if (row.name == name) return row.paper;
  return std::nullopt;
}

const std::vector<Paper>& all_papers() {
  static const std::vector<Paper> papers = [] {
    std::vector<Paper> all;
    for (const Row& row : k_rows) all.push_back(row.paper);
    return all;
  }();
  return papers;
}

SheetRect neat_line(Paper paper) {
  const PaperSize size = paper_size(paper);
  return {k_side_margin_mm, k_top_margin_mm, size.width_mm - k_side_margin_mm, size.height_mm - k_bottom_margin_mm};
}

}  // namespace fogsheet
