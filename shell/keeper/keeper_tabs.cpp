// How several pages share a store: one page writes a sheet or a boat, the others take up what it has written. A page that
// has something to write asks for it; the one that writes finishes, lets go, and takes up in turn.
#include <algorithm>
#include <utility>

#include "shell/keeper/keeper.h"

namespace fogsheet {
namespace {

constexpr std::int64_t k_ask_again_ms = 1'000;  // a page that writes is asked again that often
constexpr std::int64_t k_patience_ms = 2'000;   // then it is said that it doesn't let go

}  // namespace

// -- whose it is

bool Keeper::is_ours(StoreDocument document) const {
  const auto claim = claims_.find(document);
  return claim != claims_.end() && claim->second.hold == Hold::ours;
}

void Keeper::own(StoreDocument document) {
  if (is_ours(document)) return;
  claims_[document] = {.hold = Hold::ours, .is_to_come = true};
  asks_.push_back({StoreAsk::Kind::claim, document});
}

bool Keeper::may_write(StoreDocument document, bool has_news, std::int64_t now_ms) {
  const auto [at, is_first] = claims_.try_emplace(document);
  Claim& claim = at->second;
  if (claim.hold == Hold::ours) return true;
  const bool is_due = is_first || (claim.hold == Hold::given && now_ms >= claim.ask_at_ms);
  if (has_news && claim.waits_since_ms == 0) claim = {.waits_since_ms = now_ms, .ask_at_ms = now_ms};
  if (has_news && now_ms >= claim.ask_at_ms) {
    asks_.push_back({StoreAsk::Kind::claim_now, document});
    claim.ask_at_ms = now_ms + k_ask_again_ms;
    claim.is_late = now_ms - claim.waits_since_ms >= k_patience_ms;
  } else if (is_due) {
    claim.hold = Hold::asked;
    asks_.push_back({StoreAsk::Kind::claim, document});
  }
  if (has_news || claim.hold == Hold::given) wake_by(claim.ask_at_ms);
  return false;
}

void Keeper::has_no_news(StoreDocument document) {
  const auto claim = claims_.find(document);
  if (claim != claims_.end()) claim->second.waits_since_ms = 0, claim->second.is_late = false;
}

/// What another page asked for goes once nothing of it is on its way any more.
void Keeper::let_go_of_wanted(std::int64_t now_ms) {
  for (auto& [document, claim] : claims_) {
    if (!claim.is_wanted || claim.is_to_come || is_under_way(document) || is_broken(document)) continue;
    claim = {.hold = Hold::given, .ask_at_ms = now_ms + k_ask_again_ms};
    asks_.push_back({StoreAsk::Kind::let_go, document});
    wake_by(claim.ask_at_ms);
  }
}

bool Keeper::follows(SheetKey sheet) const {
  const auto claim = claims_.find(document_of(sheet));
  return claim != claims_.end() && (claim->second.hold == Hold::elsewhere || claim->second.hold == Hold::given);
}

bool Keeper::any_claim(bool (*is)(const Claim&)) const {
  return std::any_of(claims_.begin(), claims_.end(), [&](const auto& each) { return is(each.second); });
}

// -- what the page tells

void Keeper::told(StoreNews what, StoreDocument document, const std::vector<StoreRecord>& records, Sheets& sheets, Boats& boats, std::int64_t now_ms) {
  if (!may_write()) return;
  const bool was_ours = is_ours(document);
  desk_may_be_others_ = desk_may_be_others_ || what == StoreNews::elsewhere || what == StoreNews::wanted || what == StoreNews::heard;
  switch (what) {
    case StoreNews::elsewhere:
      if (const auto claim = claims_.find(document); claim != claims_.end() && !was_ours) claim->second.hold = Hold::elsewhere;
      return;
    case StoreNews::wanted:
      if (was_ours) claims_[document].is_wanted = true;
      return let_go_of_wanted(now_ms);
    case StoreNews::granted:
      if (was_ours) {
        claims_[document].is_to_come = false;
        return let_go_of_wanted(now_ms);
      }
      claims_[document] = {.hold = Hold::ours};
      [[fallthrough]];
    case StoreNews::read:
      // While something is on its way the store may be behind; and what was refused comes to be read again.
      if (is_under_way(document)) return;
      if (document.part == StorePart::sheets) take_up(SheetKey{document.key}, records, sheets, now_ms);
      else take_up(BoatKey{document.key}, records, boats);
      return;
    case StoreNews::heard:
      if (document.part == StorePart::desk && document.key == 0) return;
      if (!is_under_way(document) && !hear(SheetKey{document.key}, records, sheets)) asks_.push_back({StoreAsk::Kind::read, document});
      return;
  }
}

/// Whether a step that another page has written could be done here too, or was known.
bool Keeper::hear(SheetKey key, const std::vector<StoreRecord>& records, Sheets& sheets) {
  const auto found = sheets_.find(key);
  SheetInDrawer* sheet = sheets.find(key);
  if (records.empty() || found == sheets_.end() || !sheet) return false;
  Written& known = found->second;
  if (changed_here(sheets, key)) return true;  // it is read when this page comes to write it
  if (records[0].sequence <= known.sequence) return true;
  Result<JournalRecord> step = read_journal_record(records[0].bytes);
  if (!step || records[0].sequence != known.sequence + 1 || step->follows != known.checksum || !sheet->history.take_up(step->change)) return false;
  sheet->changed_ms = step->state.changed_ms;
  sheet->removed_ms = step->state.removed_ms;
  sheet->under = step->state.under;
  known.state = step->state;
  known.checksum = checksum_of(records[0].bytes);
  ++known.sequence;
  ++known.journal;
  known.present = sheet->history.state();
  known.commits = sheet->history.commits();
  known.kept_present = known.present;
  keep_one_in_hand(sheets);
  return true;
}

void Keeper::take_up(SheetKey key, const std::vector<StoreRecord>& records, Sheets& sheets, std::int64_t now_ms) {
  const auto known = sheets_.find(key);
  const auto whole = std::find_if(records.begin(), records.end(), [](const StoreRecord& record) { return record.part == StorePart::sheets; });
  if (whole == records.end()) {  // thrown away by another page: what was changed here, or is in hand, is laid down anew
    if (known == sheets_.end()) return;
    const bool stays = changed_here(sheets, key) || sheets.in_hand().key == key;
    sheets_.erase(known);
    if (stays) sheets.part(key);
    else if (sheets.find(key)) sheets.forget(key);
    return;
  }
  if (!is_news_of(key, records) || takes_up_what_is_known(key, records)) return;
  std::vector<const StoreRecord*> journal;
  for (const StoreRecord& record : records)
    if (record.part == StorePart::journal) journal.push_back(&record);
  if (changed_here(sheets, key)) found({Finding::Kind::parted, key});
  if (!read_sheet(key, *whole, journal, sheets, now_ms)) {  // then what is here has nothing to do with it any more
    sheets.part(key);
    sheets_.erase(key);
  }
  keep_one_in_hand(sheets);
}

bool Keeper::is_news_of(SheetKey key, const std::vector<StoreRecord>& records) const {
  const auto known = sheets_.find(key);
  return known == sheets_.end() || known->second.is_broken || checksum_of(records.back().bytes) != known->second.checksum;
}

/// The other page has put the journal, as far as it is known here, into one whole sheet: nothing but the record is new.
bool Keeper::takes_up_what_is_known(SheetKey key, const std::vector<StoreRecord>& records) {
  const auto known = sheets_.find(key);
  if (known == sheets_.end() || known->second.is_broken || records.size() != 1) return false;
  const Result<SheetRecord> whole = read_sheet_record(records[0].bytes);
  if (!whole || whole->key != key || !whole->newer_text.empty() || whole->through != known->second.sequence) return false;
  known->second.checksum = checksum_of(records[0].bytes);
  known->second.journal = 0;
  return true;
}

/// Another page has written where this one was about to.
void Keeper::part(const UnderWay& lost) {
  fault_ = StoreFault::elsewhere;
  const auto mark = [](auto& all, auto key) {
    if (const auto known = all.find(key); known != all.end()) known->second.is_broken = known->second.is_parted = true;
  };
  mark(sheets_, lost.sheet);
  mark(boats_, lost.boat);
  read_parted(lost);
}

/// Once nothing of it is on its way any more.
void Keeper::read_parted(const UnderWay& answered) {
  const auto ask = [&](const auto& all, auto key) {
    const auto known = all.find(key);
    if (known != all.end() && known->second.is_parted && !is_under_way(document_of(key))) asks_.push_back({StoreAsk::Kind::read, document_of(key)});
  };
  ask(sheets_, answered.sheet);
  ask(boats_, answered.boat);
}

/// Another page may have taken the sheet out of the drawer that is in hand here.
void Keeper::keep_one_in_hand(Sheets& sheets) {
  const SheetKey key = sheets.in_hand().key;
  if (sheets.in_hand().removed_ms == 0) return;
  if (const std::vector<const SheetInDrawer*> shown = sheets.shown(); shown.empty()) sheets.put_back(key);
  else sheets.take(shown.front()->key);
}

}  // namespace fogsheet
