// Names what is kept on this device for good: when it was laid down or entered, in ms since 1970, or some seconds later.
#pragma once

#include <compare>
#include <cstdint>

namespace fogsheet {

template <class Tag>
struct KeptKey {
  std::uint64_t value = 0;  // 0 names nothing
  auto operator<=>(const KeptKey&) const = default;
};

/// Each page that is open gives keys of a lane of its own, so that two at once never give the same.
inline constexpr std::uint64_t k_key_lanes = 4096;

/// The first key of the lane that is not below `least`.
inline std::uint64_t key_in_lane(std::uint64_t least, std::uint64_t lane) { return least + (lane + k_key_lanes - least % k_key_lanes) % k_key_lanes; }

/// Keys from elsewhere are believed up to here: the store's own numbers are exact up to twice that.
inline constexpr std::uint64_t k_most_key = std::uint64_t{1} << 52;

using SheetKey = KeptKey<struct SheetTag>;
using BoatKey = KeptKey<struct BoatTag>;

}  // namespace fogsheet
