#include "core/positions/position_text.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

struct Good {
  const char* text;
  double lat_deg, lon_deg;
};

// Common practice, no source, but for the forms of ISO 6709 and RFC 5870.
constexpr double k_lat = 50 + 12.34 / 60, k_lon = -(4 + 56.78 / 60);
constexpr Good k_good[] = {
    {"50°12.34'N 004°56.78'W", k_lat, k_lon},
    {"50°12.34′N 004°56.78′W", k_lat, k_lon},
    {"50° 12.34’ N, 4° 56.78’ W", k_lat, k_lon},
    {"50 12.34 N 4 56.78 W", k_lat, k_lon},
    {"50 12.34N 004 56.78W", k_lat, k_lon},
    {"N50 12.34 W004 56.78", k_lat, k_lon},
    {"n 50º12,34 w 4º56,78", k_lat, k_lon},
    {"50°12,34'N; 4°56,78'W", k_lat, k_lon},
    {"50°12,34'N 4°56,78'W", k_lat, k_lon},
    {"50-12.34N 004-56.78W", -1000, 0},  // hyphens between are not read: see below
    {"4°56.78'W 50°12.34'N", k_lat, k_lon},
    {"Lat 50 12.34 N Long 4 56.78 W", k_lat, k_lon},
    {"latitude: 50°12.34'N longitude: 4°56.78'W", k_lat, k_lon},
    {"5012.34N 00456.78W", k_lat, k_lon},
    {"50d12.34N / 4d56.78W", k_lat, k_lon},
    {"50 deg 12.34 min North, 4 deg 56.78 min West", k_lat, k_lon},
    {"50 12.34 -4 56.78", k_lat, k_lon},
    {"+50 12.34 \xE2\x88\x92"
     "4 56.78",
     k_lat, k_lon},  // minus sign U+2212
    {"50°12'20.4\"N 4°56'46.8\"W", k_lat, k_lon},
    {"50°12'20.4''N 4°56'46.8''W", k_lat, k_lon},
    {"50 12 20.4 N 4 56 46.8 W", k_lat, k_lon},
    {"501220.4N 0045646.8W", k_lat, k_lon},
    {"50.5, -4.25", 50.5, -4.25},
    {"50.5,-4.25", 50.5, -4.25},
    {"50.5 -4.25", 50.5, -4.25},
    {"50,5 -4,25", 50.5, -4.25},
    {"50,5; -4,25", 50.5, -4.25},
    {"50,5,-4,25", 50.5, -4.25},
    {"50.5N 4.25W", 50.5, -4.25},
    {"50.5°N 4.25°W", 50.5, -4.25},
    {"50.5\xC2\xA0N\xE2\x80\xAF"
     "4.25\xC2\xA0W",
     50.5, -4.25},  // spaces that do not break
    {"\xEF\xBB\xBF 50.5 , 4.25 ", 50.5, 4.25},
    {"-50.5 170", -50.5, 170},
    {"-0 30.0 N0 0", -1000, 0},
    {"-0 30, -0 15", -0.5, -0.25},
    {"0N 180E", 0, -180},
    {"0 0", 0, 0},
    {"90S 0", -90, 0},
    {"+5030.0-00415.0/", 50.5, -4.25},
    {"+503000-0041500/", 50.5, -4.25},
    {" +50.5-004.25CRSWGS_84/ ", 50.5, -4.25},
    {"geo:50.5,-4.25;u=20", 50.5, -4.25},
    {"GEO:50.5,180", 50.5, -180},
};

}  // namespace

TEST_CASE("hand-written and machine-made positions are read") {
  for (const Good& good : k_good) {
    CAPTURE(good.text);
    const Result<Position> position = parse_position(good.text);
    if (good.lat_deg == -1000) {
      CHECK_FALSE(position.ok());
      continue;
    }
    REQUIRE(position.ok());
    CHECK(std::abs(position->lat_deg - good.lat_deg) <= 1e-11);
    CHECK(std::abs(position->lon_deg - good.lon_deg) <= 1e-11);
  }
}

TEST_CASE("what is wrong is named, with its place and its bound") {
  struct Bad {
    std::string text;
    Fault fault;
    std::string part;  // the bytes marked
    std::vector<double> numbers;
    std::string suggestion;
  };
  const Bad bads[] = {
      {"", Fault::entry_empty, "", {}, ""},
      {"  ", Fault::entry_empty, "", {}, ""},
      {"50°72.34'N 4°56.78'W", Fault::minutes_out_of_range, "72.34", {72.34, 60}, ""},
      {"50°12'61\"N 4°56'W", Fault::seconds_out_of_range, "61", {61, 60}, ""},
      {"91°12.34'N 4°56.78'W", Fault::latitude_out_of_range, "91°12.34'N", {91 + 12.34 / 60, 90}, ""},
      {"50°12.34'N 181°W", Fault::longitude_out_of_range, "181°W", {-181, 180}, ""},
      {"120.5 45.25", Fault::latitude_out_of_range, "120.5", {120.5, 90}, "45°15.0000′N 120°30.0000′E"},
      {"50°12.34'N", Fault::entry_part_missing, "", {}, ""},
      {"50 12.34 4 56.78", Fault::entry_part_missing, "", {}, ""},
      {"50 12.34N 4 56.78", Fault::entry_part_missing, "", {}, ""},
      {"50 12.34N 4 56.78N", Fault::entry_part_twice, "4 56.78N", {}, ""},
      {"-50 12.34S 4 56.78W", Fault::entry_part_twice, "S", {}, ""},
      {"N50 12.34N 4 56.78W", Fault::entry_part_twice, "W", {}, ""},
      {"5O°12.34'N 4°56.78'W", Fault::entry_unreadable, "O", {}, "50°12.3400′N 004°56.7800′W"},
      {"50°12.34'N 4°56.78'X", Fault::entry_unreadable, "X", {}, ""},
      {"50.12.34N 4.56.78W", Fault::entry_unreadable, ".34", {}, "50°12.3400′N 004°56.7800′W"},  // 78 is no seconds
      {"50.12.34N 4.56.48W", Fault::entry_unreadable, ".34", {}, ""},                            // may be either
      {"50'12N 4°56.78'W", Fault::entry_part_missing, "", {}, ""},
      {"50.5°12'N 4°W", Fault::entry_unreadable, "12", {}, ""},
      {"50-12.34N 004-56.78W", Fault::entry_unreadable, "-", {}, "50°12.3400′N 004°56.7800′W"},
      {"50–12.34N 004–56.78W", Fault::entry_unreadable, "–", {}, "50°12.3400′N 004°56.7800′W"},
      {"50:12:34N 4:56:47W", Fault::entry_unreadable, ":", {}, "50°12.5667′N 004°56.7833′W"},
      {"50-12.34 4-56.78", Fault::entry_unreadable, "-", {}, ""},  // which side of the world?
      {"50,5,4,25", Fault::entry_ambiguous, "", {}, ""},
      {"-50,5 4", Fault::entry_ambiguous, "", {}, ""},  // 50.5 S 4 E, or 50 S 5 deg 4' E
      {"hello", Fault::entry_part_missing, "", {}, ""},
      {"geo:50.5", Fault::entry_part_missing, "", {}, ""},
      {"geo:50,4;crs=nad27", Fault::datum_unknown, "", {}, ""},
      {"+50.5-004.25CRSNAD_27/", Fault::datum_unknown, "", {}, ""},
      {"geo:91,0", Fault::latitude_out_of_range, "91", {91, 90}, ""},
      {" +5060.0-00415.0/", Fault::minutes_out_of_range, "+5060.0", {60, 60}, ""},
  };
  for (const Bad& bad : bads) {
    CAPTURE(bad.text);
    const Result<Position> position = parse_position(bad.text);
    REQUIRE_FALSE(position.ok());
    const Problem& problem = position.problem();
    CHECK(problem.fault == bad.fault);
    CHECK(bad.text.substr(problem.begin, problem.end - problem.begin) == bad.part);
    CHECK(problem.suggestion == bad.suggestion);
    REQUIRE(problem.numbers.size() == bad.numbers.size());
    for (std::size_t i = 0; i < bad.numbers.size(); ++i) CHECK(std::abs(problem.numbers[i] - bad.numbers[i]) <= 1e-9);
  }
  CHECK(parse_position(std::string(1000, '1')).problem().fault == Fault::entry_too_long);
}

TEST_CASE("a suggestion is itself read") {
  for (const char* text : {"120.5 45.25", "5O°12.34'N 4°56.78'W", "50.12.34N 4.56.78W", "50-12.34N 4-56.78W"}) {
    CAPTURE(text);
    CHECK(parse_position(parse_position(text).problem().suggestion).ok());
  }
}

TEST_CASE("one coordinate alone") {
  CHECK(std::abs(*parse_latitude_deg("50°12.34'S") + k_lat) <= 1e-12);
  CHECK(*parse_latitude_deg("-50,25") == -50.25);
  CHECK(*parse_longitude_deg("180") == -180);
  CHECK(*parse_longitude_deg("W 4 30") == -4.5);
  CHECK(parse_latitude_deg("50 12.3").problem().fault == Fault::entry_part_missing);
  CHECK(parse_latitude_deg("50 12.3 W").problem().fault == Fault::entry_unreadable);
  CHECK(parse_latitude_deg("95").problem().numbers.at(1) == 90);
  CHECK(parse_longitude_deg("").problem().texts.at(0) == "longitude");
  CHECK(parse_latitude_deg("50-12.34N").problem().suggestion == "50°12.3400′N");
  CHECK(parse_latitude_deg("50,5 30 N").problem().fault == Fault::entry_unreadable);
  CHECK(parse_longitude_deg("l0.5E").problem().suggestion == "010°30.0000′E");
}

TEST_CASE("every printed form reads back as the same position") {
  Random random(20261125);
  std::vector<GridPosition> positions = {{0, 0},  {45'000'000, 107'999'999}, {-45'000'000, -108'000'000}, {1, -1},
                                         {-1, 1}, {599'999, -599'999},       {600'000, 600'000},          {-9'999, 10'000}};
  for (int i = 0; i < 100'000; ++i)
    positions.push_back(
        {static_cast<std::int32_t>(random.whole(-45'000'000, 45'000'000)), static_cast<std::int32_t>(random.whole(-108'000'000, 107'999'999))});
  for (const GridPosition position : positions)
    for (const PositionForm form : {PositionForm::degrees_minutes, PositionForm::degrees_minutes_seconds, PositionForm::decimal_degrees,
                                    PositionForm::iso6709, PositionForm::geo_uri}) {
      const std::string printed = print_position(position, form);
      const Result<Position> read = parse_position(printed);
      if (!read.ok() || !(quantise(*read) == position)) {
        CAPTURE(printed);
        CHECK(read.ok());
        CHECK(quantise(*read) == position);
      }
    }
  CHECK(print_position({30'123'400, -2'967'800}, PositionForm::degrees_minutes) == "50°12.3400′N 004°56.7800′W");
  CHECK(print_position({30'123'400, -2'967'800}, PositionForm::degrees_minutes_seconds) == "50°12′20.400″N 004°56′46.800″W");
}

TEST_CASE("words, labels and separators that make no sense are refused") {
  struct Bad {
    std::string text;
    Fault fault;
  };
  for (const Bad& bad : {Bad{"50N, 4W, 3", Fault::entry_unreadable},
                         {"Lat 50 12 W Long 4 56 W", Fault::entry_unreadable},
                         {"Lat 50 Lat 51", Fault::entry_part_twice},
                         {"N50 N51", Fault::entry_part_twice},
                         {"50 12 30 20 N 4 W", Fault::entry_unreadable},
                         {"50°12°N 4W", Fault::entry_unreadable},
                         {"50\" N 4W", Fault::entry_part_missing},
                         {"50° 12\" N 4W", Fault::entry_part_missing},
                         {"50°12'N @ 4W", Fault::entry_unreadable},
                         {"50 - 12 N 4W", Fault::entry_unreadable},
                         {"+ +50 4", Fault::entry_part_missing},
                         {"N +50 4W", Fault::entry_part_twice},
                         {"50°12'N", Fault::entry_part_missing},
                         {"1 2 3", Fault::entry_part_missing},
                         {"50,12,N 4,56,W", Fault::entry_unreadable},
                         {"lat", Fault::entry_part_missing}}) {
    CAPTURE(bad.text);
    const Result<Position> position = parse_position(bad.text);
    REQUIRE_FALSE(position.ok());
    CHECK(position.problem().fault == bad.fault);
  }
}

TEST_CASE("degrees signs alone part two coordinates") {
  CHECK(*parse_position("50.5° 4.25°") == Position{50.5, 4.25});
  CHECK(parse_position("50° 30' 4° 15'").problem().fault == Fault::entry_part_missing);  // north or south, east or west
  CHECK(*parse_position("50deg 30min N 4degrees 15minutes 0sec E") == Position{50.5, 4.25});
  CHECK(*parse_position("50,12.5") == Position{50, 12.5});
  CHECK(*parse_position("north 50.5 west 4.25") == Position{50.5, -4.25});
  CHECK(*parse_position("south 50.5 east 4.25") == Position{-50.5, 4.25});
}
