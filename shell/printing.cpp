#include "shell/printing.h"

#include <cstdio>
#include <utility>
#include <variant>

#include "core/figure/sheet_figure.h"
#include "core/formats/svg.h"
#include "shell/panels/panel.h"
#include "shell/panels/sheet_picture.h"
#include "shell/plotted_passage.h"
#include "shell/session.h"
#include "shell/words.h"
#include "shell/words_of_print.h"

namespace fogsheet {
namespace {

std::string hex(Colour colour) {
  char text[8];
  std::snprintf(text, sizeof text, "#%02X%02X%02X", colour.red, colour.green, colour.blue);
  return text;
}

/// Black on white: tints would turn to dots on a copier. A red torch wipes magenta out, and grey lines with it.
SvgPalette print_palette(bool black) {
  SvgPalette palette;
  palette.fill("#000000");
  const auto put = [&](Ink ink, std::string colour) { palette[static_cast<std::size_t>(ink)] = std::move(colour); };
  for (const Ink ink : {Ink::table, Ink::paper, Ink::field, Ink::edge_fill, Ink::danger_fill, Ink::caution, Ink::on_pressed}) put(ink, "#FFFFFF");
  if (!black)
    for (const Ink ink : {Ink::magenta, Ink::graticule}) put(ink, hex(colour_of(Palette::day, ink)));
  return palette;
}

Figure figure_for_paper(const Session& session) {
  const Document& document = session.document();
  const Rounding rounding = session.settings.rounding;
  SheetNotes notes = words::sheet_notes(document, session.facts().rose_variations, rounding);
  notes.print = PrintWords{.check_line = words::check_line(), .cautions = words::print_cautions()};
  const FigureSettings settings{.legibility = k_print_legibility, .rounding = rounding};
  return session.print.blank ? sheet_figure(blank_of(document), notes, settings) : sheet_figure(document, notes, settings, plotted_passage(session));
}

/// Some browsers write a text that has a rim as outlines, which can be neither searched nor selected: on paper it has none.
Figure without_halos(Figure figure) {
  for (std::vector<Shape>& layer : figure.layers)
    for (Shape& shape : layer)
      if (Text* text = std::get_if<Text>(&shape)) text->halo = false;
  return figure;
}

}  // namespace

Paper print_paper(const Session& session) { return session.print.paper.value_or(usual_print_paper(session.document().sheet.paper)); }

bool prints_black(const Session& session) { return session.print.black.value_or(is_dark(session.settings.palette)); }

PagePlan print_plan(const Session& session) { return plan_pages(paper_size(session.document().sheet.paper), print_paper(session)); }

std::string print_picture(const Session& session) {
  const PagePlan plan = print_plan(session);
  const PaperSize paper = paper_size(plan.paper);
  std::vector<SheetRect> pages;
  for (int page = 0; page < plan.count(); ++page) pages.push_back(plan.window(page));
  if (pages.size() == 1) {  // in the middle of its page
    const double beside_mm = (paper.width_mm - plan.sheet.width_mm) / 2, above_mm = (paper.height_mm - plan.sheet.height_mm) / 2;
    pages[0] = {-beside_mm, -above_mm, plan.sheet.width_mm + beside_mm, plan.sheet.height_mm + above_mm};
  }
  return session.print.blank ? sheet_picture(blank_of(session.document()), pages) : sheet_picture(session.document(), pages);
}

std::string sheet_as_svg(const Session& session) {
  return svg_file(figure_for_paper(session), paper_size(session.document().sheet.paper), print_palette(prints_black(session)), words::sheet_title(session.document()));
}

Panel print_pages(const Session& session) {
  const PagePlan plan = print_plan(session);
  const SvgPalette palette = print_palette(prints_black(session));
  const std::string title = words::sheet_title(session.document());
  PageWords page_words{.check_line = words::check_line()};
  for (int page = 0; page < plan.count(); ++page) {
    page_words.titles.push_back(title + " · " + words::page_number(plan, page));
    page_words.joins.push_back(words::page_joins(plan, page));
  }
  Panel panel{.name = "sheet-pages", .label = title, .place = PanelPlace::page, .paper = paper_size(plan.paper)};
  std::size_t number = 0;
  for (PaperPage& page : pages_of(without_halos(figure_for_paper(session)), plan, page_words)) {
    page.own = without_halos(std::move(page.own));
    const std::string& says = page_words.titles[number++];
    panel.items.push_back(FigureItem{.name = "page-" + std::to_string(number), .text = says, .svg = page_svg(page, paper_size(plan.paper), palette, says)});
  }
  return panel;
}

}  // namespace fogsheet
