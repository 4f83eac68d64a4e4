#include "shell/boats.h"

#include <algorithm>
#include <utility>

namespace fogsheet {

const KeptBoat* Boats::find(BoatKey key) const {
  const auto found = std::find_if(boats_.begin(), boats_.end(), [&](const std::unique_ptr<KeptBoat>& boat) { return boat->key == key; });
  return found == boats_.end() ? nullptr : found->get();
}

KeptBoat* Boats::find(BoatKey key) { return const_cast<KeptBoat*>(std::as_const(*this).find(key)); }

BoatKey Boats::unused_key(std::uint64_t wanted) const {
  const std::uint64_t above = boats_.empty() ? 1 : boats_.back()->key.value + 1;
  return {key_in_lane(std::max(wanted, above), lane_)};
}

BoatKey Boats::add(Boat boat, std::int64_t now_ms) {
  const BoatKey key = unused_key(static_cast<std::uint64_t>(std::max<std::int64_t>(now_ms, 0)));
  boats_.push_back(std::make_unique<KeptBoat>(KeptBoat{.key = key, .history = BoatHistory(std::move(boat))}));
  return key;
}

BoatKey Boats::bring_in(KeptBoat boat) {
  if (boat.key == BoatKey{} || find(boat.key) || boat.key.value > k_most_key) boat.key = unused_key(0);
  const BoatKey key = boat.key;
  adopt(std::move(boat));
  return key;
}

void Boats::adopt(KeptBoat kept) {
  if (KeptBoat* here = find(kept.key)) {
    *here = std::move(kept);
    return;
  }
  boats_.push_back(std::make_unique<KeptBoat>(std::move(kept)));
  std::sort(boats_.begin(), boats_.end(), [](const auto& a, const auto& b) { return a->key < b->key; });
}

void Boats::part(BoatKey key) {
  const auto found = std::find_if(boats_.begin(), boats_.end(), [&](const auto& boat) { return boat->key == key; });
  if (found == boats_.end()) return;
  (*found)->key = unused_key(0);
  std::rotate(found, found + 1, boats_.end());  // it has the greatest now
}

}  // namespace fogsheet
