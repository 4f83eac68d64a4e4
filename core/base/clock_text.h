// Times of day typed by people, and printed as four figures. Zone and day are the context's.
#pragma once

#include <compare>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace fogsheet {

/// A time of day, minutes after midnight, [0, 1440).
struct ClockTime {
  int minutes = 0;
  auto operator<=>(const ClockTime&) const = default;
};

/// 0640, 6:40, 06:40, 06.40, 06h40. Faults: entry_*, hours_out_of_range, minutes_out_of_range.
Result<ClockTime> parse_clock_time(std::string_view text);

/// Four figures: "0640".
std::string print_clock_time(ClockTime time);

}  // namespace fogsheet
