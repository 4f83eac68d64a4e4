#include "shell/commands_sheet.h"

#include "core/document/actions.h"
#include "core/formats/document_text.h"
#include "shell/arguments.h"
#include "shell/demo.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

std::optional<Fault> nothing_to_undo(const Session& session) { return session.sheets.undo_label() ? std::nullopt : std::optional(Fault::no_undo); }
std::optional<Fault> nothing_to_redo(const Session& session) { return session.sheets.redo_label() ? std::nullopt : std::optional(Fault::no_redo); }

/// Runs an action, then brings the desk in line with the document it made.
template <class Action>
auto acted(Session& session, Action action) {
  const Document before = session.document();
  auto result = action();
  if (result.ok()) session.settle_desk(before);
  return result;
}

void lay_down(Session& session, Document document, Act act) {
  const SheetKey before = session.sheets.in_hand().key;
  std::string name = document.sheet.name;
  session.sheets.lay_down(std::move(document), {act, std::move(name)}, session.platform.now_ms());
  session.change_desk(before);
}

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
  if (!(demo == session.document())) lay_down(session, std::move(demo), Act::open_sheet);
  session.slip = SlipId::first_run;
  session.look_at_sheet();
  return done();
}

Value run_add_mark(Session& session, const Value& arguments) {
  const Result<std::string> name = text_argument(arguments, "name");
  if (!name) return refused(name.problem());
  const Result<double> lat = number_argument(arguments, "lat_deg"), lon = number_argument(arguments, "lon_deg");
  for (const Result<double>* each : {&lat, &lon})
    if (!*each) return refused(each->problem());
  NewMark wanted{.name = *name, .lat_deg = *lat, .lon_deg = *lon};
  if (!arguments["kind"].is_null()) {
    const Result<std::string> kind = text_argument(arguments, "kind");
    if (!kind) return refused(kind.problem());
    const std::optional<MarkKind> named = mark_kind_named(*kind);
    if (!named) return refused({.fault = Fault::kind_unknown, .texts = {*kind}});
    wanted.kind = *named;
  }
  if (!arguments["radius_nm"].is_null()) {
    const Result<double> radius = number_argument(arguments, "radius_nm");
    if (!radius) return refused(radius.problem());
    wanted.radius_nm = *radius;
  }
  const Result<MarkId> made = acted(session, [&] { return add_mark(session.history(), wanted); });
  return made ? done_with(made->value) : refused(made.problem());
}

Value run_move_mark(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  const Result<double> lat = number_argument(arguments, "lat_deg"), lon = number_argument(arguments, "lon_deg");
  for (const Result<double>* each : {&lat, &lon})
    if (!*each) return refused(each->problem());
  const Result<Done> moved = acted(session, [&] { return move_mark(session.history(), *mark, *lat, *lon); });
  return moved ? done() : refused(moved.problem());
}

Value run_remove_mark(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  const Result<Done> removed = acted(session, [&] { return remove_mark(session.history(), *mark); });
  return removed ? done() : refused(removed.problem());
}

Value run_add_leg(Session& session, const Value& arguments) {
  const Result<MarkId> from = mark_argument(session.document(), arguments, "from"), to = mark_argument(session.document(), arguments, "to");
  for (const Result<MarkId>* each : {&from, &to})
    if (!*each) return refused(each->problem());
  const Result<LegId> made = acted(session, [&] { return add_leg(session.history(), *from, *to); });
  return made ? done_with(made->value) : refused(made.problem());
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

Value run_undo(Session& session, const Value&) {
  return stepped(session, [&] { session.sheets.undo(); });
}

Value run_redo(Session& session, const Value&) {
  return stepped(session, [&] { session.sheets.redo(); });
}

}  // namespace

std::vector<Command> sheet_commands() {
  return {
      {"new-sheet", "New sheet", "", {{"mid_lat_deg", "deg, north positive"}, {"mid_lon_deg", "deg, east positive"}, {"scale", "the number after 1:"}, {"paper", "name of a paper"}, {"name", "text", true}}, nullptr, run_new_sheet},
      {"open-text", "Open a sheet from its text or link", "", {{"text", "1:… or a link"}}, nullptr, run_open_text},
      {"open-demo", "The sheet to try", "", {}, nullptr, run_open_demo},
      {"add-mark", "Add a mark", "", {{"name", "text"}, {"lat_deg", "deg, north positive"}, {"lon_deg", "deg, east positive"}, {"kind", "landmark, light, turn, danger or other", true}, {"radius_nm", "nm, dangers only", true}}, nullptr, run_add_mark},
      {"move-mark", "Move a mark", "", {{"id", "id of a mark"}, {"lat_deg", "deg, north positive"}, {"lon_deg", "deg, east positive"}}, nullptr, run_move_mark},
      {"remove-mark", "Rub a mark out", "", {{"id", "id of a mark"}}, nullptr, run_remove_mark},
      {"add-leg", "Draw a leg", "", {{"from", "id of a mark"}, {"to", "id of a mark"}}, nullptr, run_add_leg},
      {"set-date", "Set the sheet's date", "", {{"date", "YYYY-MM-DD"}}, nullptr, run_set_date},
      {"set-printed-variation", "Set the variation printed on the chart", "", {{"value_deg", "deg, east positive", true}, {"year", "year", true}, {"annual_change_min", "minutes of arc a year, east positive", true}}, nullptr, run_set_printed_variation},
      {"undo", "Undo", "z", {}, nothing_to_undo, run_undo},
      {"redo", "Redo", "y", {}, nothing_to_redo, run_redo},
  };
}

}  // namespace fogsheet
