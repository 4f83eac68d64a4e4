#include "core/figure/paper_pages.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/figure/figure_part.h"
#include "core/figure/legibility.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

// Measures on a page of several, mm.
constexpr double k_margin_mm = 8;     // more than printers leave white
constexpr double k_foot_mm = 15;      // below the part: check line and words
constexpr double k_foot_gap_mm = 2.5; // between part and foot
constexpr double k_column_gap_mm = 7;
constexpr double k_cross_mm = 2.5;    // from a cross's middle to its ends
constexpr double k_same_mm = 0.5;     // so much larger than the paper a sheet may be and still be whole on it
constexpr double k_title_baseline_mm = 2.4;

struct Cut {
  int parts;
  double part_mm;
};

/// As few parts as will do, all of one length.
Cut cut(double whole_mm, double room_mm) {
  const int parts = std::max(1, static_cast<int>(std::ceil((whole_mm - k_page_overlap_mm) / (room_mm - k_page_overlap_mm) - 1e-9)));
  return {parts, (whole_mm + (parts - 1) * k_page_overlap_mm) / parts};
}

class PageDrawing {
 public:
  PageDrawing(const Figure& sheet, const PagePlan& plan, int page)
      : plan_(plan), page_(page), paper_(paper_size(plan.paper)) {
    made_.window = plan.window(page);
    made_.sheet = part_of(sheet, made_.window);
    const double foot_mm = plan.count() == 1 ? 0 : k_foot_mm;
    made_.at = {(paper_.width_mm - plan.part.width_mm) / 2, (paper_.height_mm - foot_mm - plan.part.height_mm) / 2};
  }

  PaperPage made(const PageWords& words) {
    if (plan_.count() > 1) {
      add_seams();
      add_foot(words);
    }
    return std::move(made_);
  }

 private:
  SheetPoint on_page(SheetPoint on_sheet) const { return made_.at + (on_sheet - SheetPoint{made_.window.left_mm, made_.window.top_mm}); }

  /// Crosses along the middle of each overlap, at the same places of the sheet on both pages; where a page is cut, dashes.
  void add_seams() {
    const double weight = weight_mm(Stroke::neat_line, k_print_legibility), half = k_page_overlap_mm / 2;
    const SheetRect& w = made_.window;
    Segments crosses{.weight_mm = weight};
    const auto cross = [&](SheetPoint on_sheet) {
      const SheetPoint p = on_page(on_sheet);
      crosses.ends.insert(crosses.ends.end(), {{p.x_mm - k_cross_mm, p.y_mm}, {p.x_mm + k_cross_mm, p.y_mm}, {p.x_mm, p.y_mm - k_cross_mm}, {p.x_mm, p.y_mm + k_cross_mm}});
    };
    const auto cut_along = [&](SheetPoint from, SheetPoint to) {
      made_.own.on(Layer::title).push_back(Path{.points = {on_page(from), on_page(to)}, .weight_mm = weight, .dash = {2, 2}});
    };
    // Clear of the corners, where four pages meet.
    const double xs[] = {w.left_mm + 2 * k_page_overlap_mm, (w.left_mm + w.right_mm) / 2, w.right_mm - 2 * k_page_overlap_mm};
    const double ys[] = {w.top_mm + 2 * k_page_overlap_mm, (w.top_mm + w.bottom_mm) / 2, w.bottom_mm - 2 * k_page_overlap_mm};
    if (plan_.beside(page_, -1, 0)) for (const double y : ys) cross({w.left_mm + half, y});
    if (plan_.beside(page_, 0, -1)) for (const double x : xs) cross({x, w.top_mm + half});
    if (plan_.beside(page_, 1, 0)) {
      for (const double y : ys) cross({w.right_mm - half, y});
      cut_along({w.right_mm, w.top_mm}, {w.right_mm, w.bottom_mm});
    }
    if (plan_.beside(page_, 0, 1)) {
      for (const double x : xs) cross({x, w.bottom_mm - half});
      cut_along({w.left_mm, w.bottom_mm}, {w.right_mm, w.bottom_mm});
    }
    made_.own.on(Layer::title).push_back(std::move(crosses));
  }

  void add_foot(const PageWords& words) {
    const double top_mm = paper_.height_mm - k_margin_mm - k_foot_mm + k_foot_gap_mm;
    add_check_line(made_.own, {k_margin_mm, top_mm}, lay_check_line({.check_line = words.check_line}));
    const double left_mm = k_margin_mm + k_check_line_mm + k_column_gap_mm, width_mm = paper_.width_mm - k_margin_mm - left_mm;
    const auto place = static_cast<std::size_t>(page_);
    const double next_mm = add_small_print(made_.own, {left_mm, top_mm + k_title_baseline_mm}, small_print(words.titles.at(place), width_mm, Face::bold), Face::bold);
    add_small_print(made_.own, {left_mm, next_mm}, small_print(words.joins.at(place), width_mm, Face::regular), Face::regular);
  }

  const PagePlan& plan_;
  int page_;
  PaperSize paper_;
  PaperPage made_;
};

}  // namespace

SheetRect PagePlan::window(int page) const {
  const double left_mm = (page % across) * (part.width_mm - k_page_overlap_mm), top_mm = (page / across) * (part.height_mm - k_page_overlap_mm);
  return {left_mm, top_mm, left_mm + part.width_mm, top_mm + part.height_mm};
}

std::optional<int> PagePlan::beside(int page, int right, int below) const {
  const int column = page % across + right, row = page / across + below;
  if (column < 0 || column >= across || row < 0 || row >= down) return std::nullopt;
  return row * across + column;
}

PagePlan plan_pages(PaperSize sheet, Paper paper) {
  SHEET_CHECK(paper != Paper::screen, "no printer has that paper");
  const PaperSize size = paper_size(paper);
  if (sheet.width_mm <= size.width_mm + k_same_mm && sheet.height_mm <= size.height_mm + k_same_mm) return {.paper = paper, .sheet = sheet, .part = sheet};
  const Cut across = cut(sheet.width_mm, size.width_mm - 2 * k_margin_mm), down = cut(sheet.height_mm, size.height_mm - 2 * k_margin_mm - k_foot_mm);
  return {.paper = paper, .sheet = sheet, .across = across.parts, .down = down.parts, .part = {across.part_mm, down.part_mm}};
}

Paper better_way(PaperSize sheet, Paper paper) {
  const PaperSize size = paper_size(paper);
  for (const Paper other : all_papers()) {
    const PaperSize turned = paper_size(other);
    if (turned.width_mm == size.height_mm && turned.height_mm == size.width_mm && plan_pages(sheet, other).count() < plan_pages(sheet, paper).count()) return other;
  }
  return paper;
}

Paper usual_print_paper(Paper sheet) { return sheet == Paper::screen ? better_way(paper_size(sheet), Paper::a4_across) : sheet; }

std::vector<PaperPage> pages_of(const Figure& sheet, const PagePlan& plan, const PageWords& words) {
  std::vector<PaperPage> pages;
  for (int page = 0; page < plan.count(); ++page) pages.push_back(PageDrawing(sheet, plan, page).made(words));
  return pages;
}

}  // namespace fogsheet
