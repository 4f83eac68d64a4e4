#include "core/base/date.h"

#include "core/base/number_text.h"

namespace fogsheet {

namespace {

constexpr std::int64_t k_days_an_era = 146'097;  // of 400 years, after which the calendar begins anew
constexpr std::int64_t k_days_to_1970 = 719'468;  // from 0000-03-01
constexpr int k_months = 12;
constexpr int k_days_before_month[k_months] = {0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334};
constexpr int k_days_in_month[k_months] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

bool is_leap_year(int year) { return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0; }

int days_in_month(int year, int month) { return k_days_in_month[month - 1] + (month == 2 && is_leap_year(year) ? 1 : 0); }

}  // namespace

bool is_valid(Date date) {
  return date.year >= 1 && date.year <= 9999 && date.month >= 1 && date.month <= k_months && date.day >= 1 &&
         date.day <= days_in_month(date.year, date.month);
}

Date date_of_unix_day(std::int64_t day) {
  // Counted from 0000-03-01 in eras of 400 years, so that leap days end their years.
  const std::int64_t since = day + k_days_to_1970;
  const std::int64_t era = (since >= 0 ? since : since - (k_days_an_era - 1)) / k_days_an_era;
  const std::int64_t of_era = since - era * k_days_an_era;
  const std::int64_t year_of_era = (of_era - of_era / 1'460 + of_era / 36'524 - of_era / 146'096) / 365;
  const std::int64_t of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const std::int64_t from_march = (5 * of_year + 2) / 153;
  const std::int64_t month = from_march < 10 ? from_march + 3 : from_march - 9;
  return {.year = static_cast<int>(year_of_era + era * 400 + (month <= 2)), .month = static_cast<int>(month), .day = static_cast<int>(of_year - (153 * from_march + 2) / 5 + 1)};
}

std::int64_t unix_day(Date date) {
  SHEET_CHECK(is_valid(date), "a date that is in no calendar");
  const std::int64_t year = date.year - (date.month <= 2);  // never negative: years begin at 1
  const std::int64_t year_of_era = year % 400;
  const std::int64_t from_march = date.month > 2 ? date.month - 3 : date.month + 9;
  const std::int64_t of_year = (153 * from_march + 2) / 5 + date.day - 1;
  return year / 400 * k_days_an_era + year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + of_year - k_days_to_1970;
}

int day_of_year(Date date) {
  SHEET_CHECK(is_valid(date), "a date that is in no calendar");
  return k_days_before_month[date.month - 1] + (date.month > 2 && is_leap_year(date.year) ? 1 : 0) + date.day;
}

double decimal_year(Date date) { return date.year + (day_of_year(date) - 1) / (is_leap_year(date.year) ? 366.0 : 365.0); }

Result<Date> parse_iso_date(std::string_view text) {
  const Problem unreadable{.fault = Fault::date_unreadable, .texts = {std::string(text.substr(0, 40))}};
  constexpr std::string_view k_form = "YYYY-MM-DD";
  if (text.size() != k_form.size()) return unreadable;
  int fields[3] = {0, 0, 0};
  int field = 0;
  for (std::size_t i = 0; i < k_form.size(); ++i) {
    if (k_form[i] == '-') {
      if (text[i] != '-') return unreadable;
      ++field;
    } else {
      if (text[i] < '0' || text[i] > '9') return unreadable;
      fields[field] = fields[field] * 10 + (text[i] - '0');
    }
  }
  const Date date{.year = fields[0], .month = fields[1], .day = fields[2]};
  if (!is_valid(date)) return unreadable;
  return date;
}

std::string iso_date(Date date) {
  SHEET_CHECK(is_valid(date), "a date that is in no calendar");
  return print_padded(date.year, 4) + "-" + print_padded(date.month, 2) + "-" + print_padded(date.day, 2);
}

}  // namespace fogsheet
