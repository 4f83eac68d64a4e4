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
  /// Null when there is none of that key. The pointer lives as long as the boat.
  KeptBoat* find(BoatKey key);
  const KeptBoat* find(BoatKey key) const;

  BoatKey add(Boat boat, std::int64_t now_ms);

  /// Takes up a boat that was kept, in place of one of that key.
  void adopt(KeptBoat kept);

  /// In the order they were entered, those taken out of the list too.
  const std::vector<std::unique_ptr<KeptBoat>>& all() const { return boats_; }

 private:
  std::vector<std::unique_ptr<KeptBoat>> boats_;  // ascending keys
};

}  // namespace fogsheet
