#include "core/positions/geo_uri.h"

#include <initializer_list>
#include <string>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

bool same(const char* a, const char* b) { return equal(*parse_geo_uri(a), *parse_geo_uri(b)); }

}  // namespace

TEST_CASE("links by the grammar are read") {
  // Source: RFC 5870, examples of sections 1, 6.1 and 6.4.
  CHECK(parse_geo_uri("geo:13.4125,103.8667")->position == Position{13.4125, 103.8667});
  CHECK(parse_geo_uri("geo:48.198634,16.371648;crs=wgs84;u=40")->uncertainty_m == 40);
  CHECK(parse_geo_uri("geo:48.2010,16.3695,183")->altitude_m == 183);
  CHECK(parse_geo_uri("GEO:-0,-180")->position == Position{0, -180});
  const Result<GeoUri> uri = parse_geo_uri("geo:66,30;u=6.500;FOo=this%2dthat;flag");
  REQUIRE(uri.ok());
  REQUIRE(uri->parameters.size() == 2);
  CHECK(uri->parameters[0].name == "foo");
  CHECK(uri->parameters[0].value == "this-that");
  CHECK_FALSE(uri->parameters[1].has_value);
}

TEST_CASE("another reference system has its own numbers") {
  const Result<GeoUri> uri = parse_geo_uri("geo:323482,4306480;crs=Other-1");
  REQUIRE(uri.ok());
  CHECK(uri->system == "other-1");
  CHECK_FALSE(same("geo:10,180;crs=other", "geo:10,-180;crs=other"));
  CHECK_FALSE(same("geo:10,20;crs=other", "geo:10,20"));
  CHECK(same("geo:10,20;crs=OTHER", "geo:10,20;crs=other"));
}

TEST_CASE("equal links are equal") {
  // Source: RFC 5870 section 6.4.
  CHECK(same("geo:90,-22.43;crs=WGS84", "geo:90,46"));
  CHECK(same("geo:22.300,-118.44", "geo:22.3,-118.4400"));
  CHECK(same("geo:66,30;u=6.500;FOo=this%2Dthat", "geo:66.0,30;u=6.5;foo=this-that"));
  CHECK(same("geo:47,11;foo=blue;bar=white", "geo:47,11;bar=white;foo=blue"));
  CHECK(same("geo:10,180", "geo:10,-180"));
  CHECK_FALSE(same("geo:22,0;bar=Blue", "geo:22,0;BAR=blue"));
  CHECK_FALSE(same("geo:1,2", "geo:1,3"));
  CHECK_FALSE(same("geo:1,2", "geo:2,2"));
  CHECK_FALSE(same("geo:1,2", "geo:1,2,0"));
  CHECK_FALSE(same("geo:1,2;u=0", "geo:1,2"));
  CHECK_FALSE(same("geo:1,2;a=1", "geo:1,2"));
  CHECK_FALSE(same("geo:1,2;a=1", "geo:1,2;a=2"));
}

TEST_CASE("what the grammar does not have is refused, with its place") {
  struct Bad {
    std::string text;
    Fault fault;
    std::string part;
  };
  for (const Bad& bad : {Bad{"", Fault::entry_empty, ""},
                         {"ge", Fault::entry_unreadable, "ge"},
                         {"http:1,2", Fault::entry_unreadable, "http"},
                         {"geo:50.5", Fault::entry_part_missing, ""},
                         {"geo:50.5, -4.25", Fault::entry_unreadable, " -4.25"},
                         {"geo:+50.5,-4.25", Fault::entry_unreadable, "+50.5"},
                         {"geo:.5,1", Fault::entry_unreadable, ".5"},
                         {"geo:5.,1", Fault::entry_unreadable, "5."},
                         {"geo:1e2,1", Fault::entry_unreadable, "1e2"},
                         {"geo:1,2,3,4", Fault::entry_unreadable, "4"},
                         {"geo:91,0", Fault::latitude_out_of_range, "91"},
                         {"geo:0,180.1", Fault::longitude_out_of_range, "180.1"},
                         {"geo:1,2;u=", Fault::entry_unreadable, "u="},
                         {"geo:1,2;u=-1", Fault::entry_unreadable, "u=-1"},
                         {"geo:1,2;u=1;u=1", Fault::entry_unreadable, "u=1"},
                         {"geo:1,2;a=1;u=1", Fault::entry_unreadable, "u=1"},
                         {"geo:1,2;u=1;crs=wgs84", Fault::entry_unreadable, "crs=wgs84"},
                         {"geo:1,2;crs=", Fault::entry_unreadable, "crs="},
                         {"geo:1,2;", Fault::entry_unreadable, ""},
                         {"geo:1,2;a=", Fault::entry_unreadable, "a="},
                         {"geo:1,2;a b=1", Fault::entry_unreadable, "a b=1"},
                         {"geo:1,2;a=%2", Fault::entry_unreadable, "a=%2"},
                         {"geo:1,2;a=%g0", Fault::entry_unreadable, "a=%g0"},
                         {"geo:1,2;a=%0g", Fault::entry_unreadable, "a=%0g"},
                         {"geo:1,2;a=b?c", Fault::entry_unreadable, "a=b?c"},
                         {"geo:1,2?q=x", Fault::entry_unreadable, "2?q=x"}}) {
    CAPTURE(bad.text);
    const Result<GeoUri> uri = parse_geo_uri(bad.text);
    REQUIRE_FALSE(uri.ok());
    CHECK(uri.problem().fault == bad.fault);
    CHECK(bad.text.substr(uri.problem().begin, uri.problem().end - uri.problem().begin) == bad.part);
  }
}
