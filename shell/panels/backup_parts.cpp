// What a file of all that was kept holds, what of it is damaged, and what is here already.
#include <algorithm>

#include "shell/panels/panels.h"
#include "shell/words.h"
#include "shell/words_of_backup.h"
#include "shell/words_of_files.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_listed = 100;

/// Of a time that a file tells: not after now, whatever it says.
std::string when(const Session& session, std::int64_t told_ms) {
  const std::int64_t at_ms = std::clamp<std::int64_t>(told_ms, 0, session.platform.now_ms());
  return words::day_or_time(at_ms, session.platform.minutes_east(at_ms), session.platform.today());
}

TableItem listed(const Session& session, const Backup& backup, const Fates& fates) {
  TableItem table{.name = "in-file", .caption = "What it holds", .columns = {{"name"}, {"last changed", true}, {"and here"}}};
  for (std::size_t i = 0; i < std::min(k_most_listed, backup.sheets.size()); ++i)
    table.rows.push_back({words::sheet_title(backup.sheets[i].history.now), when(session, backup.sheets[i].state.changed_ms), words::fate(fates.sheets[i])});
  for (std::size_t i = 0; i < std::min(k_most_listed, backup.boats.size()); ++i) table.rows.push_back({backup.boats[i].history.now.name, "", words::fate(fates.boats[i])});
  return table;
}

}  // namespace

void add_backup(Panel& slip, const Session& session) {
  const Backup& backup = *session.file->all;
  const Fates fates = fates_of(backup, session.sheets, session.boats, session.keeper);
  const std::size_t come = fates.count(Fate::comes) + fates.count(Fate::comes_beside), all = backup.sheets.size() + backup.boats.size();
  slip.items.push_back(LineItem{.text = words::backup_holds(backup), .tone = LineTone::strong});
  slip.items.push_back(LineItem{.text = words::backup_made(backup.made_ms > 0 ? when(session, backup.made_ms) : ""), .tone = LineTone::soft});
  if (backup.missing > 0) slip.items.push_back(CautionItem{.text = words::pieces_missing(backup.missing)});
  if (!backup.amiss.empty()) {
    TableItem table{.name = "amiss", .caption = words::amiss_caption(backup.amiss.size()), .columns = {{"name"}, {"what"}}};
    for (std::size_t i = 0; i < std::min(k_most_listed, backup.amiss.size()); ++i) table.rows.push_back({backup.amiss[i].title.empty() ? words::nameless() : backup.amiss[i].title, words::amiss(backup.amiss[i].kind)});
    slip.items.push_back(std::move(table));
  }
  if (backup.set_aside > 0) slip.items.push_back(LineItem{.text = words::pieces_set_aside(backup.set_aside), .tone = LineTone::soft});
  if (all > 0) {
    slip.items.push_back(LineItem{.text = words::would_come(fates)});
    slip.items.push_back(listed(session, backup, fates));
    if (all > k_most_listed) slip.items.push_back(LineItem{.text = words::further_left_out(static_cast<std::uint32_t>(all - std::min(k_most_listed, backup.sheets.size()) - std::min(k_most_listed, backup.boats.size()))), .tone = LineTone::soft});
  }
  const std::size_t photographs = backup.photographs.size(), cut_off = backup.cut_off(session.file->bytes);
  if (photographs > cut_off) slip.items.push_back(LineItem{.text = words::photographs_come(photographs - cut_off)});
  if (cut_off > 0) slip.items.push_back(CautionItem{.text = words::photographs_cut_off(cut_off)});
  if (come > 0) slip.items.push_back(ButtonItem{.name = "take-in", .label = words::take_in(come), .look = ButtonLook::main, .on_press = {"take-in"}});
  else if (photographs > cut_off) slip.items.push_back(ButtonItem{.name = "take-in", .label = words::take_in_photographs(), .look = ButtonLook::main, .on_press = {"take-in"}});
}

}  // namespace fogsheet
