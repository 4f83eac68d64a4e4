#include "tests/values/compare.h"

#include <cmath>
#include <optional>

#include "core/base/date.h"
#include "core/base/number_text.h"
#include "core/directions/directions.h"

namespace fogsheet::values {

namespace {

constexpr double k_minutes_a_day = 1440;

bool is_digits(const std::string& text, std::size_t count) {
  return text.size() == count && text.find_first_not_of("0123456789") == std::string::npos;
}

// HHMM: the names that hold a time of day rather than a number of minutes.
bool is_time_of_day(const std::string& name, const std::string& value) {
  return is_digits(value, 4) && (name.rfind("time", 0) == 0 || name == "eta" || name == "start");
}

double minutes_of_day(const std::string& hhmm) { return 60 * *parse_number(hhmm.substr(0, 2)) + *parse_number(hhmm.substr(2, 2)); }

// Seconds from the year 1 of an ISO instant, its date and "THH:MM[:SS[.s]]" with or without "Z".
std::optional<double> seconds_of_instant(std::string text) {
  if (!text.empty() && text.back() == 'Z') text.pop_back();
  const std::size_t t = text.find('T');
  const Result<Date> date = parse_iso_date(text.substr(0, t));
  if (!date.ok()) return std::nullopt;
  const int before = date->year - 1;
  double seconds = 86'400.0 * (365 * before + before / 4 - before / 100 + before / 400 + day_of_year(*date));
  if (t == std::string::npos) return seconds;
  double unit = 3600;
  for (std::size_t at = t + 1; at <= text.size() && unit >= 1; unit /= 60) {
    const std::size_t next = std::min(text.find(':', at), text.size());
    const std::optional<double> part = parse_number(text.substr(at, next - at));
    if (!part) return std::nullopt;
    seconds += unit * *part;
    at = next + 1;
  }
  return seconds;
}

}  // namespace

bool within(const Wanted& wanted, const std::string& got) {
  if (wanted.value == "none" || got == "none" || wanted.unit == "text" || wanted.unit == "count") return got == wanted.value;
  if (wanted.unit == "min" && is_time_of_day(wanted.name, wanted.value)) {
    if (!is_digits(got, 4)) return false;
    const double apart = std::fmod(std::abs(minutes_of_day(got) - minutes_of_day(wanted.value)), k_minutes_a_day);
    return std::min(apart, k_minutes_a_day - apart) <= wanted.tolerance;
  }
  if (wanted.unit == "s" && wanted.value.find('T') != std::string::npos) {
    const std::optional<double> a = seconds_of_instant(got), b = seconds_of_instant(wanted.value);
    return a && b && std::abs(*a - *b) <= wanted.tolerance;
  }
  const std::optional<double> a = parse_number(got), b = parse_number(wanted.value);
  if (!a || !b) return false;
  const double difference = wanted.unit == "deg" ? reduce_difference_deg(*a - *b) : *a - *b;
  return std::abs(difference) <= wanted.tolerance;
}

}  // namespace fogsheet::values
