// A sheet on the paper of a printer, to true scale: whole on one page where it fits, else in parts of one size that overlap,
// one a page. A page of several carries a check line, says which it is and what joins it, and in each overlap crosses that
// come to lie on those of the page that joins there.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/figure/check_line.h"
#include "core/figure/figure.h"
#include "core/sheet/paper.h"

namespace fogsheet {

inline constexpr double k_page_overlap_mm = 10;

/// How a sheet is cut. Pages are counted along rows from the top left, from 0.
struct PagePlan {
  Paper paper = Paper::a4_upright;  // never `screen`
  PaperSize sheet;
  int across = 1, down = 1;
  PaperSize part;  // of the sheet on each page, overlaps included; the whole sheet where there is one page

  int count() const { return across * down; }
  /// What of the sheet is on a page, mm of the sheet.
  SheetRect window(int page) const;
  /// The page beside it, so many columns to the right and rows down; none past the edge.
  std::optional<int> beside(int page, int right, int below) const;
};

PagePlan plan_pages(PaperSize sheet, Paper paper);

/// That paper, upright or across: the way that takes fewer pages; as it is where both take as many.
Paper better_way(PaperSize sheet, Paper paper);

/// The sheet's own paper; for one that no printer has, A4 the better way.
Paper usual_print_paper(Paper sheet);

/// One page: a part of the sheet with its place, and what is the page's own.
struct PaperPage {
  Figure sheet;       // mm of the sheet: to be cut at `window`
  SheetRect window;
  SheetPoint at;      // where the window's top left lies, mm from the page's
  Figure own;         // mm from the page's top left, over the sheet
};

/// What a page of several says, made by shell.
struct PageWords {
  std::string check_line;
  std::vector<std::string> titles;  // of each page: "Gull Sound · page 2 of 4"
  std::vector<std::string> joins;   // of each page: what joins it, and how they are put together
};

/// @param words  used only where there are several pages: one page has all that it needs on the sheet.
std::vector<PaperPage> pages_of(const Figure& sheet, const PagePlan& plan, const PageWords& words);

}  // namespace fogsheet
