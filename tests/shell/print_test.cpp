// Printing the sheet: what the slip says, what the browser is given while it prints, and what goes into files.
#include "doctest/doctest.h"
#include "shell/words_of_print.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

Value one(const char* name, const char* word) { return Value::object({{name, word}}); }
Value choice(const char* field, const char* text) { return Value::object({{"field", field}, {"text", text}}); }

std::optional<Panel> page_of(App& app) {
  for (const Panel& panel : app.panels())
    if (panel.place == PanelPlace::page) return panel;
  return std::nullopt;
}

bool has(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

std::string svg_of(const Panel& page, std::size_t number) { return std::get<FigureItem>(page.items.at(number)).svg; }

}  // namespace

TEST_CASE("the slip shows the sheet on its paper: whole on one page, cut on several") {
  Tabletop desk;
  desk.done("open-slip", one("slip", "print"));
  const auto picture = [&] {
    for (const Panel& panel : desk.app.panels())
      for (const PanelItem& item : panel.items)
        if (const auto* figure = std::get_if<FigureItem>(&item); figure && figure->name == "print-picture") return figure->svg;
    return std::string();
  };
  CHECK(has(picture(), "viewBox=\"0 0 297 210\""));  // A4 on A4
  CHECK(has(picture(), "stroke-danger"));
  desk.done("set-print", choice("what", "blank"));
  CHECK_FALSE(has(picture(), "stroke-danger"));
  desk.done("set-print", choice("paper", "A3-across"));  // 420 by 297 mm about it
  CHECK(has(picture(), "viewBox=\"-61 -43 420 297\""));
  desk.done("set-print", choice("paper", "A4-upright"));
  desk.done("set-print", choice("paper", "A4-upright"));  // that way on purpose: two pages, which overlap by 10 mm
  const std::string two = picture();
  CHECK(has(two, "viewBox=\"0 0 297 210\""));
  CHECK(has(two, "M143 0h153v210h-153z"));
}

TEST_CASE("the pages are there while the browser prints with the slip open, and at no other time") {
  Tabletop desk;
  desk.app.set_printing(true);
  CHECK_FALSE(page_of(desk.app));
  desk.app.set_printing(false);
  desk.done("print-sheet");
  CHECK(desk.platform.pages_printed == 1);
  CHECK_FALSE(page_of(desk.app));
  desk.app.set_printing(true);
  const std::optional<Panel> page = page_of(desk.app);
  REQUIRE(page);
  REQUIRE(page->paper);
  CHECK(page->paper->width_mm == 297);  // the sheet's own
  REQUIRE(page->items.size() == 1);
  CHECK(has(svg_of(*page, 0), "This line is 100 mm"));
  CHECK(has(svg_of(*page, 0), "lookout"));
  desk.app.set_printing(false);
  CHECK_FALSE(page_of(desk.app));
}

TEST_CASE("the slip says beforehand how many pages there will be, and a size comes the better way round") {
  Tabletop desk;
  desk.done("new-sheet", Value::object({{"mid_lat_deg", 44.0}, {"mid_lon_deg", -31.0}, {"scale", 100000.0}, {"paper", "A3-across"}}));
  desk.done("open-slip", one("slip", "print"));
  CHECK(desk.says("One page."));
  desk.done("set-print", choice("paper", "A4-upright"));
  CHECK(desk.says("4 pages, 2 across and 2 down"));
  desk.done("set-print", choice("paper", "A4-upright"));  // that way on purpose
  CHECK(desk.says("6 pages, 3 across and 2 down"));
  desk.app.set_printing(true);
  const std::optional<Panel> page = page_of(desk.app);
  REQUIRE(page);
  CHECK(page->items.size() == 6);
  CHECK(has(svg_of(*page, 1), "page 2 of 6"));
  CHECK(has(words::page_joins(plan_pages(paper_size(Paper::a3_across), Paper::a4_upright), 1), "Joins page 1 on its left, page 3 on its right, page 5 below."));
  for (const char* bad : {"screen", "A5", ""}) CHECK(desk.ask("set-print", choice("paper", bad)).has("error"));
  CHECK(desk.ask("set-print", choice("ink", "blue")).has("error"));
  CHECK(desk.ask("set-print", choice("dots", "72")).has("error"));
  CHECK(desk.ask("set-print", choice("size", "A4")).has("error"));
  CHECK(desk.ask("print-sheet", Value::object({{"paper", "A3-upright"}, {"what", "half"}})).has("error"));
  CHECK(desk.says("6 pages"));  // nothing of it was taken
}

TEST_CASE("black by night, magenta else, until it is chosen; blank has nothing that was plotted") {
  Tabletop desk;
  const auto printed = [&] {
    desk.app.set_printing(true);
    const std::string svg = svg_of(page_of(desk.app).value(), 0);
    desk.app.set_printing(false);
    return svg;
  };
  constexpr const char* k_magenta = "#9A1A63";
  desk.done("print-sheet");
  CHECK(has(printed(), k_magenta));
  CHECK(has(printed(), "Hask Rock"));
  desk.done("set-palette", one("palette", "night"));
  const std::string black = printed();
  CHECK_FALSE(has(black, k_magenta));
  for (std::size_t at = black.find('#'); at != std::string::npos; at = black.find('#', at + 1)) {
    const std::string colour = black.substr(at, 7);
    CHECK((colour == "#000000" || colour == "#FFFFFF"));
  }
  desk.done("set-print", choice("ink", "magenta"));
  CHECK(has(printed(), k_magenta));
  desk.done("set-print", choice("what", "blank"));
  CHECK_FALSE(has(printed(), "Hask Rock"));
  CHECK_FALSE(has(printed(), "layer-legs"));
  CHECK(has(printed(), "The Sunder Ground"));
  CHECK(has(printed(), k_magenta));  // its rose
}

TEST_CASE("files hold the whole sheet at its own size, as chosen") {
  Tabletop desk;
  desk.done("set-print", choice("paper", "Letter-upright"));  // of printing alone
  desk.done("save-sheet-svg", one("ink", "black"));
  CHECK(desk.platform.picture_dots == 0);
  const std::string svg = desk.platform.saved_files.at("The Sunder Ground.svg");
  CHECK(has(svg, " width=\"297mm\" height=\"210mm\""));
  CHECK_FALSE(has(svg, "#9A1A63"));
  desk.done("save-sheet-png", one("dots", "600"));
  CHECK(desk.platform.picture_dots == 600);
  CHECK(has(desk.platform.saved_files.at("The Sunder Ground.png"), "<svg"));
  desk.app.picture_refused(300);
  CHECK(desk.says("300 dots an inch works here"));
}

TEST_CASE("what a passage draws is printed with the sheet, and not on a blank one") {
  Tabletop desk;
  desk.done("make-passage");
  for (const auto& [field, text] : {std::pair{"speed", "5"}, {"time", "0640"}, {"zone", "UTC+1"}, {"stream/kind", "steady"}, {"stream/set", "352"}, {"stream/drift", "0.7"}, {"plot-every", "20"}})
    desk.done("type-passage", choice(field, text));
  desk.done("open-slip", one("slip", "print"));
  desk.app.set_printing(true);
  CHECK(has(svg_of(*page_of(desk.app), 0), "0700 EP"));
  desk.done("set-print", choice("what", "blank"));
  CHECK_FALSE(has(svg_of(*page_of(desk.app), 0), "0700"));
}
