// How much room the browser gives the page for what it keeps, and whether it promises to keep it.
#pragma once

#include <cstdint>

namespace fogsheet {

/// unknown: not looked at yet, or this browser has no word for it.
enum class Promise : std::uint8_t { unknown, none, given };

struct Room {
  double used = 0;     // bytes, of all that the page has on the device
  double allowed = 0;  // 0: the browser doesn't tell
  Promise promise = Promise::unknown;
  bool asked = false;          // to promise, ever, without the user's asking for it
  bool answer_wanted = false;  // the user has asked for it just now

  bool is_told() const { return allowed > 0; }
  /// The rest is soon used up: a fifth of it, or what a few thousand steps take.
  bool is_short() const { return is_told() && allowed - used < (allowed / 5 < 5e6 ? 5e6 : allowed / 5); }
  /// What private windows and machines with next to no disk give: no more than a few hundred sheets need.
  bool is_small() const { return is_told() && allowed < 60e6; }

  bool operator==(const Room&) const = default;
};

}  // namespace fogsheet
