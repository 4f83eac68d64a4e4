// What a file that was chosen holds, and what can be done with it.
#include "shell/commands_files.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"
#include "shell/words_of_files.h"

namespace fogsheet {
namespace {

void add_left_out(Panel& slip, const MarksAndLines& all) {
  if (all.left_out.empty()) return;
  TableItem table{.name = "left-out", .caption = words::left_out_caption(all.left_out_count), .columns = {{"what"}, {"why"}, {"line", true}}};
  for (const LeftOut& left : all.left_out) table.rows.push_back({left.what, words::left_out_why(left.why), left.line > 0 ? std::to_string(left.line) : ""});
  slip.items.push_back(std::move(table));
  if (all.left_out_count > all.left_out.size()) slip.items.push_back(LineItem{.text = words::further_left_out(all.left_out_count - static_cast<std::uint32_t>(all.left_out.size())), .tone = LineTone::soft});
}

void add_what_to_do(Panel& slip, const Session& session) {
  const Import import = import_of_file(session);
  const bool any = import.marks + import.legs > 0;
  const std::optional<Problem> no_sheet = no_sheet_of_file(session);
  slip.items.push_back(LineItem{.text = words::would_come(import)});
  slip.items.push_back(ButtonItem{.name = "import-marks", .label = "Put them on this sheet", .look = any ? ButtonLook::main : ButtonLook::plain, .enabled = any, .reason = words::sentence({.fault = Fault::nothing_to_import}), .on_press = {"import-marks"}});
  slip.items.push_back(ButtonItem{.name = "import-as-sheet", .label = "A new sheet of them", .look = any || no_sheet ? ButtonLook::plain : ButtonLook::main, .enabled = !no_sheet, .reason = no_sheet ? words::sentence(*no_sheet) : "", .on_press = {"import-as-sheet"}});
}

}  // namespace

Panel file_slip(const Session& session) {
  const FileInHand& file = *session.file;
  Panel slip{.name = "file", .label = "What the file holds"};
  slip.items.push_back(HeadingItem{.text = file.name});
  slip.items.push_back(parts::close_button());
  if (file.others > 0) slip.items.push_back(LineItem{.text = words::others_left(file.others), .tone = LineTone::soft});
  if (file.all) {
    add_backup(slip, session);
  } else if (!file.read) {
    slip.items.push_back(LineItem{.text = words::file_is_read(file)});
  } else if (!*file.read) {
    slip.items.push_back(CautionItem{.text = words::file_not_used(), .advice = words::sentence(file.read->problem())});
    slip.items.push_back(ButtonItem{.name = "open-file", .label = "Open another file", .on_press = {"open-file"}});
  } else {
    const MarksAndLines& all = **file.read;
    if (all.broken_past > 0) slip.items.push_back(CautionItem{.text = words::file_cut(), .advice = words::file_cut_advice(all.broken_past)});
    for (const std::string& line : words::file_holds(all)) slip.items.push_back(LineItem{.text = line, .tone = LineTone::strong});
    if (all.departure) slip.items.push_back(LineItem{.text = words::departed(*all.departure), .tone = LineTone::soft});
    if (!all.marks.empty() || !all.lines.empty()) add_what_to_do(slip, session);
  }
  slip.items.push_back(ButtonItem{.name = "put-file-away", .label = file.is_being_read() ? "Stop" : "Not now", .on_press = {"put-file-away"}});
  if (file.read && *file.read) add_left_out(slip, **file.read);
  return slip;
}

}  // namespace fogsheet
