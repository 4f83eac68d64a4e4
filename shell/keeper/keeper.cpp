#include "shell/keeper/keeper.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace fogsheet {
namespace {

// A long journal makes the next start slow, a whole sheet costs its size to write: it is written once its journal has
// grown by a part of the past, so that what is written in all stays in proportion to what was done.
constexpr std::uint64_t k_journal_most = 64;
constexpr std::uint64_t k_journal_share = 8;  // one in so many steps of the past
constexpr std::uint64_t k_journal_worth_hiding = 8;

constexpr std::int64_t k_rest_ms = 1'500;
constexpr std::int64_t k_desk_rest_ms = 400;
constexpr std::int64_t k_first_retry_ms = 1'000;
constexpr std::int64_t k_last_retry_ms = 60'000;
constexpr std::size_t k_most_steps_a_record = 1'000;  // more are kept as a whole sheet

constexpr std::uint64_t k_any_sequence = std::numeric_limits<std::uint32_t>::max();

StoreAct whole_journal_gone(SheetKey key) {
  return {.kind = StoreAct::Kind::erase, .part = StorePart::journal, .sheet = key.value, .sequence = 0, .last = k_any_sequence};
}

}  // namespace

/// Whether the sheet says more than the store, writes under way counted as done.
bool Keeper::says_more(const SheetInDrawer& sheet, const Written& known) {
  return known.is_broken || known.is_parted || known.is_unwritten || known.commits != sheet.history.commits() || known.present != sheet.history.state() || known.state != state_of(sheet);
}

/// Whether a sheet of that key was changed in this page without being kept.
bool Keeper::changed_here(const Sheets& sheets, SheetKey key) const {
  const SheetInDrawer* here = sheets.find(key);
  if (!here) return false;
  const auto known = sheets_.find(key);
  return known == sheets_.end() || known->second.is_parted || known->second.is_unwritten || known->second.commits != here->history.commits() || known->second.present != here->history.state();
}

// -- writing

void Keeper::look(Sheets& sheets, StoreBytes desk, std::int64_t now_ms) {
  if (desk_ != desk) {
    desk_ = std::move(desk);
    if (!desk_waits_) desk_at_ms_ = now_ms + k_desk_rest_ms;
    desk_waits_ = true;
    wake_by(desk_at_ms_);
  }
  if (has_nothing(sheets)) return;
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets.all()) keep_sheet(*sheet, now_ms);
  if (!may_write()) return;
  std::vector<SheetKey> gone;
  for (const auto& [key, known] : sheets_)
    if (known.is_there && !sheets.find(key)) gone.push_back(key);
  for (const SheetKey key : gone) sheets_[key].is_broken = false;
  for (const SheetKey key : gone)
    if (may_write(document_of(key), false, now_ms)) erase_sheet(key);
  may_write(document_of(sheets.in_hand().key), false, now_ms);
  if (under_way_.empty() && !is_any_broken() && to_erase_.empty() && !desk_waits_) fault_ = StoreFault::none;  // what had failed is not here any more
}

void Keeper::keep_sheet(SheetInDrawer& sheet, std::int64_t now_ms) {
  Written& known = sheets_[sheet.key];
  const History& history = sheet.history;
  const bool has_steps = history.unchanged_to() != history.last_state() || history.commits() != known.commits;
  if (has_steps && known.is_there && !known.is_newer) sheet.changed_ms = now_ms;
  const bool is_news = has_steps || history.state() != known.present || state_of(sheet) != known.state;
  if (!may_write()) return;
  const StoreDocument document = document_of(sheet.key);
  if (!known.is_there) {
    own(document);
    return write_whole(sheet);
  }
  if (!is_news && !known.is_broken) return has_no_news(document);
  if (known.is_parted || (known.is_newer && !known.is_broken) || !may_write(document, true, now_ms)) return;
  if (known.is_broken) {
    if (is_under_way(document) || now_ms < retry_at_ms_) return wake_by(retry_at_ms_);
    return write_whole(sheet);
  }
  if (history.last_state() - history.unchanged_to() > k_most_steps_a_record || history.unchanged_to() < history.first_state()) return write_whole(sheet);
  write_step(sheet);
  if (known.journal < std::max(k_journal_most, (history.last_state() - history.first_state()) / k_journal_share)) return;
  rests_at_ms_ = now_ms + k_rest_ms;
  wake_by(rests_at_ms_);
}

void Keeper::write_whole(SheetInDrawer& sheet) {
  Written& known = sheets_[sheet.key];
  if (known.is_there && says_more(sheet, known)) ++known.sequence;  // so that whoever knows the journal knows that this is more
  StoreBytes bytes = fogsheet::written(record_of(sheet, known.sequence));
  known.checksum = checksum_of(bytes);
  const StoreAct::Kind kind = std::exchange(known.is_there, true) ? StoreAct::Kind::put : StoreAct::Kind::add;
  known.is_broken = known.is_unwritten = false;
  known.is_newer = !sheet.newer_text.empty();
  known.journal = 0;
  StoreWrite& write = new_write({.sheet = sheet.key, .is_whole = true, .present = sheet.history.state()});
  write.acts = known.set_aside;
  write.acts.push_back({.kind = kind, .part = StorePart::sheets, .sheet = sheet.key.value, .bytes = std::move(bytes)});
  write.acts.push_back(whole_journal_gone(sheet.key));
  known.state = state_of(sheet);
  known.present = sheet.history.state();
  known.commits = sheet.history.commits();
  sheet.history.mark();
}

void Keeper::write_step(SheetInDrawer& sheet) {
  Written& known = sheets_[sheet.key];
  StoreBytes bytes = fogsheet::written(JournalRecord{.follows = known.checksum, .state = state_of(sheet), .change = sheet.history.change()});
  known.checksum = checksum_of(bytes);
  ++known.sequence;
  ++known.journal;
  new_write({.sheet = sheet.key, .present = sheet.history.state()}).acts.push_back({.kind = StoreAct::Kind::add, .part = StorePart::journal, .sheet = sheet.key.value, .sequence = known.sequence, .bytes = std::move(bytes)});
  known.state = state_of(sheet);
  known.present = sheet.history.state();
  known.commits = sheet.history.commits();
  sheet.history.mark();
}

void Keeper::write_desk() {
  if (!std::exchange(desk_waits_, false) || !may_write()) return;
  new_write({}).acts.push_back({.part = StorePart::desk, .bytes = framed(desk_)});
}

void Keeper::erase_sheet(SheetKey key) {
  StoreWrite& write = new_write({.erased = key});
  write.acts.push_back({.kind = StoreAct::Kind::erase, .part = StorePart::sheets, .sheet = key.value});
  write.acts.push_back(whole_journal_gone(key));
  sheets_.erase(key);
}

StoreWrite& Keeper::new_write(UnderWay under_way) {
  under_way_[next_write_] = under_way;
  return writes_.emplace_back(StoreWrite{.id = next_write_++});
}

std::vector<StoreWrite> Keeper::take_writes() { return std::exchange(writes_, {}); }

bool Keeper::is_under_way(StoreDocument document) const {
  return std::any_of(under_way_.begin(), under_way_.end(), [&](const auto& each) {
    const UnderWay& write = each.second;
    return document.key != 0 && (document.part == StorePart::sheets ? write.sheet.value == document.key || write.erased.value == document.key : write.boat.value == document.key);
  });
}

bool Keeper::is_broken(StoreDocument document) const {
  const auto sheet = sheets_.find({document.key});
  const auto boat = boats_.find({document.key});
  return document.part == StorePart::sheets ? sheet != sheets_.end() && sheet->second.is_broken : boat != boats_.end() && boat->second.is_broken;
}

bool Keeper::is_any_broken() const {
  const auto broken = [](const auto& each) { return each.second.is_broken; };
  return std::any_of(sheets_.begin(), sheets_.end(), broken) || std::any_of(boats_.begin(), boats_.end(), broken);
}

// -- answers and time

void Keeper::written(std::uint64_t write, std::int64_t now_ms) {
  const auto found = under_way_.find(write);
  if (found == under_way_.end()) return;
  const UnderWay done = found->second;
  under_way_.erase(found);
  let_go_of_wanted(now_ms);
  read_parted(done);
  if (!is_any_broken()) {
    fault_ = StoreFault::none;
    retry_after_ms_ = 0;
  }
  if (done.boat != BoatKey{}) kept_ms_ = now_ms;
  const auto known = sheets_.find(done.sheet);
  if (known == sheets_.end() || known->second.is_broken) return;  // what follows a gap is not kept
  known->second.kept_present = done.present;
  if (done.is_whole) known->second.set_aside.clear();
  kept_ms_ = now_ms;
}

void Keeper::failed(std::uint64_t write, StoreFault why, std::int64_t now_ms) {
  const auto found = under_way_.find(write);
  if (found == under_way_.end()) return;
  const UnderWay lost = found->second;
  under_way_.erase(found);
  fault_ = why;
  if (why == StoreFault::taken) return part(lost);
  retry_after_ms_ = std::clamp(2 * retry_after_ms_, k_first_retry_ms, k_last_retry_ms);
  retry_at_ms_ = now_ms + retry_after_ms_;
  wake_by(retry_at_ms_);
  if (const auto known = sheets_.find(lost.sheet); known != sheets_.end()) {
    known->second.is_broken = known->second.is_unwritten = true;
  } else if (const auto boat = boats_.find(lost.boat); boat != boats_.end()) {
    boat->second.is_broken = true;
  } else if (lost.erased != SheetKey{}) {
    to_erase_.push_back(lost.erased);
  } else {
    desk_waits_ = true;
    desk_at_ms_ = retry_at_ms_;
  }
}

void Keeper::wake(Sheets& sheets, std::int64_t now_ms) {
  wakes_at_ms_ = 0;
  if (desk_waits_) {
    if (now_ms >= desk_at_ms_) write_desk();
    else wake_by(desk_at_ms_);
  }
  if (now_ms >= retry_at_ms_ && may_write())
    for (const SheetKey key : std::exchange(to_erase_, {})) erase_sheet(key);
  const bool at_rest = rests_at_ms_ != 0 && now_ms >= rests_at_ms_;
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets.all()) {
    const auto known = sheets_.find(sheet->key);
    if (known == sheets_.end() || !may_write()) continue;
    if (known->second.is_broken) keep_sheet(*sheet, now_ms);
    else if (at_rest && is_ours(document_of(sheet->key)) && known->second.journal >= k_journal_most) write_whole(*sheet);
  }
  if (at_rest) rests_at_ms_ = 0;
  else if (rests_at_ms_ != 0) wake_by(rests_at_ms_);
}

void Keeper::hide(Sheets& sheets, std::int64_t now_ms) {
  desk_waits_ = desk_waits_ || desk_may_be_others_;  // the page that is left last is the one that comes back
  write_desk();
  if (!may_write()) return;
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets.all()) {
    const auto known = sheets_.find(sheet->key);
    if (known == sheets_.end() || !is_ours(document_of(sheet->key))) continue;
    if (known->second.is_broken) retry_at_ms_ = std::min(retry_at_ms_, now_ms);
    if (known->second.is_broken) keep_sheet(*sheet, now_ms);
    else if (known->second.journal >= k_journal_worth_hiding) write_whole(*sheet);
  }
}

void Keeper::wake_by(std::int64_t at_ms) {
  if (wakes_at_ms_ == 0 || at_ms < wakes_at_ms_) wakes_at_ms_ = at_ms;
}

// -- how it stands

Keeping Keeper::keeping() const {
  if (is_over_) return Keeping::off;
  if (!is_read_) return fault_ == StoreFault::none ? Keeping::waiting : Keeping::off;
  if (fault() != StoreFault::none) return Keeping::failed;
  if (sheets_.empty() && boats_.empty()) return Keeping::nothing;
  const bool any = std::any_of(under_way_.begin(), under_way_.end(), [](const auto& each) { return each.second.sheet != SheetKey{} || each.second.boat != BoatKey{}; });
  return any || any_claim([](const Claim& claim) { return claim.waits_since_ms != 0; }) ? Keeping::writing : Keeping::kept;
}

std::optional<std::size_t> Keeper::kept_state(SheetKey sheet) const {
  const auto known = sheets_.find(sheet);
  return known == sheets_.end() ? std::nullopt : known->second.kept_present;
}

}  // namespace fogsheet
