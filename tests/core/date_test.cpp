#include "core/base/date.h"

#include <cmath>

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("a date is one of the Gregorian calendar") {
  CHECK(is_valid({.year = 2028, .month = 2, .day = 29}));  // leap: divisible by 4
  CHECK_FALSE(is_valid({.year = 2026, .month = 2, .day = 29}));
  CHECK_FALSE(is_valid({.year = 1900, .month = 2, .day = 29}));  // a century
  CHECK(is_valid({.year = 2000, .month = 2, .day = 29}));        // divisible by 400
  CHECK_FALSE(is_valid({.year = 2026, .month = 13, .day = 1}));
  CHECK_FALSE(is_valid({.year = 2026, .month = 0, .day = 1}));
  CHECK_FALSE(is_valid({.year = 2026, .month = 4, .day = 31}));
  CHECK_FALSE(is_valid({.year = 0, .month = 1, .day = 1}));
  CHECK_FALSE(is_valid({.year = 10000, .month = 1, .day = 1}));
}

TEST_CASE("decimal years agree with those of the WMM's own programs") {
  // Values: WMM2025 values at sea, computed by year + (day of year - 1) / (365 or 366); printed to 1e-6.
  struct Case {
    Date date;
    double year;
  };
  const Case cases[] = {{{2026, 11, 25}, 2026.898630}, {{2027, 6, 1}, 2027.413699},  {{2025, 1, 1}, 2025.0},
                        {{2029, 12, 31}, 2029.997260}, {{2028, 2, 29}, 2028.161202}, {{2029, 6, 30}, 2029.493151}};
  for (const Case& c : cases) {
    CAPTURE(c.year);
    CHECK(std::abs(decimal_year(c.date) - c.year) <= 1e-6);
  }
  CHECK(day_of_year({.year = 2028, .month = 12, .day = 31}) == 366);
  CHECK(day_of_year({.year = 2026, .month = 12, .day = 31}) == 365);
}

TEST_CASE("only YYYY-MM-DD is read") {
  CHECK(*parse_iso_date("2026-11-25") == Date{2026, 11, 25});
  CHECK(*parse_iso_date("0001-01-01") == Date{1, 1, 1});
  for (const char* text : {"", "2026-11-2", "2026-11-255", "26-11-25", "2026/11/25", "2026-13-01", "2026-02-30", "2026-1a-01", "+026-11-25",
                           "2026 11 25", "0000-01-01"}) {
    CAPTURE(text);
    const Result<Date> read = parse_iso_date(text);
    REQUIRE_FALSE(read.ok());
    CHECK(read.problem().fault == Fault::date_unreadable);
    CHECK(read.problem().texts.at(0) == text);
  }
}

TEST_CASE("a printed date reads back as itself, every day of nine years") {
  for (int year = 2024; year <= 2032; ++year)
    for (int month = 1; month <= 12; ++month)
      for (int day = 1; day <= 31; ++day) {
        const Date date{year, month, day};
        if (!is_valid(date)) continue;
        CHECK(*parse_iso_date(iso_date(date)) == date);
      }
}

TEST_CASE("days are counted from 1970-01-01") {
  // Values: GNU date, as in date -u -d 2026-11-25 +%s divided by 86400.
  struct Case {
    std::int64_t day;
    Date date;
  };
  const Case cases[] = {{0, {1970, 1, 1}}, {-1, {1969, 12, 31}}, {20782, {2026, 11, 25}}, {11016, {2000, 2, 29}}, {11017, {2000, 3, 1}}, {-25508, {1900, 3, 1}}, {-25509, {1900, 2, 28}}, {47540, {2100, 2, 28}}, {47541, {2100, 3, 1}}};
  for (const Case& c : cases) {
    CAPTURE(c.day);
    CHECK(date_of_unix_day(c.day) == c.date);
  }
  Date date{1969, 12, 31};
  for (std::int64_t day = 0; day < 60'000; ++day) {
    const Date next = date_of_unix_day(day);
    REQUIRE(is_valid(next));
    const bool follows = next > date && (next.day == date.day + 1 || (next.day == 1 && !is_valid({date.year, date.month, date.day + 1})));
    REQUIRE(follows);
    date = next;
  }
}
