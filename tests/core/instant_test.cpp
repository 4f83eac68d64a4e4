#include "core/base/instant.h"

#include <chrono>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

Instant instant(const char* iso) { return parse_iso_instant(iso).value(); }

}  // namespace

TEST_CASE("days are counted as the standard library counts them") {
  Random random(1970);
  for (int i = 0; i < 5000; ++i) {
    const std::int64_t day = random.whole(-719'162, 2'932'896);  // 0001-01-01 to 9999-12-31
    const std::chrono::year_month_day theirs{std::chrono::sys_days{std::chrono::days{day}}};
    const Date ours = date_of_unix_day(day);
    CAPTURE(day);
    CHECK(ours.year == static_cast<int>(theirs.year()));
    CHECK(ours.month == static_cast<int>(static_cast<unsigned>(theirs.month())));
    CHECK(ours.day == static_cast<int>(static_cast<unsigned>(theirs.day())));
    CHECK(unix_day(ours) == day);
  }
  CHECK(date_of_unix_day(-719'162) == Date{1, 1, 1});
  CHECK(unix_day({9999, 12, 31}) == 2'932'896);
}

TEST_CASE("instants are POSIX time") {
  // POSIX.1-2017, 4.16 "Seconds Since the Epoch": its formula gives these; 2^31 - 1 is the last of 32 bits.
  CHECK(instant("1970-01-01T00:00:00Z").seconds == 0);
  CHECK(instant("2001-09-09T01:46:40Z").seconds == 1'000'000'000);
  CHECK(instant("2038-01-19T03:14:07Z").seconds == 2'147'483'647);
  CHECK(instant("1969-12-31T23:59:59Z").seconds == -1);
  CHECK(iso_instant({-1}) == "1969-12-31T23:59:59Z");
  Random random(8601);
  for (int i = 0; i < 1000; ++i) {
    const Instant at{random.whole(-62'135'596'800, 253'402'300'799)};
    CHECK(instant(iso_instant(at).c_str()) == at);
  }
  for (const char* text :
       {"", "2026-06-21", "2026-06-21T06:40:00", "2026-06-21 06:40:00Z", "2026-06-21T24:00:00Z", "2026-06-21T06:60:00Z", "2026-06-21T06:40:60Z",
        "2026-02-30T06:40:00Z", "2026-06-21T06:40:00z", "2026-06-21T06-40:00Z", "2026-06-21T0a:40:00Z", "2026-06-21T06:40:00ZZ"}) {
    CAPTURE(text);
    CHECK(parse_iso_instant(text).problem().fault == Fault::instant_unreadable);
  }
  CHECK(nearest_instant(1.5).seconds == 2);
  CHECK(nearest_instant(-1.5).seconds == -1);
  CHECK(nearest_instant(1.4999).seconds == 1);
}

TEST_CASE("a clock's date and time are of its zone, across midnight, the year's end and the date line") {
  const Zone west{.minutes_east = -210, .name = ""}, line{.minutes_east = 840, .name = ""}, before_line{.minutes_east = -660, .name = ""};
  CHECK(instant_of({2026, 12, 31}, {23 * 60}, west) == instant("2027-01-01T02:30:00Z"));
  CHECK(local_time(instant("2027-01-01T02:30:00Z"), west) == LocalTime{{2026, 12, 31}, {23 * 60}, 0});
  // One moment, two dates either side of the line: 25 hours apart.
  CHECK(instant_of({2026, 6, 22}, {60}, line) == instant_of({2026, 6, 21}, {0}, before_line));
  CHECK(local_time(instant("2028-02-28T12:00:07Z"), line) == LocalTime{{2028, 2, 29}, {120}, 7});
  CHECK(local_time(instant("1969-12-31T23:59:59Z"), {}) == LocalTime{{1969, 12, 31}, {1439}, 59});
  Random random(24);
  for (int i = 0; i < 1000; ++i) {
    const Zone zone{.minutes_east = static_cast<int>(random.whole(k_westmost_zone_min, k_eastmost_zone_min)), .name = ""};
    const Instant at{random.whole(-3'000'000'000, 5'000'000'000)};
    const LocalTime local = local_time(at, zone);
    CHECK(instant_of(local.date, local.time, zone).seconds + local.seconds == at.seconds);
  }
}

TEST_CASE("times are shown to the whole minute, with the day they fall on") {
  const Date day{2026, 12, 31};
  CHECK(clock_figures(instant("2026-12-31T06:40:29Z"), {}, day) == ClockFigures{"0640", 0});
  CHECK(clock_figures(instant("2026-12-31T06:40:30Z"), {}, day) == ClockFigures{"0641", 0});  // halves up
  CHECK(clock_figures(instant("2026-12-31T23:59:30Z"), {}, day) == ClockFigures{"0000", 1});
  CHECK(clock_figures(instant("2027-01-01T03:10:00Z"), {}, day) == ClockFigures{"0310", 1});
  CHECK(clock_figures(instant("2026-12-31T00:10:00Z"), {.minutes_east = -60, .name = ""}, day) == ClockFigures{"2310", -1});
}

TEST_CASE("zones are typed in several ways") {
  struct Case {
    const char* text;
    int minutes_east;
    const char* shown;
  };
  const Case cases[] = {{"UTC", 0, "UTC"},
                        {"ut", 0, "ut"},
                        {"GMT", 0, "GMT"},
                        {"Z", 0, "Z"},
                        {"+1", 60, "UTC+1"},
                        {"UTC+1", 60, "UTC+1"},
                        {"utc +01", 60, "UTC+1"},
                        {"+0530", 330, "UTC+5:30"},
                        {"-3:30", -210, "UTC-3:30"},
                        {"UTC\u22123:30", -210, "UTC-3:30"},
                        {"+530", 330, "UTC+5:30"},
                        {"BST +1", 60, "BST"},
                        {"Ship's time -2", -120, "Ship's time"},
                        {"+14", 840, "UTC+14"},
                        {"-12:00", -720, "UTC-12"},
                        {" UT+0 ", 0, "UTC"}};
  for (const Case& c : cases) {
    CAPTURE(c.text);
    const Result<Zone> zone = parse_zone(c.text);
    REQUIRE(zone.ok());
    CHECK(zone->minutes_east == c.minutes_east);
    CHECK(zone_name(*zone) == c.shown);
  }
  CHECK(parse_zone("BST").problem().fault == Fault::entry_part_missing);
  CHECK(parse_zone("Бортовое +3")->name == "Бортовое");
  CHECK(parse_zone("  ").problem().fault == Fault::entry_empty);
  CHECK(parse_zone("+5:60").problem().fault == Fault::minutes_out_of_range);
  CHECK(parse_zone("+15").problem().fault == Fault::number_out_of_range);
  CHECK(parse_zone("-12:01").problem().fault == Fault::number_out_of_range);
  for (const char* text : {"+", "5", "+5.5", "+5:3", "+5:300", "+12345", "UTC+1 UTC", "+-1", "1+1", "+1h"}) {
    CAPTURE(text);
    CHECK(parse_zone(text).problem().fault == Fault::entry_unreadable);
  }
}
