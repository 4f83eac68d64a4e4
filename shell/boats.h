// The boats there are, each a document with its past and a key of its own, beside the sheets.
#pragma once

#include <compare>
#include <cstdint>
#include <memory>
#include <vector>

#include "core/document/history.h"

namespace fogsheet {

/// Names a boat on this device for good: when she was entered, in ms since 1970, or a little later.
struct BoatKey {
  std::uint64_t value = 0;  // 0 names nothing
  auto operator<=>(const BoatKey&) const = default;
};

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
