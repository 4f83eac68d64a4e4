// A sheet of one's own: where and how large, on which paper, for which day, read off which chart; and how it will look.
#include "core/figure/sheet_figure.h"
#include "core/formats/svg.h"
#include "core/positions/position_figures.h"
#include "core/document/facts.h"
#include "shell/new_sheet.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/form_words.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

// The preview is some 470 px wide: what would be smaller than this on it is left out.
constexpr double k_preview_px = 470;

Press fill(const char* field) { return {"fill-new-sheet", Value::object({{"field", field}})}; }

void add_middle_and_scale(Panel& slip, const Form& form) {
  slip.items.push_back(parts::field(form, "middle", {.name = "middle", .label = words::middle_label(), .pad = Pad::position, .on_leave = fill("middle")}));
  ChoiceItem scale{.name = "scale", .label = words::scale_question(), .chosen = form.text("scale", k_usual_scale), .argument = "text", .on_choose = fill("scale")};
  for (const char* each : {"25000", "50000", "100000", "250000", "other"}) scale.options.push_back({each, words::scale_option(each)});
  slip.items.push_back(scale);
  if (scale.chosen == "other") slip.items.push_back(parts::field(form, "other-scale", {.name = "other-scale", .label = words::other_scale_label(), .pad = Pad::quantity, .on_leave = fill("other-scale")}));
}

void add_place(Panel& slip, const Session& session) {
  const Form& form = session.new_sheet;
  ChoiceItem how{.name = "how", .label = words::sheet_from_question(), .chosen = form.text("how", "middle"), .argument = "text", .on_choose = fill("how")};
  how.options = {{"middle", words::from_middle_and_scale()}, {"corners", words::from_two_corners()}, {"marks", words::from_the_marks()}};
  slip.items.push_back(how);
  switch (sheet_from(form)) {
    case SheetFrom::middle: add_middle_and_scale(slip, form); break;
    case SheetFrom::corners:
      slip.items.push_back(parts::field(form, "corner-a", {.name = "corner-a", .label = words::corner_label(1), .pad = Pad::position, .on_leave = fill("corner-a")}));
      slip.items.push_back(parts::field(form, "corner-b", {.name = "corner-b", .label = words::corner_label(2), .pad = Pad::position, .on_leave = fill("corner-b")}));
      break;
    case SheetFrom::marks:
      slip.items.push_back(LineItem{.text = words::marks_come_along(session.document().marks.size(), session.document().legs.size()), .tone = LineTone::soft});
      if (!form.error("how").empty()) slip.items.push_back(CautionItem{.text = form.error("how")});
      break;
  }
}

void add_preview(Panel& slip, const Session& session) {
  const std::optional<Document> sheet = previewed_sheet(session);
  if (!sheet) {
    slip.items.push_back(FigureItem{.name = "preview", .text = words::no_preview_yet()});
    slip.items.push_back(LineItem{.text = words::no_preview_yet(), .tone = LineTone::soft});
    return;
  }
  const PaperSize paper = paper_size(sheet->sheet.paper);
  const VariationInUse variation = variation_of(*sheet, session.settings.rounding);
  const std::vector<VariationInUse> of_roses(sheet->roses.size(), variation);
  const Legibility legibility = screen_legibility(k_preview_px / paper.width_mm);
  const Figure figure = sheet_figure(*sheet, words::sheet_notes(*sheet, of_roses, session.settings.rounding), {.legibility = legibility, .rounding = session.settings.rounding});
  slip.items.push_back(FigureItem{.name = "preview", .text = words::preview_says(*sheet), .svg = panel_svg(figure, {0, 0, paper.width_mm, paper.height_mm})});
  for (const auto& [what, value] : words::sheet_measures(*sheet)) slip.items.push_back(LineItem{.text = what, .value = value});
}

}  // namespace

Panel new_sheet_slip(const Session& session) {
  const Form& form = session.new_sheet;
  Panel slip{.name = "new-sheet", .label = words::new_sheet_title()};
  slip.items.push_back(HeadingItem{.text = words::new_sheet_title(), .beside = words::not_a_chart()});
  slip.items.push_back(parts::close_button());
  add_place(slip, session);
  parts::add_paper_choices(slip, paper_named(form.text("paper", k_usual_paper)).value_or(Paper::a4_across), fill("paper"));
  slip.items.push_back(parts::field(form, "name", {.name = "name", .label = words::sheet_name_label(), .on_leave = fill("name")}));
  slip.items.push_back(parts::field(form, "date", {.name = "date", .label = words::date_label(), .text = iso_date(session.platform.today()), .on_leave = fill("date")}));
  parts::add_variation_fields(slip, form, "", form.text("variation-by", "model"), {}, "fill-new-sheet");
  parts::add_datum_choice(slip, form, "", form.text("datum", "WGS84"), "fill-new-sheet");
  slip.items.push_back(parts::field(form, "note", {.name = "note", .label = words::sheet_note_label(), .multiline = true, .on_leave = fill("note")}));
  slip.beside_from = slip.items.size();
  add_preview(slip, session);
  slip.items.push_back(ButtonItem{.name = "make-new-sheet", .label = words::make_the_sheet(), .look = ButtonLook::main, .on_press = {"make-new-sheet"}});
  slip.items.push_back(ButtonItem{.name = "open-demo", .label = words::sheet_to_try(), .on_press = {"open-demo"}});
  return slip;
}

}  // namespace fogsheet
