#include "shell/commands_drawer.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/base/utf8.h"
#include "shell/arguments.h"
#include "shell/commands_sheet.h"
#include "shell/demo.h"
#include "shell/words.h"
#include "shell/words_of_photographs.h"

namespace fogsheet {
namespace {

/// Another sheet in hand: its desk comes out, that of the former is put away.
template <class Act>
void change_sheet(Session& session, Act act) {
  const SheetKey before = session.sheets.in_hand().key;
  act();
  if (session.sheets.in_hand().key != before) session.change_desk(before);
}

Value run_open_sheet(Session& session, const Value& arguments) {
  const Result<SheetKey> key = sheet_argument(session, arguments);
  if (!key) return refused(key.problem());
  session.sheets.put_back(*key);
  change_sheet(session, [&] { session.sheets.take(*key); });
  return done();
}

Value run_copy_sheet(Session& session, const Value& arguments) {
  const Result<SheetKey> key = sheet_argument(session, arguments);
  if (!key) return refused(key.problem());
  Document copy = session.sheets.find(*key)->history.now();
  copy.sheet.name = words::copy_of(words::sheet_title(copy));
  const bool has_photograph = session.photograph && *key == session.sheets.in_hand().key;
  lay_down(session, std::move(copy), Act::open_sheet);
  if (has_photograph) session.say(words::photograph_not_copied());
  return Value::object({{"ok", true}, {"id", key_text(session.sheets.in_hand().key)}});
}

Value run_delete_sheet(Session& session, const Value& arguments) {
  const Result<SheetKey> key = sheet_argument(session, arguments);
  if (!key) return refused(key.problem());
  if (!session.sheets.find(*key)->newer_text.empty()) return refused({.fault = Fault::sheet_of_newer});  // nothing of it is written here
  if (*key == session.sheets.in_hand().key) {
    // What was changed last comes in hand; where there is nothing else, the sheet to try.
    const std::vector<const SheetInDrawer*> shown = session.sheets.shown();
    const auto other = std::find_if(shown.begin(), shown.end(), [&](const SheetInDrawer* sheet) { return sheet->key != *key; });
    if (other == shown.end()) lay_down(session, demo_sheet(), Act::open_sheet);
    else change_sheet(session, [&] { session.sheets.take((*other)->key); });
  }
  session.sheets.remove(*key, session.platform.now_ms());
  session.say(words::sheet_deleted(words::sheet_title(session.sheets.find(*key)->history.now())));
  return done();
}

Value run_put_back_sheet(Session& session, const Value& arguments) {
  const Result<SheetKey> key = sheet_argument(session, arguments);
  if (!key) return refused(key.problem());
  session.sheets.put_back(*key);
  return done();
}

Value run_save_sheet(Session& session, const Value& arguments) {
  Value with_format = arguments.is_object() ? arguments : Value::object();
  return run_command(session, "save-as", with_format.set("format", "fogsheet"));
}

Value run_search_drawer(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  session.drawer.search = fitting(*text, k_most_name_bytes);
  session.drawer.rows = DrawerView::k_rows;
  return done();
}

Value run_show_more_sheets(Session& session, const Value&) {
  session.drawer.rows *= 2;
  return done();
}

Value run_go_to_step(Session& session, const Value& arguments) {
  const Result<double> step = number_argument(arguments, "step");
  if (!step) return refused(step.problem());
  const Document before = session.document();
  History& history = session.history();
  const auto first = static_cast<double>(history.first_state()), last = static_cast<double>(history.last_state());
  if (*step != std::floor(*step) || *step < first || *step > last) return refused({.fault = Fault::number_out_of_range, .texts = {"step"}, .numbers = {*step, first, last}});
  history.go_to(static_cast<std::size_t>(*step));
  session.settle_desk(before);
  return done();
}

}  // namespace

std::string key_text(SheetKey key) { return std::to_string(key.value); }

Result<SheetKey> sheet_argument(const Session& session, const Value& arguments) {
  if (arguments["key"].is_null()) return session.sheets.in_hand().key;
  const Result<std::string> text = text_argument(arguments, "key");
  if (!text) return text.problem();
  const SheetKey key{std::strtoull(text->c_str(), nullptr, 10)};
  if (!session.sheets.find(key) || key_text(key) != *text) return Problem{.fault = Fault::sheet_unknown, .texts = {*text}};
  return key;
}

std::vector<Command> drawer_commands() {
  return {
      {"open-sheet", "Open a sheet of the drawer", "", {{"key", "key of a sheet"}}, nullptr, run_open_sheet},
      {"copy-sheet", "Copy the sheet", "", {{"key", "key of a sheet; the one in hand", true}}, nullptr, run_copy_sheet},
      {"delete-sheet", "Take the sheet out of the drawer", "", {{"key", "key of a sheet; the one in hand", true}}, nullptr, run_delete_sheet},
      {"put-back-sheet", "Put the sheet back", "", {{"key", "key of a sheet"}}, nullptr, run_put_back_sheet},
      {"save-sheet", "Save as a file", "", {{"key", "key of a sheet; the one in hand", true}}, nullptr, run_save_sheet},
      {"search-drawer", "Find a sheet in the drawer", "", {{"text", "words of its name, its marks, its boat; none for all"}}, nullptr, run_search_drawer},
      {"show-more-sheets", "Show more sheets of the drawer", "", {}, nullptr, run_show_more_sheets},
      {"go-to-step", "Go to a step of the past", "", {{"step", "number of a state: 0 is the sheet as it was laid down"}}, nullptr, run_go_to_step},
  };
}

}  // namespace fogsheet
