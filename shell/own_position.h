// Where the device says it is, from the moment it is asked until it is let go: no part of the sheet, never kept.
#pragma once

#include <cstdint>

#include "core/positions/position.h"

namespace fogsheet {

/// What comes of asking.
enum class OwnPositionState {
  off,      // nobody asked
  asked,    // and nothing has come yet
  here,     // the last one that came; newer ones follow
  refused,  // by the user, or by the browser in their name
  absent,   // no browser, device or page (over a connection that is not safe) that could
  unknown,  // the device can't tell
  late,     // nothing came in the time allowed
};

struct OwnPosition {
  OwnPositionState state = OwnPositionState::off;
  Position at;             // WGS 84
  double accuracy_m = 0;   // radius of a circle that it lies in 19 times in 20, as the device believes
                           // (W3C Geolocation: the accuracy is that of a 95 % confidence level)
  std::int64_t at_ms = 0;  // since 1970, when it was found

  bool is_here() const { return state == OwnPositionState::here; }
};

inline constexpr double k_coarse_accuracy_m = 200;       // found without satellites, most likely
inline constexpr std::int64_t k_own_position_old_ms = 60'000;

}  // namespace fogsheet
