// Directions and corrections typed by people, and printed: 047°T, 035.5°M, 12°E.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/directions/directions.h"
#include "core/directions/rounding.h"

namespace fogsheet {

struct TypedDirection {
  double deg = 0;                      // [0, 360)
  std::optional<Reference> reference;  // where T, M or C (or the word) was typed

  bool operator==(const TypedDirection&) const = default;
};

/// Degrees, or degrees and minutes, with or without symbols, decimal comma or point, T, M or C before or after.
/// Faults: entry_*, direction_out_of_range (360 is one; 000 is suggested), minutes_out_of_range, seconds_out_of_range.
Result<TypedDirection> parse_direction(std::string_view text);

/// A typed direction turned by so many degrees, with its letter, in whole degrees or tenths as it was typed: by 180 its
/// reciprocal, "096.5T" to "276.5T". Faults: those of parse_direction.
Result<std::string> turned_direction(std::string_view text, double by_deg);

/// Three figures and the letter: "047°T", by tenths "047.0°T"; without reference "047°".
std::string print_direction(double deg, std::optional<Reference> reference, Rounding rounding);

/// A variation or deviation, degrees, east positive: with E or W before or after, or a sign; degrees, or degrees and
/// minutes. Nought needs neither. @param what "variation" or "deviation", for problems.
/// Faults: entry_* (entry_part_missing "east or west"), number_out_of_range outside [-180, 180], minutes_out_of_range,
/// seconds_out_of_range.
Result<double> parse_correction_deg(std::string_view what, std::string_view text);

/// "12°E", by tenths "3.5°W"; "0°" for what rounds to nought.
std::string print_correction(double deg, Rounding rounding);

}  // namespace fogsheet
