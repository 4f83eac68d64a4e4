// Lengths, speeds and plain numbers typed by people, and printed so that they read back the same. A comma or
// a point is the decimal mark; units may be left out where the field has one of its own.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"

namespace fogsheet {

enum class LengthUnit { nautical_miles, cables, metres, feet };

struct Length {
  double value = 0;
  LengthUnit unit = LengthUnit::nautical_miles;

  double metres() const;
  double nm() const;
  bool operator==(const Length&) const = default;
};

/// No length on this earth is longer: its girth.
inline constexpr double k_longest_length_nm = 21'600;

/// @param bare the unit of a number without one.
/// Faults: entry_*, unit_unknown ("M" and "mi" mean several units), number_out_of_range (numbers in the unit typed).
Result<Length> parse_length(std::string_view text, LengthUnit bare = LengthUnit::nautical_miles);

/// "3.7 nm", "2.5 cables", "120 m", "30 ft". @param decimals 0 to 9.
std::string print_length(Length length, int decimals);

enum class SpeedUnit { knots, metres_per_second };

struct Speed {
  double value = 0;
  SpeedUnit unit = SpeedUnit::knots;

  double knots() const;
  bool operator==(const Speed&) const = default;
};

inline constexpr double k_fastest_speed_kn = 100;

/// A number without unit is in knots. Faults: entry_*, unit_unknown, number_out_of_range.
Result<Speed> parse_speed(std::string_view text);
std::string print_speed(Speed speed, int decimals);

/// A plain number within bounds. @param what names it in problems. Faults: entry_*, number_out_of_range.
Result<double> parse_plain_number(std::string_view what, std::string_view text, double least, double most);

}  // namespace fogsheet
