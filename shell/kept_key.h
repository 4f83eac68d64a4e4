// Names what is kept on this device for good: when it was laid down or entered, in ms since 1970, or a little later.
#pragma once

#include <compare>
#include <cstdint>

namespace fogsheet {

template <class Tag>
struct KeptKey {
  std::uint64_t value = 0;  // 0 names nothing
  auto operator<=>(const KeptKey&) const = default;
};

using SheetKey = KeptKey<struct SheetTag>;
using BoatKey = KeptKey<struct BoatTag>;

}  // namespace fogsheet
