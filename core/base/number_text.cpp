#include "core/base/number_text.h"

#include <cmath>
#include <cstdint>

#include "core/base/check.h"

namespace fogsheet {

namespace {

constexpr int k_most_digits = 19;  // what a 64-bit whole number holds
constexpr int k_most_exponent_digits = 4;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Powers of ten up to 22 are exact doubles, so that one multiplication or division is one rounding.
double times_power_of_ten(double value, int exponent) {
  constexpr int k_step = 22;
  constexpr double k_step_power = 1e22;
  while (exponent >= k_step && std::isfinite(value)) {
    value *= k_step_power;
    exponent -= k_step;
  }
  while (exponent <= -k_step && value != 0) {
    value /= k_step_power;
    exponent += k_step;
  }
  double power = 1;
  for (int i = 0; i < std::abs(exponent) && i < k_step; ++i) power *= 10;
  return exponent < 0 ? value / power : value * power;
}

struct Mantissa {
  std::uint64_t digits = 0;
  int used = 0;      // significant digits taken
  int exponent = 0;  // of the last digit taken

  void add(char c, bool after_mark) {
    if (used < k_most_digits) {
      digits = digits * 10 + static_cast<std::uint64_t>(c - '0');
      if (digits != 0) ++used;
      if (after_mark) --exponent;
    } else if (!after_mark) {
      ++exponent;
    }
  }

  double value() const { return times_power_of_ten(static_cast<double>(digits), exponent); }
};

}  // namespace

std::optional<ScannedDecimal> scan_decimal(std::string_view text, std::string_view marks) {
  ScannedDecimal scanned;
  Mantissa mantissa;
  std::size_t i = 0;
  for (; i < text.size() && is_digit(text[i]); ++i, ++scanned.whole_digits) mantissa.add(text[i], false);
  if (i < text.size() && marks.find(text[i]) != std::string_view::npos) {
    const std::size_t after = i + 1;
    const bool digit_follows = after < text.size() && is_digit(text[after]);
    if (scanned.whole_digits > 0 || digit_follows) {
      scanned.has_mark = true;
      for (i = after; i < text.size() && is_digit(text[i]); ++i, ++scanned.decimals) mantissa.add(text[i], true);
    }
  }
  if (scanned.whole_digits + scanned.decimals == 0) return std::nullopt;
  scanned.value = mantissa.value();
  scanned.length = i;
  return scanned;
}

std::optional<double> parse_number(std::string_view text) {
  double sign = 1;
  if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
    if (text.front() == '-') sign = -1;
    text.remove_prefix(1);
  }
  const std::optional<ScannedDecimal> scanned = scan_decimal(text);
  if (!scanned) return std::nullopt;
  text.remove_prefix(scanned->length);
  double value = scanned->value;
  if (!text.empty()) {
    if (text.front() != 'e' && text.front() != 'E') return std::nullopt;
    text.remove_prefix(1);
    int exponent_sign = 1;
    if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
      if (text.front() == '-') exponent_sign = -1;
      text.remove_prefix(1);
    }
    if (text.empty() || text.size() > k_most_exponent_digits) return std::nullopt;
    int exponent = 0;
    for (const char c : text) {
      if (!is_digit(c)) return std::nullopt;
      exponent = exponent * 10 + (c - '0');
    }
    value = times_power_of_ten(value, exponent_sign * exponent);
  }
  if (!std::isfinite(value)) return std::nullopt;
  return sign * value;
}

std::string print_fixed(double value, int decimals) {
  SHEET_CHECK(std::isfinite(value), "only finite numbers are printed");
  SHEET_CHECK(decimals >= 0 && decimals <= 9, "decimals are 0 to 9");
  const double scaled = times_power_of_ten(std::abs(value), decimals);
  SHEET_CHECK(scaled < 9e18, "a number too large to print with fixed decimals");
  std::string digits = std::to_string(std::llround(scaled));
  const std::size_t after = static_cast<std::size_t>(decimals);
  if (digits.size() <= after) digits.insert(0, after + 1 - digits.size(), '0');
  const bool nought = digits.find_first_not_of('0') == std::string::npos;
  if (after > 0) digits.insert(digits.size() - after, ".");
  return value < 0 && !nought ? "-" + digits : digits;
}

std::string print_padded(long long value, int width) {
  SHEET_CHECK(value >= 0, "only counts are padded");
  std::string digits = std::to_string(value);
  const std::size_t least = static_cast<std::size_t>(width);
  if (digits.size() < least) digits.insert(0, least - digits.size(), '0');
  return digits;
}

}  // namespace fogsheet
