// How the keeper takes in what the store holds: whole sheets with their journals, what of them is damaged or newer, and what
// becomes of that.
#include <algorithm>
#include <utility>

#include "shell/keeper/keeper.h"

namespace fogsheet {
namespace {

constexpr std::int64_t k_put_back_for_ms = 30LL * 24 * 60 * 60 * 1'000;

}  // namespace

void Keeper::store_refused(StoreFault why) {
  fault_ = why;
  is_over_ = why != StoreFault::silent;
}

bool Keeper::store_read(const std::vector<StoreRecord>& records, Sheets& sheets, std::int64_t now_ms, StoreFault fault) {
  is_read_ = true;
  is_over_ = fault != StoreFault::none;
  fault_ = fault;
  findings_.clear();
  unused_.clear();
  const bool replaces_first = has_nothing(sheets);
  if (replaces_first)  // a clock that was set back may have given it a key that was kept
    for (const StoreRecord& record : records)
      if (record.sheet >= sheets.in_hand().key.value) sheets.move_key_past({record.sheet});
  const SheetKey first = sheets.in_hand().key;

  std::map<SheetKey, std::vector<const StoreRecord*>> journals;
  for (const StoreRecord& record : records)
    if (record.part == StorePart::journal) journals[{record.sheet}].push_back(&record);
  for (auto& [key, journal] : journals) std::sort(journal.begin(), journal.end(), [](const StoreRecord* a, const StoreRecord* b) { return a->sequence < b->sequence; });

  for (const StoreRecord& record : records) {
    if (record.part == StorePart::damaged) leave_unused(record, false);
    if (record.part == StorePart::sheets) read_sheet({record.sheet}, record, journals[{record.sheet}], sheets, now_ms);
    if (record.part == StorePart::desk && record.sheet == 0)
      if (const Result<std::span<const std::uint8_t>> desk = unframed(record.bytes)) kept_desk_.assign(desk->begin(), desk->end());
  }
  desk_ = kept_desk_;
  const std::vector<const SheetInDrawer*> shown = sheets.shown();
  const auto kept = std::find_if(shown.begin(), shown.end(), [&](const SheetInDrawer* sheet) { return sheet->key != first; });
  if (!replaces_first || kept == shown.end()) return false;
  sheets.take((*kept)->key);
  sheets.forget(first);
  return true;
}

bool Keeper::read_sheet(SheetKey key, const StoreRecord& whole, const std::vector<const StoreRecord*>& journal, Sheets& sheets, std::int64_t now_ms) {
  const auto found = [&](Finding::Kind kind) {
    this->found({kind, key});
    return false;
  };
  Written known{.is_there = true, .checksum = checksum_of(whole.bytes)};
  const auto leave = [&](bool is_newer) {  // the sheet's records stay where they are
    leave_unused(whole, is_newer);
    for (const StoreRecord* record : journal) leave_unused(*record, is_newer);
  };
  const auto put_aside = [&](const StoreRecord& record) {
    known.set_aside.push_back({.part = StorePart::damaged, .sheet = key.value, .sequence = static_cast<std::uint64_t>(now_ms) + known.set_aside.size(), .bytes = record.bytes});
    leave_unused({StorePart::damaged, key.value, known.set_aside.back().sequence, record.bytes}, false);
  };

  Result<SheetRecord> read = read_sheet_record(whole.bytes);
  if (read && read->key != key) read = Problem{.fault = Fault::text_checksum};
  if (!read && read.problem().fault == Fault::text_newer) {
    leave(true);
    return found(Finding::Kind::newer);
  }
  if (!read) {
    std::optional<SheetRecord> saved = salvaged(whole.bytes);
    if (!saved || saved->key != key) {
      leave(false);
      return found(Finding::Kind::unreadable);
    }
    found(Finding::Kind::past_lost);
    known.is_broken = true;
    saved->state.changed_ms = now_ms;
    put_aside(whole);
    for (const StoreRecord* record : journal) put_aside(*record);
    read = std::move(*saved);
  }
  SheetRecord record = std::move(read).value();
  History history(std::move(record.history));
  known.is_newer = !record.newer_text.empty();
  if (known.is_newer) found(Finding::Kind::part_newer);

  for (const StoreRecord* each : journal) {
    known.sequence = std::max(known.sequence, each->sequence);
    if (each->sequence <= record.through || known.is_broken) continue;
    Result<JournalRecord> step = read_journal_record(each->bytes);
    if (!step && step.problem().fault == Fault::text_newer) {
      leave(true);
      return found(Finding::Kind::newer);
    }
    if (!step) {
      found(Finding::Kind::steps_lost);
      put_aside(*each);
    }
    // A record that does not follow was never shown as kept: one before it had failed.
    if (!step || step->follows != known.checksum || !history.take_up(step->change)) {
      if (known.is_newer) break;  // it may do what only the newer program can
      known.is_broken = true;
      continue;
    }
    record.state = step->state;
    known.checksum = checksum_of(each->bytes);
    ++known.journal;
  }
  known.sequence = std::max(known.sequence, record.through);
  if (known.is_newer) known.journal = 0;  // it is not to be taken up
  if (record.state.removed_ms != 0 && now_ms - record.state.removed_ms > k_put_back_for_ms) {
    sheets_[key] = std::move(known);  // of a sheet that is not here any more: its records go
    return true;
  }

  history.mark();
  known.state = record.state;
  known.present = history.state();
  known.commits = history.commits();
  known.kept_present = history.state();
  const bool was_changed_here = changed_here(sheets, key);
  sheets.adopt({.key = key, .history = std::move(history), .over = record.over, .under = record.state.under, .changed_ms = record.state.changed_ms, .removed_ms = record.state.removed_ms, .newer_text = std::move(record.newer_text)}, was_changed_here);
  sheets_[key] = std::move(known);
  return true;
}

void Keeper::leave_unused(const StoreRecord& record, bool is_newer) {
  const UnusedRecord unused{record, is_newer};
  if (std::find(unused_.begin(), unused_.end(), unused) == unused_.end()) unused_.push_back(unused);  // a sheet may be read anew
}

void Keeper::put_damaged_away() {
  if (!may_write()) return;
  std::vector<StoreAct> acts;
  for (const UnusedRecord& each : unused_)
    if (!each.is_newer) acts.push_back({.kind = StoreAct::Kind::erase, .part = each.record.part, .sheet = each.record.sheet, .sequence = each.record.sequence, .last = each.record.sequence});
  if (acts.empty()) return;
  new_write({}).acts = std::move(acts);
  std::erase_if(unused_, [](const UnusedRecord& each) { return !each.is_newer; });
  std::erase_if(findings_, [](const Finding& each) { return each.kind != Finding::Kind::newer && each.kind != Finding::Kind::boat_newer; });
  for (auto& [key, known] : sheets_) known.set_aside.clear();
}

void Keeper::found(Finding finding) {
  if (std::find(findings_.begin(), findings_.end(), finding) == findings_.end()) findings_.push_back(finding);
}

}  // namespace fogsheet
