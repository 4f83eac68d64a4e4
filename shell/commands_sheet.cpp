#include "shell/commands_sheet.h"

#include <algorithm>

#include "core/document/actions.h"
#include "core/formats/document_text.h"
#include "shell/arguments.h"
#include "shell/commands_drawer.h"
#include "shell/demo.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

std::optional<Fault> nothing_to_undo(const Session& session) { return undo_label(session) ? std::nullopt : std::optional(Fault::no_undo); }
std::optional<Fault> nothing_to_redo(const Session& session) { return redo_label(session) ? std::nullopt : std::optional(Fault::no_redo); }

Value run_new_sheet(Session& session, const Value& arguments) {
  const Result<double> lat = number_argument(arguments, "mid_lat_deg"), lon = number_argument(arguments, "mid_lon_deg"), scale = number_argument(arguments, "scale");
  for (const Result<double>* each : {&lat, &lon, &scale})
    if (!*each) return refused(each->problem());
  const Result<std::string> paper = text_argument(arguments, "paper");
  if (!paper) return refused(paper.problem());
  const std::optional<Paper> named = paper_named(*paper);
  if (!named) return refused({.fault = Fault::paper_unknown, .texts = {*paper}});
  const std::string* name = arguments["name"].text();
  Result<Document> made = made_sheet({.name = name ? *name : "", .mid_lat_deg = *lat, .mid_lon_deg = *lon, .scale = *scale, .paper = *named, .date = session.platform.today()});
  if (!made) return refused(made.problem());
  lay_down(session, std::move(made).value(), Act::new_sheet);
  if (session.slip == SlipId::first_run) session.slip = SlipId::none;
  return done();
}

Value run_open_text(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  Result<Document> decoded = decode_document(*text);
  if (!decoded) return refused(decoded.problem());
  lay_down(session, std::move(decoded).value(), Act::open_sheet);
  session.slip = SlipId::none;
  return done();
}

Value run_open_demo(Session& session, const Value&) {
  Document demo = demo_sheet();
  if (!(demo == session.document())) {
    const std::vector<const SheetInDrawer*> shown = session.sheets.shown();
    const auto there = std::find_if(shown.begin(), shown.end(), [&](const SheetInDrawer* sheet) { return sheet->history.now() == demo; });
    if (there != shown.end()) run_command(session, "open-sheet", Value::object({{"key", key_text((*there)->key)}}));
    else lay_down(session, std::move(demo), Act::open_sheet);
  }
  session.slip = SlipId::first_run;
  session.look_at_sheet();
  return done();
}

Value run_set_date(Session& session, const Value& arguments) {
  const Result<Date> date = date_argument(arguments, "date");
  if (!date) return refused(date.problem());
  const Result<Done> set = acted(session, [&] { return set_date(session.history(), *date); });
  return set ? done() : refused(set.problem());
}

Value run_set_printed_variation(Session& session, const Value& arguments) {
  std::optional<PrintedVariation> printed;
  if (arguments.is_object() && !arguments.members()->empty()) {
    const Result<double> value = number_argument(arguments, "value_deg"), year = number_argument(arguments, "year"), change = number_argument(arguments, "annual_change_min");
    for (const Result<double>* each : {&value, &year, &change})
      if (!*each) return refused(each->problem());
    if (*year != static_cast<int>(*year)) return refused({.fault = Fault::number_out_of_range, .texts = {"year"}, .numbers = {*year, k_first_sheet_year, k_last_sheet_year}});
    printed = PrintedVariation{.value_deg = *value, .year = static_cast<int>(*year), .annual_change_min = *change};
  }
  const Result<Done> set = acted(session, [&] { return set_chart_note(session.history(), printed); });
  return set ? done() : refused(set.problem());
}

/// A step back or forward, which may lead to another sheet.
template <class Step>
Value stepped(Session& session, Step step) {
  const SheetKey sheet = session.sheets.in_hand().key;
  const Document before = session.document();
  step();
  if (session.sheets.in_hand().key == sheet) session.settle_desk(before);
  else session.change_desk(sheet);
  return done();
}

/// The same in the past of the boat in hand.
template <class Step>
Value stepped_on_boat(Session& session, Step step) {
  step(boat_in_hand(session)->history);
  settle_compass_desk(session);
  return done();
}

Value run_undo(Session& session, const Value&) {
  if (undo_is_on_boat(session)) return stepped_on_boat(session, [](BoatHistory& history) { history.undo(); });
  return stepped(session, [&] { session.sheets.undo(); });
}

Value run_redo(Session& session, const Value&) {
  if (undo_is_on_boat(session)) return stepped_on_boat(session, [](BoatHistory& history) { history.redo(); });
  return stepped(session, [&] { session.sheets.redo(); });
}

Value run_fit_sheet_to_marks(Session& session, const Value&) {
  const Result<SheetShape> shape = shape_around_marks(session.document(), session.document().sheet.paper);
  if (!shape) return refused(shape.problem());
  return answer_of(acted(session, [&] { return reshape_sheet(session.history(), *shape); }));
}

/// Each part is left as it is when not given.
Value run_describe_sheet(Session& session, const Value& arguments) {
  SheetDetails wanted;
  for (const auto& [name, part] : {std::pair("name", &wanted.name), std::pair("note", &wanted.note), std::pair("datum", &wanted.datum)}) {
    const Result<std::optional<std::string>> text = optional_text(arguments, name);
    if (!text) return refused(text.problem());
    *part = *text;
  }
  const Result<std::optional<std::string>> signs = optional_text(arguments, "signs");
  if (!signs) return refused(signs.problem());
  if (*signs) {
    if (**signs != "a" && **signs != "b") return refused({.fault = Fault::entry_unreadable, .texts = {"set of signs", **signs}});
    wanted.signs = **signs == "b" ? SignSet::b : SignSet::a;
  }
  return answer_of(acted(session, [&] { return describe_sheet(session.history(), wanted); }));
}

Value run_reshape_sheet(Session& session, const Value& arguments) {
  const Position middle = unquantise(session.document().sheet.middle);
  const Result<std::optional<double>> lat = optional_number(arguments, "mid_lat_deg"), lon = optional_number(arguments, "mid_lon_deg"), scale = optional_number(arguments, "scale");
  for (const Result<std::optional<double>>* each : {&lat, &lon, &scale})
    if (!*each) return refused(each->problem());
  const Result<std::optional<std::string>> paper = optional_text(arguments, "paper");
  if (!paper) return refused(paper.problem());
  const std::optional<Paper> named = *paper ? paper_named(**paper) : session.document().sheet.paper;
  if (!named) return refused({.fault = Fault::paper_unknown, .texts = {**paper}});
  const SheetShape shape{lat->value_or(middle.lat_deg), lon->value_or(middle.lon_deg), scale->value_or(session.document().sheet.scale), *named};
  return answer_of(acted(session, [&] { return reshape_sheet(session.history(), shape); }));
}

}  // namespace

void lay_down(Session& session, Document document, Act act) {
  const SheetKey before = session.sheets.in_hand().key;
  std::string name = document.sheet.name;
  session.sheets.lay_down(std::move(document), {act, std::move(name)}, session.platform.now_ms());
  session.change_desk(before);
}

std::vector<Command> sheet_commands() {
  return {
      {"new-sheet", "New sheet", "", {{"mid_lat_deg", "deg, north positive"}, {"mid_lon_deg", "deg, east positive"}, {"scale", "the number after 1:"}, {"paper", "name of a paper"}, {"name", "text", true}}, nullptr, run_new_sheet},
      {"describe-sheet", "Describe the sheet", "", {{"name", "text", true}, {"note", "text", true}, {"datum", "text", true}, {"signs", "a or b", true}}, nullptr, run_describe_sheet},
      {"reshape-sheet", "Change the sheet's place and size", "", {{"mid_lat_deg", "deg, north positive", true}, {"mid_lon_deg", "deg, east positive", true}, {"scale", "the number after 1:", true}, {"paper", "name of a paper", true}}, nullptr, run_reshape_sheet},
      {"fit-sheet-to-marks", "Fit the sheet to its marks", "", {}, nullptr, run_fit_sheet_to_marks},
      {"open-text", "Open a sheet from its text or link", "", {{"text", "1:… or a link"}}, nullptr, run_open_text},
      {"open-demo", "The sheet to try", "", {}, nullptr, run_open_demo},
      {"set-date", "Set the sheet's date", "", {{"date", "YYYY-MM-DD"}}, nullptr, run_set_date},
      {"set-printed-variation", "Set the variation printed on the chart", "", {{"value_deg", "deg, east positive", true}, {"year", "year", true}, {"annual_change_min", "minutes of arc a year, east positive", true}}, nullptr, run_set_printed_variation},
      {"undo", "Undo", "z", {}, nothing_to_undo, run_undo},
      {"redo", "Redo", "y", {}, nothing_to_redo, run_redo},
  };
}

}  // namespace fogsheet
