// A day of the Gregorian calendar, without time or zone, and its place in the year.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace fogsheet {

/// @param year 1 to 9999, month 1 to 12, day 1 to the month's length; check with is_valid.
struct Date {
  int year = 2026;
  int month = 1;
  int day = 1;

  auto operator<=>(const Date&) const = default;
};

bool is_valid(Date date);

/// The day that begins so many days of 86 400 s after 1970-01-01; of any year from 1 to 9999.
/// Source: Hinnant, chrono-compatible low-level date algorithms (civil_from_days).
Date date_of_unix_day(std::int64_t day);

/// And back: whole days from 1970-01-01 to that one, negative before it. Source: the same (days_from_civil).
std::int64_t unix_day(Date date);

/// 1 for 1 January, 365 or 366 for 31 December.
int day_of_year(Date date);

/// year + (day of year - 1) / (365 or 366). Source: CIRES geomaglib, as in the WMM's own programs.
double decimal_year(Date date);

/// YYYY-MM-DD and nothing else (ISO 8601 calendar date). Faults: date_unreadable.
Result<Date> parse_iso_date(std::string_view text);
std::string iso_date(Date date);

}  // namespace fogsheet
