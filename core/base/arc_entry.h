// An angle typed in degrees, degrees and minutes, or degrees, minutes and seconds, with its letter or sign, as a run of
// tokens: what latitudes, longitudes, variations and directions have in common.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/base/entry_tokens.h"

namespace fogsheet {

struct ArcEntry {
  double size_deg = 0;      // without sign
  int parts = 0;            // 1 degrees, 2 with minutes, 3 with seconds
  int whole_digits = 0;     // of the first number as typed
  std::optional<int> sign;  // +1 or -1 where a sign was typed
  std::string word;         // the letter or word before or after, small; empty where there is none
  std::size_t begin = 0;    // bytes
  std::size_t end = 0;
  std::size_t word_begin = 0;
  std::size_t word_end = 0;
};

/// How many digits of a single number are degrees when it runs on into minutes and seconds without any sign: 5012.34 is
/// 50 deg 12.34 min for two. 0: never.
enum class RunOn { never = 0, latitude = 2, longitude = 3 };

/// Reads all the tokens as one angle. Only the last part may have decimals; signs of degrees, minutes and seconds may be
/// missing but not out of order. @param what names the angle in problems. Range of the degrees is the caller's.
/// Faults: entry_unreadable, entry_part_missing ("number", "degrees"), entry_part_twice ("hemisphere", "sign"),
/// minutes_out_of_range, seconds_out_of_range.
Result<ArcEntry> read_arc(std::string_view what, std::string_view text, std::span<const EntryToken> tokens, RunOn run_on = RunOn::never);

}  // namespace fogsheet
