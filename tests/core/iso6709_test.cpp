#include "core/positions/iso6709.h"

#include <cmath>
#include <initializer_list>
#include <string>

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("the three forms are read, with height and reference system") {
  // Source: ISO 6709:2008/2022, string expression (annex H).
  CHECK(parse_iso6709("+48.8577+002.295/")->position == Position{48.8577, 2.295});
  CHECK(std::abs(parse_iso6709("+5030.0-00415.0/")->position.lon_deg + 4.25) <= 1e-12);
  CHECK(std::abs(parse_iso6709("+503015.5-0041500/")->position.lat_deg - (50.5 + 15.5 / 3600)) <= 1e-12);
  CHECK(parse_iso6709("+27.5916+086.5640+8850CRSWGS_84/")->height_m == 8850);
  CHECK(parse_iso6709("+27.5916+086.5640-10.5CRSWGS_84/")->height_m == -10.5);
  CHECK(parse_iso6709("+90-180CRSWGS_84/")->position == Position{90, -180});
  CHECK(parse_iso6709("+50.5-004.25CRSEPSG:4277/")->system == "EPSG:4277");
  CHECK_FALSE(parse_iso6709("+50.5-004.25CRSEPSG:4277/")->is_wgs84());
  CHECK_FALSE(std::signbit(parse_iso6709("-00-000/")->position.lat_deg));
}

TEST_CASE("everything else is refused, with its place") {
  struct Bad {
    std::string text;
    Fault fault;
    std::string part;
  };
  for (const Bad& bad : {Bad{"", Fault::entry_empty, ""},
                         {"50.5-004.25/", Fault::entry_unreadable, "5"},
                         {"+50.5-4.25/", Fault::entry_unreadable, "-4.25"},
                         {"+50.5", Fault::entry_part_missing, ""},
                         {"+50.5-004.25", Fault::entry_part_missing, ""},
                         {"+50.5-004.25/ ", Fault::entry_unreadable, "/ "},
                         {"+50.-004/", Fault::entry_unreadable, "+50."},
                         {"+-004/", Fault::entry_unreadable, "+"},
                         {"+5-004/", Fault::entry_unreadable, "+5"},
                         {"+50.5-00415.0/", Fault::entry_unreadable, "-00415.0"},
                         {"+5060.0-00415.0/", Fault::minutes_out_of_range, "+5060.0"},
                         {"+505960-0041500/", Fault::seconds_out_of_range, "+505960"},
                         {"+91+000/", Fault::latitude_out_of_range, "+91"},
                         {"+9000.1+00000/", Fault::latitude_out_of_range, "+9000.1"},
                         {"+90-181/", Fault::longitude_out_of_range, "-181"},
                         {"+50.5-004.25+10/", Fault::entry_part_missing, ""},
                         {"+50.5-004.25+/", Fault::entry_unreadable, "+"},
                         {"+50.5-004.25+.5CRSWGS_84/", Fault::entry_unreadable, "+"},
                         {"+50.5-004.25CRS/", Fault::entry_part_missing, ""},
                         {"+50.5-004.25CRSWGS 84/", Fault::entry_unreadable, " 84/"},
                         {"+50.5-004.25CRSWGS_84", Fault::entry_part_missing, ""}}) {
    CAPTURE(bad.text);
    const Result<Iso6709> read = parse_iso6709(bad.text);
    REQUIRE_FALSE(read.ok());
    CHECK(read.problem().fault == bad.fault);
    CHECK(bad.text.substr(read.problem().begin, read.problem().end - read.problem().begin) == bad.part);
  }
}

TEST_CASE("printed to the grid's own step") {
  CHECK(print_iso6709({30'300'000, -2'550'000}) == "+5030.0000-00415.0000/");
  CHECK(print_iso6709({-1, -108'000'000}) == "-0000.0001-18000.0000/");
}
