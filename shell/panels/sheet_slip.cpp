// The sheet in hand, changed under what is on it: its name and notes, day, variation, datum, size; the signs it is plotted in.
#include "core/positions/position_figures.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/form_words.h"
#include "shell/words.h"
#include "shell/words_of_print.h"

namespace fogsheet {
namespace {

Press typed(const char* field) { return {"type-sheet", Value::object({{"field", field}})}; }

}  // namespace

Panel sheet_slip(const Session& session) {
  const Document& document = session.document();
  const Sheet& sheet = document.sheet;
  const Form& entries = session.desk.entries;
  const auto field = [&](FieldItem standing) {
    standing.on_leave = typed(standing.name.c_str());
    const std::string key = "sheet/" + standing.name;
    return parts::field(entries, key, std::move(standing));
  };
  Panel slip{.name = "sheet", .label = words::this_sheet()};
  slip.items.push_back(HeadingItem{.text = words::sheet_title(document), .beside = words::this_sheet()});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(field({.name = "name", .label = words::sheet_name_label(), .text = sheet.name}));
  slip.items.push_back(field({.name = "note", .label = words::sheet_note_label(), .text = sheet.note, .multiline = true}));
  slip.items.push_back(field({.name = "date", .label = words::date_label(), .text = iso_date(sheet.date), .pad = Pad::date}));

  const bool printed = entries.text("sheet/variation-by") == "printed" || document.chart_note.has_value();
  parts::add_variation_fields(slip, entries, "sheet/", printed ? "printed" : "model", document.chart_note ? std::optional(document.chart_note->printed) : std::nullopt, "type-variation");
  parts::add_variation(slip, session);
  parts::add_datum_choice(slip, entries, "sheet/", entries.text("sheet/datum", sheet.datum), "type-sheet");

  slip.items.push_back(HeadingItem{.text = words::size_heading(), .level = 3});
  slip.items.push_back(LineItem{.text = words::size_hint(), .tone = LineTone::soft});
  slip.items.push_back(field({.name = "middle", .label = words::middle_label(), .text = position_figures(unquantise(sheet.middle), 2), .pad = Pad::position}));
  slip.items.push_back(field({.name = "scale", .label = words::scale_question(), .text = words::scale_text(sheet.scale), .pad = Pad::quantity}));
  parts::add_paper_choices(slip, sheet.paper, typed("paper"));
  if (!entries.error("sheet/paper").empty()) slip.items.push_back(CautionItem{.text = entries.error("sheet/paper")});
  slip.items.push_back(ButtonItem{.name = "fit-to-marks", .label = words::fit_to_marks(), .enabled = !document.marks.empty(), .reason = document.marks.empty() ? words::no_marks_yet() : "", .on_press = {"fit-sheet-to-marks"}});

  slip.items.push_back(parts::signs_choice(sheet.signs));
  slip.items.push_back(ButtonItem{.name = "legend", .label = words::show_legend(), .on_press = {"open-slip", Value::object({{"slip", "legend"}})}});
  slip.items.push_back(ButtonItem{.name = "print", .label = words::print_title(), .on_press = {"open-slip", Value::object({{"slip", "print"}})}});
  return slip;
}

}  // namespace fogsheet
