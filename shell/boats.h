// The boats there are, each a document with its past and a key of its own, beside the sheets.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "core/document/history.h"
#include "shell/kept_key.h"

namespace fogsheet {

struct KeptBoat {
  BoatKey key;
  BoatHistory history;
  bool removed = false;  // out of the list, to be put back

  const Boat& now() const { return history.now(); }
};

class Boats {
 public:
  /// @param lane  of the keys it gives
  explicit Boats(std::uint64_t lane = 0) : lane_(lane) {}

  /// Null when there is none of that key. The pointer lives as long as the boat.
  KeptBoat* find(BoatKey key);
  const KeptBoat* find(BoatKey key) const;

  BoatKey add(Boat boat, std::int64_t now_ms);

  /// Takes up a boat that was kept, in place of one of that key.
  void adopt(KeptBoat kept);

  /// Gives a boat a key that is new, so that what was done here stays beside what another page has made of her.
  void part(BoatKey key);

  /// Brings in a boat from elsewhere, beside those that are here: under her own key, or a new one where that is given already.
  BoatKey bring_in(KeptBoat boat);

  /// In the order they were entered, those taken out of the list too.
  const std::vector<std::unique_ptr<KeptBoat>>& all() const { return boats_; }

 private:
  BoatKey unused_key(std::uint64_t wanted) const;

  std::uint64_t lane_;
  std::vector<std::unique_ptr<KeptBoat>> boats_;  // ascending keys
};

}  // namespace fogsheet
