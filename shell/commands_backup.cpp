#include "shell/commands_backup.h"

#include <utility>

#include "shell/arguments.h"
#include "shell/commands_desk.h"
#include "shell/keeper/restore.h"
#include "shell/words_of_backup.h"

namespace fogsheet {
namespace {

std::optional<Fault> no_backup(const Session& session) { return session.file && session.file->all ? std::nullopt : std::optional(Fault::no_file_in_hand); }

std::optional<Fault> none_damaged(const Session& session) { return session.keeper.unused().empty() ? std::optional(Fault::none_damaged) : std::nullopt; }

Value run_save_all(Session& session, const Value&) {
  session.photographs.going.clear();
  session.platform.list_photographs();
  return done();
}

Value run_save_damaged(Session& session, const Value&) {
  const StoreBytes bytes = backup_bytes(unused_rows(session.sheets, session.keeper.unused()), session.platform.now_ms());
  session.platform.save_file(words::damaged_name(session.platform.today()), {bytes.begin(), bytes.end()});
  session.drawer.damaged_saved = true;
  return done();
}

Value run_put_damaged_away(Session& session, const Value&) {
  session.keeper.put_damaged_away();
  session.say(words::damaged_gone());
  return done();
}

Value run_ask_promise(Session& session, const Value&) {
  session.room.answer_wanted = true;
  session.platform.look_at_room(true);
  return done();
}

/// Those whose sheets are here, by the keys that these have here.
std::vector<PhotographInFile> with_sheets_here(std::vector<PhotographInFile> photographs, const std::map<SheetKey, SheetKey>& came_as, const Sheets& sheets) {
  std::erase_if(photographs, [&](PhotographInFile& each) {
    if (const auto came = came_as.find(each.sheet); came != came_as.end()) each.sheet = came->second;
    return !sheets.find(each.sheet);
  });
  return photographs;
}

Value run_take_in(Session& session, const Value&) {
  Backup backup = std::move(*session.file->all);
  session.file.reset();
  const Fates fates = fates_of(backup, session.sheets, session.boats, session.keeper);
  const bool had_nothing = session.keeper.has_nothing(session.sheets);
  const SheetKey before = session.sheets.in_hand().key;
  std::vector<PhotographInFile> photographs = std::move(backup.photographs);
  const std::map<SheetKey, SheetKey> came_as = take_in(std::move(backup), session.sheets, session.boats, session.keeper, session.platform.now_ms());
  session.photographs = {.coming = with_sheets_here(std::move(photographs), came_as, session.sheets)};
  // The sheet to try makes way, as it does for what was kept.
  const std::vector<const SheetInDrawer*> shown = session.sheets.shown();
  for (const SheetInDrawer* sheet : shown) {
    if (!had_nothing || sheet->key == before) continue;
    session.sheets.take(sheet->key);
    session.change_desk(before);
    session.sheets.forget(before);
    break;
  }
  session.slip = SlipId::drawer;
  if (fates.count(Fate::comes) + fates.count(Fate::comes_beside) > 0) session.say(words::taken_in(fates));
  return done();
}

}  // namespace

void save_everything(Session& session, bool were_read) {
  const std::vector<BackupRow> rows = rows_of(session.sheets, session.boats, session.keeper);
  const std::vector<PhotographInFile> photographs = std::exchange(session.photographs.going, {});
  const StoreBytes bytes = backup_bytes(rows, session.platform.now_ms(), photographs);
  session.platform.save_with_photographs(words::backup_name(session.platform.today()), {bytes.begin(), bytes.end()});
  const std::string said = words::saved_all(rows, photographs.size(), were_read);
  if (were_read) session.say(said);
  else session.message = {said, true};
}

std::vector<Command> backup_commands() {
  return {
      {"save-all", "Save all as one file", "", {}, nullptr, run_save_all},
      {"save-damaged", "Save what can't be used as one file", "", {}, none_damaged, run_save_damaged},
      {"put-damaged-away", "Put away what is damaged", "", {}, none_damaged, run_put_damaged_away},
      {"ask-promise", "Ask the browser to keep the sheets for good", "", {}, nullptr, run_ask_promise},
      {"take-in", "Take in what the file holds", "", {}, no_backup, run_take_in},
  };
}

}  // namespace fogsheet
