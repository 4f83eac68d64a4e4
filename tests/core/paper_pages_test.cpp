// Sheets on printers' paper: pages cover the sheet at true scale, overlap by what they say, and agree with what joins them.
#include "core/figure/paper_pages.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/base/random.h"
#include "core/document/actions.h"
#include "core/figure/figure_part.h"
#include "core/figure/sheet_figure.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_exact_mm = 1e-9;  // arithmetic alone

std::vector<Paper> printers_papers() {
  std::vector<Paper> papers = all_papers();
  std::erase(papers, Paper::screen);
  return papers;
}

PageWords words_for(const PagePlan& plan) {
  PageWords words{.check_line = "This line is 100 mm."};
  for (int page = 0; page < plan.count(); ++page) {
    words.titles.push_back("page " + std::to_string(page + 1));
    words.joins.push_back("joins");
  }
  return words;
}

/// The middles of a page's crosses, where they lie on the sheet.
std::vector<SheetPoint> crosses(const PaperPage& page) {
  std::vector<SheetPoint> middles;
  for (const Shape& shape : page.own.on(Layer::title)) {
    const auto* lines = std::get_if<Segments>(&shape);
    if (!lines || lines->ends.size() % 4 != 0) continue;
    for (std::size_t i = 0; i < lines->ends.size(); i += 4) {
      const SheetPoint a = midpoint(lines->ends[i], lines->ends[i + 1]), b = midpoint(lines->ends[i + 2], lines->ends[i + 3]);
      if (distance_mm(a, b) > k_exact_mm) continue;
      middles.push_back(SheetPoint{page.window.left_mm, page.window.top_mm} + (a - page.at));
    }
  }
  return middles;
}

bool has_point(const std::vector<SheetPoint>& points, SheetPoint p) {
  return std::any_of(points.begin(), points.end(), [&](SheetPoint each) { return distance_mm(each, p) < 1e-6; });
}

/// The longest level line among shapes.
double longest_level_mm(const std::vector<Shape>& shapes) {
  double longest = 0;
  for (const Shape& shape : shapes)
    if (const auto* lines = std::get_if<Segments>(&shape))
      for (std::size_t i = 0; i + 1 < lines->ends.size(); i += 2)
        if (lines->ends[i].y_mm == lines->ends[i + 1].y_mm) longest = std::max(longest, std::abs(lines->ends[i].x_mm - lines->ends[i + 1].x_mm));
  return longest;
}

SheetRect intersection(const SheetRect& a, const SheetRect& b) {
  return {std::max(a.left_mm, b.left_mm), std::max(a.top_mm, b.top_mm), std::min(a.right_mm, b.right_mm), std::min(a.bottom_mm, b.bottom_mm)};
}

const PrintWords k_words{.check_line = "This line is 100 mm. If it is not, the printer has scaled the page.", .cautions = "It knows only what was put on it. Keep a lookout by eye and ear."};

Figure figure_of(const Document& document, std::optional<PrintWords> print) {
  SheetNotes notes{.title = "Gull Sound", .print = std::move(print)};
  for (std::size_t i = 0; i < document.roses.size(); ++i) notes.roses.push_back({.used = variation_of(document, Rounding::whole_degrees).used});
  return sheet_figure(document, notes, {.legibility = k_print_legibility});
}

}  // namespace

TEST_CASE("a sheet is one whole page on its own paper, the screen's on A4 in parts") {
  for (const Paper paper : printers_papers()) {
    CAPTURE(paper_name(paper));
    CHECK(usual_print_paper(paper) == paper);
    const PagePlan plan = plan_pages(paper_size(paper), paper);
    CHECK(plan.count() == 1);
    CHECK(plan.window(0) == SheetRect{0, 0, paper_size(paper).width_mm, paper_size(paper).height_mm});
  }
  CHECK(usual_print_paper(Paper::screen) == Paper::a4_across);
  CHECK(plan_pages(paper_size(Paper::screen), Paper::a4_across).count() == 4);
  CHECK(plan_pages(paper_size(Paper::a4_across), Paper::a3_upright).count() == 1);  // 297 mm on 297 mm
}

TEST_CASE("of a paper's two ways the better takes no more pages") {
  for (const Paper sheet : all_papers())
    for (const Paper paper : printers_papers()) {
      const PaperSize size = paper_size(sheet);
      const Paper better = better_way(size, paper);
      CHECK(plan_pages(size, better).count() <= plan_pages(size, paper).count());
      CHECK(paper_size(better).width_mm * paper_size(better).height_mm == doctest::Approx(paper_size(paper).width_mm * paper_size(paper).height_mm));
    }
  CHECK(better_way(paper_size(Paper::a3_across), Paper::a4_upright) == Paper::a4_across);
}

TEST_CASE("pages cover any sheet on any paper, overlap by 10 mm, and lie within what printers print") {
  constexpr std::uint64_t k_seed = 20261126;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int run = 0; run < 300; ++run) {
    const Paper paper = printers_papers()[static_cast<std::size_t>(random.whole(0, 7))];
    const PaperSize sheet = run < 9 ? paper_size(all_papers()[static_cast<std::size_t>(run)]) : PaperSize{random.uniform(150, 900), random.uniform(150, 900)}, size = paper_size(paper);
    CAPTURE(run);
    const PagePlan plan = plan_pages(sheet, paper);
    CHECK(plan.window(0).left_mm == 0);
    CHECK(plan.window(0).top_mm == 0);
    CHECK(std::abs(plan.window(plan.count() - 1).right_mm - sheet.width_mm) < k_exact_mm);
    CHECK(std::abs(plan.window(plan.count() - 1).bottom_mm - sheet.height_mm) < k_exact_mm);
    const std::vector<PaperPage> pages = pages_of({}, plan, words_for(plan));
    REQUIRE(static_cast<int>(pages.size()) == plan.count());
    for (int page = 0; page < plan.count(); ++page) {
      const PaperPage& here = pages[static_cast<std::size_t>(page)];
      for (const auto& [right, below] : {std::pair{1, 0}, std::pair{0, 1}}) {
        const std::optional<int> next = plan.beside(page, right, below);
        if (!next) continue;
        CHECK(plan.beside(*next, -right, -below) == page);
        const SheetRect both = intersection(here.window, plan.window(*next));
        CHECK(std::abs((right ? both.width_mm() : both.height_mm()) - k_page_overlap_mm) < k_exact_mm);
        // Each cross in that overlap is on both, in its middle line, and there are three at least.
        const std::vector<SheetPoint> mine = crosses(here), theirs = crosses(pages[static_cast<std::size_t>(*next)]);
        int shared = 0;
        for (const SheetPoint p : mine) {
          const double off = right ? p.x_mm - (both.left_mm + both.right_mm) / 2 : p.y_mm - (both.top_mm + both.bottom_mm) / 2;
          if (std::abs(off) > 1e-6) continue;
          CHECK(has_point(theirs, p));
          ++shared;
        }
        CHECK(shared == 3);
      }
      if (plan.count() == 1) continue;
      CHECK(here.at.x_mm >= 8 - k_exact_mm);
      CHECK(here.at.y_mm >= 8 - k_exact_mm);
      CHECK(here.at.x_mm + plan.part.width_mm <= size.width_mm - 8 + k_exact_mm);
      CHECK(here.at.y_mm + plan.part.height_mm <= size.height_mm - 8 - 15 + k_exact_mm);
      CHECK(std::abs(longest_level_mm(here.own.on(Layer::title)) - 100) < k_exact_mm);
    }
  }
}

TEST_CASE("a part of a figure holds what is seen through its window, and nothing that is not") {
  Figure figure;
  figure.on(Layer::legs).push_back(Segments{.ends = {{0, 0}, {5, 5}, {8, 8}, {20, 20}, {0, 30}, {40, 2}}, .weight_mm = 0.2});
  figure.on(Layer::rose).push_back(Circle{.centre = {30, 10}, .radius_mm = 11, .weight_mm = 0.2});
  figure.on(Layer::rose).push_back(Circle{.centre = {60, 10}, .radius_mm = 11, .weight_mm = 0.2});
  figure.on(Layer::labels).push_back(Text{.at = {5, 15}, .text = "into it", .height_mm = 4});
  figure.on(Layer::labels).push_back(Text{.at = {5, 15}, .text = "away from it", .height_mm = 4, .anchor = Anchor::end});
  figure.on(Layer::labels).push_back(Text{.at = {15, 31}, .text = "upwards", .height_mm = 4, .turn_deg = -90});
  figure.on(Layer::labels).push_back(Text{.at = {15, 31}, .text = "downwards", .height_mm = 4, .turn_deg = 90});
  const Figure part = part_of(figure, {10, 10, 20, 20});
  REQUIRE(part.on(Layer::legs).size() == 1);
  CHECK(std::get<Segments>(part.on(Layer::legs)[0]).ends == std::vector<SheetPoint>{{8, 8}, {20, 20}, {0, 30}, {40, 2}});
  CHECK(part.on(Layer::rose).size() == 1);
  std::vector<std::string> texts;
  for (const Shape& shape : part.on(Layer::labels)) texts.push_back(std::get<Text>(shape).text);
  CHECK(texts == std::vector<std::string>{"into it", "upwards"});
}

TEST_CASE("a printed sheet has a check line of 100 mm with its words, clear of roses where there is room; the screen's has none") {
  for (const Paper paper : all_papers())
    for (const double scale : {25'000.0, 250'000.0, 1'000'000.0}) {
      CAPTURE(paper_name(paper));
      const Document document = made_sheet({.mid_lat_deg = 44, .mid_lon_deg = -31, .scale = scale, .paper = paper, .date = {2026, 7, 1}}).value();
      const Figure printed = figure_of(document, k_words);
      CHECK(std::abs(longest_level_mm(printed.on(Layer::title)) - 100) < k_exact_mm);
      CHECK(longest_level_mm(figure_of(document, std::nullopt).on(Layer::title)) == 0);
      const SheetRect frame = neat_line(paper);
      const Projection projection = projection_of(document);
      int lines = 0;
      for (const Shape& shape : printed.on(Layer::title)) {
        const auto* text = std::get_if<Text>(&shape);
        if (!text || (text->text.find("lookout") == std::string::npos && text->text.find("100 mm") == std::string::npos)) continue;
        ++lines;
        CHECK(frame.contains(text->at));
        for (const Rose& rose : document.roses) CHECK(distance_mm(text->at, projection.to_sheet(unquantise(rose.at))) > rose.radius_mm);
      }
      CHECK(lines == 2);
    }
}

TEST_CASE("a blank copy has the sheet and its roses and nothing that was plotted") {
  History history(made_sheet({.mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 100'000, .paper = Paper::a4_across, .date = {2026, 7, 1}}).value());
  const MarkId a = add_mark(history, {.name = "Gull Rock", .lat_deg = 44.01, .lon_deg = -31.01}).value(), b = add_mark(history, {.name = "Sarn", .lat_deg = 43.99, .lon_deg = -31.02}).value();
  REQUIRE(add_leg(history, a, b).ok());
  const Document blank = blank_of(history.now());
  CHECK(blank.sheet == history.now().sheet);
  CHECK(blank.roses == history.now().roses);
  CHECK(blank.marks.empty());
  CHECK(blank.legs.empty());
}
