// The drawer of sheets: all of them by name and day, the one in hand with what can be done with it, and those that can be
// put back. And the past of the sheet in hand, step by step.
#include <algorithm>

#include "shell/commands_drawer.h"
#include "shell/drawer_search.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/panels/sheet_picture.h"
#include "shell/words.h"
#include "shell/words_of_backup.h"
#include "shell/words_of_files.h"
#include "shell/words_of_room.h"
#include "shell/words_of_sending.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_searched_from = 6;  // sheets that are seen at a glance need no search
constexpr std::size_t k_steps_around = 100;  // shown before and after the present: a page's table past this is slow to lay out

Press with_key(const char* command, const SheetInDrawer& sheet) { return {command, Value::object({{"key", key_text(sheet.key)}})}; }

std::string when(const Session& session, std::int64_t at_ms) { return words::day_or_time(at_ms, session.platform.minutes_east(at_ms), session.platform.today()); }

/// So many of those that were found are shown; the rest by asking for more.
void add_sheets(Panel& slip, const Session& session, TableItem table, const std::vector<const SheetInDrawer*>& sheets, const char* command, std::int64_t SheetInDrawer::*at_ms) {
  const std::size_t shown = std::min(sheets.size(), session.drawer.rows);
  for (std::size_t i = 0; i < shown; ++i) {
    const SheetInDrawer& sheet = *sheets[i];
    const bool in_hand = &sheet == &session.sheets.in_hand();
    table.rows.push_back({words::sheet_title(sheet.history.now()), in_hand ? "in hand" : when(session, sheet.*at_ms)});
    table.row_presses.push_back(with_key(command, sheet));
    table.row_pictures.push_back(sheet_picture(sheet.history.now()));
  }
  const std::string name = table.name;
  slip.items.push_back(std::move(table));
  if (shown < sheets.size()) slip.items.push_back(ButtonItem{.name = "more-" + name, .label = words::more_sheets(sheets.size() - shown), .on_press = {"show-more-sheets"}});
}

/// What of the store can't be used: told, to be saved, and after that to be put away.
void add_damaged(Panel& slip, const Session& session) {
  const Keeper& keeper = session.keeper;
  if (!keeper.findings().empty()) slip.items.push_back(CautionItem{.text = words::findings_title(keeper.findings()), .advice = words::findings(keeper.findings(), session.sheets)});
  else if (!keeper.unused().empty()) slip.items.push_back(LineItem{.text = words::damaged_before(keeper.unused().size())});
  if (keeper.unused().empty()) return;
  slip.items.push_back(ButtonItem{.name = "save-damaged", .label = words::save_damaged(), .on_press = {"save-damaged"}});
  if (keeper.damaged() == 0) return;
  slip.items.push_back(ButtonItem{.name = "put-damaged-away", .label = words::put_damaged_away(), .enabled = session.drawer.damaged_saved, .reason = words::save_damaged_first(), .on_press = {"put-damaged-away"}});
}

void add_where_kept(Panel& slip, const Session& session) {
  slip.items.push_back(LineItem{.text = words::where_kept(session.keeper, session.room), .tone = LineTone::soft});
  if (session.room.promise == Promise::none) slip.items.push_back(ButtonItem{.name = "ask-promise", .label = words::ask_promise(), .on_press = {"ask-promise"}});
  const std::string room = words::room_left(session.room);
  if (!room.empty()) slip.items.push_back(LineItem{.text = room, .tone = session.room.is_short() ? LineTone::strong : LineTone::soft});
  slip.items.push_back(LineItem{.text = words::save_what_matters(), .tone = LineTone::soft});  // what follows ends the slip
}

}  // namespace

Panel drawer_slip(const Session& session) {
  Panel slip{.name = "drawer", .label = "Drawer of sheets"};
  slip.items.push_back(HeadingItem{.text = "Drawer of sheets"});
  slip.items.push_back(parts::close_button());
  add_damaged(slip, session);
  if (session.file) {
    slip.items.push_back(LineItem{.text = words::file_in_hand(*session.file)});
    slip.items.push_back(ButtonItem{.name = "show-file", .label = "Show it", .on_press = {"show-file"}});
  }
  const std::vector<const SheetInDrawer*> all = session.sheets.shown(), found = found_among(all, session.drawer.search);
  if (all.size() > k_searched_from || !session.drawer.search.empty())
    slip.items.push_back(FieldItem{.name = "search", .label = words::search_label(), .text = session.drawer.search, .as_typed = true, .on_leave = {"search-drawer"}});
  add_sheets(slip, session, {.name = "sheets", .caption = words::sheets_caption(found.size(), all.size()), .columns = {{"sheet"}, {"changed", true}}, .when_empty = words::none_found()}, found, "open-sheet", &SheetInDrawer::changed_ms);

  slip.items.push_back(HeadingItem{.text = words::sheet_title(session.document()), .beside = "in hand", .level = 3});
  slip.items.push_back(ButtonItem{.name = "copy-sheet", .label = "Copy it", .on_press = {"copy-sheet"}});
  slip.items.push_back(ButtonItem{.name = "send", .label = words::send_title(), .on_press = {"open-slip", Value::object({{"slip", "send"}})}});
  slip.items.push_back(ButtonItem{.name = "save-sheet", .label = "Save as a file", .on_press = {"save-sheet"}});
  for (const char* format : {"gpx", "geojson", "csv"})
    slip.items.push_back(ButtonItem{.name = std::string("save-as-") + format, .label = words::save_as_label(format), .on_press = {"save-as", Value::object({{"format", format}})}});
  slip.items.push_back(ButtonItem{.name = "history", .label = "Its steps", .on_press = {"open-slip", Value::object({{"slip", "history"}})}});
  const bool is_ours = session.sheets.in_hand().newer_text.empty();
  slip.items.push_back(ButtonItem{.name = "delete-sheet", .label = "Take it out", .enabled = is_ours, .reason = is_ours ? "" : words::sentence({.fault = Fault::sheet_of_newer}), .on_press = {"delete-sheet"}});

  if (const std::vector<const SheetInDrawer*> removed = found_among(session.sheets.removed(), session.drawer.search); !removed.empty()) {
    slip.items.push_back(HeadingItem{.text = "Taken out", .beside = words::put_back_for(), .level = 3});
    add_sheets(slip, session, {.name = "removed", .caption = "Press one to put it back", .columns = {{"sheet"}, {"taken out", true}}}, removed, "put-back-sheet", &SheetInDrawer::removed_ms);
  }
  add_where_kept(slip, session);
  slip.items.push_back(ButtonItem{.name = "new-sheet", .label = "New sheet", .look = ButtonLook::main, .on_press = {"open-slip", Value::object({{"slip", "new-sheet"}})}});
  slip.items.push_back(ButtonItem{.name = "save-all", .label = words::save_all(), .on_press = {"save-all"}});
  slip.items.push_back(ButtonItem{.name = "open-file", .label = "Open a file", .on_press = {"open-file"}});
  return slip;
}

Panel history_slip(const Session& session) {
  const History& history = session.history();
  Panel slip{.name = "history", .label = "Steps of this sheet"};
  slip.items.push_back(HeadingItem{.text = "Steps", .beside = words::sheet_title(session.document())});
  slip.items.push_back(parts::close_button());

  TableItem table{.name = "steps", .caption = "The last step first: press one to go there", .columns = {{"what was done"}, {"step", true}}};
  const std::size_t present = history.state();
  const std::size_t newest = std::min(history.last_state(), present + k_steps_around);
  const std::size_t oldest = std::max(history.first_state(), present - std::min(present, k_steps_around));
  for (std::size_t state = newest + 1; state-- > oldest;) {
    const bool laid_down = state == history.first_state();
    const std::string what = !laid_down ? words::label_of(history.label_of(state)) : state == 0 ? "laid down" : "the oldest there is";
    table.rows.push_back({what, state == present ? "now" : std::to_string(state)});
    table.row_presses.push_back({"go-to-step", Value::object({{"step", static_cast<double>(state)}})});
  }
  if (newest < history.last_state()) slip.items.push_back(LineItem{.text = words::further_steps(history.last_state() - newest, true), .tone = LineTone::soft});
  slip.items.push_back(table);
  if (oldest > history.first_state()) slip.items.push_back(LineItem{.text = words::further_steps(oldest - history.first_state(), false), .tone = LineTone::soft});
  if (history.first_state() > 0) slip.items.push_back(LineItem{.text = words::oldest_gone(), .tone = LineTone::soft});
  return slip;
}

}  // namespace fogsheet
