// The drawer of sheets: all of them by name and day, the one in hand with what can be done with it, and those that can be
// put back. And the past of the sheet in hand, step by step.
#include "shell/commands_drawer.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"
#include "shell/words_of_files.h"
#include "shell/words_of_sending.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_steps_around = 100;  // shown before and after the present: a page's table past this is slow to lay out

Press with_key(const char* command, const SheetInDrawer& sheet) { return {command, Value::object({{"key", key_text(sheet.key)}})}; }

std::string when(const Session& session, std::int64_t at_ms) { return words::day_or_time(at_ms, session.platform.minutes_east(at_ms), session.platform.today()); }

TableItem sheets_table(const Session& session, const std::vector<const SheetInDrawer*>& sheets) {
  TableItem table{.name = "sheets", .caption = "Sheets, the last changed first", .columns = {{"sheet"}, {"changed", true}}};
  for (const SheetInDrawer* sheet : sheets) {
    const bool in_hand = sheet == &session.sheets.in_hand();
    table.rows.push_back({words::sheet_title(sheet->history.now()), in_hand ? "in hand" : when(session, sheet->changed_ms)});
    table.row_presses.push_back(with_key("open-sheet", *sheet));
  }
  return table;
}

TableItem removed_table(const Session& session, const std::vector<const SheetInDrawer*>& sheets) {
  TableItem table{.name = "removed", .caption = "Press one to put it back", .columns = {{"sheet"}, {"taken out", true}}};
  for (const SheetInDrawer* sheet : sheets) {
    table.rows.push_back({words::sheet_title(sheet->history.now()), when(session, sheet->removed_ms)});
    table.row_presses.push_back(with_key("put-back-sheet", *sheet));
  }
  return table;
}

}  // namespace

Panel drawer_slip(const Session& session) {
  Panel slip{.name = "drawer", .label = "Drawer of sheets"};
  slip.items.push_back(HeadingItem{.text = "Drawer of sheets"});
  slip.items.push_back(parts::close_button());
  if (!session.keeper.findings().empty()) slip.items.push_back(CautionItem{.text = "Found damaged, or newer", .advice = words::findings(session.keeper.findings(), session.sheets)});
  slip.items.push_back(sheets_table(session, session.sheets.shown()));

  slip.items.push_back(HeadingItem{.text = words::sheet_title(session.document()), .beside = "in hand", .level = 3});
  slip.items.push_back(ButtonItem{.name = "copy-sheet", .label = "Copy it", .on_press = {"copy-sheet"}});
  slip.items.push_back(ButtonItem{.name = "send", .label = words::send_title(), .on_press = {"open-slip", Value::object({{"slip", "send"}})}});
  slip.items.push_back(ButtonItem{.name = "save-sheet", .label = "Save as a file", .on_press = {"save-sheet"}});
  for (const char* format : {"gpx", "geojson", "csv"})
    slip.items.push_back(ButtonItem{.name = std::string("save-as-") + format, .label = words::save_as_label(format), .on_press = {"save-as", Value::object({{"format", format}})}});
  slip.items.push_back(ButtonItem{.name = "history", .label = "Its steps", .on_press = {"open-slip", Value::object({{"slip", "history"}})}});
  slip.items.push_back(ButtonItem{.name = "delete-sheet", .label = "Take it out", .on_press = {"delete-sheet"}});

  if (const std::vector<const SheetInDrawer*> removed = session.sheets.removed(); !removed.empty()) {
    slip.items.push_back(HeadingItem{.text = "Taken out", .beside = words::put_back_for(), .level = 3});
    slip.items.push_back(removed_table(session, removed));
  }
  slip.items.push_back(LineItem{.text = words::where_kept(session.keeper), .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "new-sheet", .label = "New sheet", .look = ButtonLook::main, .on_press = {"open-slip", Value::object({{"slip", "new-sheet"}})}});
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
