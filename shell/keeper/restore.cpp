#include "shell/keeper/restore.h"

#include <algorithm>
#include <set>
#include <utility>

#include "shell/words.h"

namespace fogsheet {
namespace {

template <class Doc>
bool is_same(const KeptHistoryOf<Doc>& kept, const HistoryOf<Doc>& here) {
  return kept.commits == here.commits() && kept.state == here.state() && kept.first_state + kept.steps.size() == here.last_state() && kept.now == here.now();
}

/// @param find  what is here under a key, or null. @param all  all that is here
template <class Record, class All, class Find>
std::vector<Fate> fates(const std::vector<Record>& records, const All& all, const Find& find) {
  std::set<decltype(Record::key)> in_file;
  for (const Record& record : records) in_file.insert(record.key);
  std::vector<Fate> list;
  for (const Record& record : records) {
    // A copy that came of it before stands here under a key that the file does not know.
    const bool is_here = std::any_of(all.begin(), all.end(), [&](const auto& each) { return is_same(record.history, each->history) && (each->key == record.key || !in_file.contains(each->key)); });
    list.push_back(is_here ? Fate::is_here : find(record.key) ? Fate::comes_beside : Fate::comes);
  }
  return list;
}

/// Those that are not here, first of them those that keep their keys: no other is then given a key that the file knows.
template <class Record, class Here>
std::vector<Record*> coming(std::vector<Record>& records, const std::vector<Fate>& fates, const Here& here) {
  std::vector<Record*> come;
  for (std::size_t i = 0; i < records.size(); ++i)
    if (fates[i] != Fate::is_here) come.push_back(&records[i]);
  std::stable_partition(come.begin(), come.end(), [&](const Record* record) { return !here.find(record->key); });
  return come;
}

}  // namespace

std::size_t Fates::count(Fate fate) const {
  return static_cast<std::size_t>(std::count(sheets.begin(), sheets.end(), fate) + std::count(boats.begin(), boats.end(), fate));
}

Fates fates_of(const Backup& backup, const Sheets& sheets, const Boats& boats, const Keeper& keeper) {
  const bool has_nothing = keeper.has_nothing(sheets);
  const std::vector<std::unique_ptr<SheetInDrawer>> none;
  return {fates(backup.sheets, has_nothing ? none : sheets.all(), [&](SheetKey key) { return has_nothing ? nullptr : sheets.find(key); }), fates(backup.boats, boats.all(), [&](BoatKey key) { return boats.find(key); })};
}

std::map<SheetKey, SheetKey> take_in(Backup backup, Sheets& sheets, Boats& boats, const Keeper& keeper, std::int64_t now_ms) {
  const Fates fates = fates_of(backup, sheets, boats, keeper);
  const auto free_key = [&](auto key, StorePart part, std::uint64_t sequence) {
    const bool is_taken = std::any_of(keeper.unused().begin(), keeper.unused().end(), [&](const UnusedRecord& each) { return each.record.part == part && each.record.sheet == key.value && each.record.sequence == sequence; });
    return is_taken ? decltype(key){} : key;
  };
  std::map<SheetKey, SheetKey> came_as;
  for (SheetRecord* each : coming(backup.sheets, fates.sheets, sheets)) {
    SheetRecord& record = *each;
    const bool is_out = record.state.removed_ms != 0;
    came_as[record.key] = sheets.bring_in({.key = free_key(record.key, StorePart::sheets, 0), .history = History(std::move(record.history)), .over = std::move(record.over), .under = std::move(record.state.under),
                                           .changed_ms = std::clamp<std::int64_t>(record.state.changed_ms, 0, now_ms), .removed_ms = is_out ? now_ms : 0, .newer_text = std::move(record.newer_text)});
  }
  for (const auto& [in_file, key] : came_as) {
    SheetInDrawer& sheet = *sheets.find(key);
    const auto follow = [&](auto& other) {
      if (const auto found = other ? came_as.find(other->sheet) : came_as.end(); found != came_as.end()) other->sheet = found->second;
    };
    follow(sheet.over);
    follow(sheet.under);
  }
  for (BoatRecord* record : coming(backup.boats, fates.boats, boats))
    boats.bring_in({.key = free_key(record->key, StorePart::desk, k_boat_sequence), .history = BoatHistory(std::move(record->history)), .removed = record->removed});
  return came_as;
}

std::vector<BackupRow> unused_rows(const Sheets& sheets, const std::vector<UnusedRecord>& unused) {
  std::vector<BackupRow> rows;
  for (const UnusedRecord& each : unused) {
    const SheetInDrawer* sheet = sheets.find({each.record.sheet});
    rows.push_back({each.record, sheet ? words::sheet_title(sheet->history.now()) : ""});
  }
  return rows;
}

std::vector<BackupRow> rows_of(Sheets& sheets, Boats& boats, const Keeper& keeper) {
  std::vector<BackupRow> rows;
  std::vector<const SheetInDrawer*> kept;
  if (!keeper.has_nothing(sheets)) kept = sheets.shown();
  const std::vector<const SheetInDrawer*> removed = sheets.removed();
  kept.insert(kept.end(), removed.begin(), removed.end());
  for (const SheetInDrawer* each : kept) {
    SheetInDrawer& sheet = *sheets.find(each->key);
    rows.push_back({{.part = StorePart::sheets, .sheet = sheet.key.value, .bytes = written(record_of(sheet, 0))}, words::sheet_title(sheet.history.now())});
  }
  for (const std::unique_ptr<KeptBoat>& boat : boats.all())
    rows.push_back({{.part = StorePart::desk, .sheet = boat->key.value, .sequence = k_boat_sequence, .bytes = written(record_of(*boat))}, boat->now().name});
  for (BackupRow& row : unused_rows(sheets, keeper.unused())) rows.push_back(std::move(row));
  return rows;
}

}  // namespace fogsheet
