// How the keeper keeps boats: whole, with each step, in a write of its own.
#include <utility>

#include "shell/keeper/keeper.h"

namespace fogsheet {
namespace {

constexpr std::uint64_t k_boat_sequence = 1;  // in the store's part for the desk, which has 0

}  // namespace

void Keeper::read_boats(const std::vector<StoreRecord>& records, Boats& boats) {
  for (const StoreRecord& record : records) {
    if (record.part != StorePart::desk || record.sequence != k_boat_sequence) continue;
    Result<BoatRecord> read = read_boat_record(record.bytes);
    const BoatKey key{record.sheet};
    if (!read || read->key != key) {
      const bool is_newer = !read && read.problem().fault == Fault::text_newer;
      findings_.push_back({is_newer ? Finding::Kind::boat_newer : Finding::Kind::boat_unreadable, {record.sheet}});
      continue;
    }
    BoatRecord kept = std::move(read).value();
    boats_[key] = {.present = kept.history.state, .commits = kept.history.commits, .removed = kept.removed};
    boats.adopt({.key = key, .history = BoatHistory(std::move(kept.history)), .removed = kept.removed});
  }
}

void Keeper::look(Boats& boats, std::int64_t now_ms) {
  if (!may_write()) return;
  for (const std::unique_ptr<KeptBoat>& boat : boats.all()) {
    BoatHistory& history = boat->history;
    const auto known = boats_.find(boat->key);
    const bool is_kept = known != boats_.end() && known->second.present == history.state() && known->second.commits == history.commits() && known->second.removed == boat->removed;
    const bool is_broken = known != boats_.end() && known->second.is_broken;
    if (is_kept && !is_broken) continue;
    if (is_broken && now_ms < retry_at_ms_) {
      wake_by(retry_at_ms_);
      continue;
    }
    boats_[boat->key] = {.present = history.state(), .commits = history.commits(), .removed = boat->removed};
    StoreBytes bytes = fogsheet::written(BoatRecord{.key = boat->key, .removed = boat->removed, .history = history.kept()});
    new_write({.boat = boat->key}).acts.push_back({.part = StorePart::desk, .sheet = boat->key.value, .sequence = k_boat_sequence, .bytes = std::move(bytes)});
  }
}

}  // namespace fogsheet
