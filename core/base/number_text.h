// Decimal numbers to and from text without any locale, alike in every build: the library's own floating conversions are
// either missing (from_chars) or read the machine's locale (strtod, printf).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace fogsheet {

/// An unsigned decimal found at the start of a text.
struct ScannedDecimal {
  double value = 0;
  int whole_digits = 0;    // digits before the mark
  int decimals = 0;        // digits after it
  bool has_mark = false;   // a decimal mark was there, even with no digit after it
  std::size_t length = 0;  // bytes used
};

/// The longest unsigned decimal at the start of `text`: digits, and if there is one of `marks` ("." or ".,"), that and the
/// digits after it. Empty when there is no digit at all. Correct to one unit in the last place of a double; digits past
/// the 19th are only counted.
std::optional<ScannedDecimal> scan_decimal(std::string_view text, std::string_view marks = ".");

/// The whole text as a number: sign, digits, point, exponent (1e-6). Empty for anything else, infinities among them.
std::optional<double> parse_number(std::string_view text);

/// With exactly that many decimals (0 to 9), halves away from zero, "-" only before something other than nought.
/// @param value finite, below 9e18 / 10^decimals in size.
std::string print_fixed(double value, int decimals);

/// A whole number with leading zeros up to that width: 7, 3 -> "007". @param value not negative.
std::string print_padded(long long value, int width);

}  // namespace fogsheet
