// How the keeper keeps boats: whole, with each step, in a write of its own.
#include <utility>

#include "shell/keeper/keeper.h"

namespace fogsheet {
void Keeper::read_boats(const std::vector<StoreRecord>& records, Boats& boats) {
  for (const StoreRecord& record : records)
    if (record.part == StorePart::desk && record.sequence == k_boat_sequence) read_boat(record, boats);
}

bool Keeper::read_boat(const StoreRecord& record, Boats& boats) {
  Result<BoatRecord> read = read_boat_record(record.bytes);
  const BoatKey key{record.sheet};
  if (!read || read->key != key) {
    const bool is_newer = !read && read.problem().fault == Fault::text_newer;
    leave_unused(record, is_newer);
    found({is_newer ? Finding::Kind::boat_newer : Finding::Kind::boat_unreadable, {record.sheet}});
    return false;
  }
  BoatRecord kept = std::move(read).value();
  boats_[key] = {.present = kept.history.state, .commits = kept.history.commits, .removed = kept.removed, .checksum = checksum_of(record.bytes)};
  boats.adopt({.key = key, .history = BoatHistory(std::move(kept.history)), .removed = kept.removed});
  return true;
}

/// What another page has made of a boat.
void Keeper::take_up(BoatKey key, const std::vector<StoreRecord>& records, Boats& boats) {
  const auto known = boats_.find(key);
  if (records.empty() || (known != boats_.end() && !known->second.is_broken && known->second.checksum == checksum_of(records[0].bytes))) return;
  const KeptBoat* here = boats.find(key);
  if (here && (known == boats_.end() || known->second.is_broken || !is_kept(*here, known->second))) boats.part(key);
  if (!read_boat(records[0], boats)) {
    boats.part(key);
    boats_.erase(key);
  }
}

bool Keeper::is_kept(const KeptBoat& boat, const WrittenBoat& known) {
  return known.present == boat.history.state() && known.commits == boat.history.commits() && known.removed == boat.removed;
}

void Keeper::look(Boats& boats, std::int64_t now_ms) {
  if (!may_write()) return;
  for (const std::unique_ptr<KeptBoat>& boat : boats.all()) {
    const StoreDocument document = document_of(boat->key);
    const auto known = boats_.find(boat->key);
    const bool is_new = known == boats_.end();
    const bool is_broken = !is_new && known->second.is_broken;
    if (!is_new && !is_broken && is_kept(*boat, known->second)) {
      has_no_news(document);
      continue;
    }
    if (!is_new && known->second.is_parted) continue;
    if (is_new) own(document);
    else if (!may_write(document, true, now_ms)) continue;
    if (is_broken && now_ms < retry_at_ms_) {
      wake_by(retry_at_ms_);
      continue;
    }
    StoreBytes bytes = fogsheet::written(record_of(*boat));
    boats_[boat->key] = {.present = boat->history.state(), .commits = boat->history.commits(), .removed = boat->removed, .checksum = checksum_of(bytes)};
    new_write({.boat = boat->key}).acts.push_back({.kind = is_new ? StoreAct::Kind::add : StoreAct::Kind::put, .part = StorePart::desk, .sheet = boat->key.value, .sequence = k_boat_sequence, .bytes = std::move(bytes)});
  }
}

}  // namespace fogsheet
