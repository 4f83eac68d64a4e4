#include "core/earth/mercator.h"

#include <cmath>
#include <initializer_list>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

struct Case {
  double lat_deg, parts_arcmin;
};

// Source: meridional parts on WGS84, the quantity of Bowditch Table 6, by (10800/pi)(artanh(sin L) - e artanh(e sin L)).
constexpr Case k_parts[] = {{0.5, 29.800}, {45, 3013.648}, {60, 4507.404}, {75, 6948.063}, {80, 8352.484}};

}  // namespace

TEST_CASE("meridional parts agree with the table, south as north") {
  for (const Case& c : k_parts) {
    CAPTURE(c.lat_deg);
    CHECK(std::abs(meridional_parts_arcmin(c.lat_deg) - c.parts_arcmin) <= 0.001);
    CHECK(meridional_parts_arcmin(-c.lat_deg) == -meridional_parts_arcmin(c.lat_deg));
  }
  CHECK(meridional_parts_arcmin(0) == 0);
}

TEST_CASE("latitude comes back from its isometric latitude to 1e-12 deg") {
  for (double lat_deg = -89; lat_deg <= 89; lat_deg += 0.01) {
    CAPTURE(lat_deg);
    CHECK(std::abs(latitude_from_isometric_deg(isometric_latitude(lat_deg)) - lat_deg) <= 1e-12);
  }
  CHECK(std::abs(latitude_from_isometric_deg(1e6) - 90) <= 1e-12);
  CHECK(std::abs(latitude_from_isometric_deg(-1e6) + 90) <= 1e-12);
}

TEST_CASE("lengths of a minute agree with the table of lengths of a degree") {
  // Source: length of a degree on WGS84 (the quantity of Bowditch Table 7), m; a minute is a sixtieth, to 0.001 m.
  struct Length {
    double lat_deg, latitude_degree_m, longitude_degree_m;
  };
  for (const Length& c : {Length{45, 111131.78, 78846.84}, {60, 111412.27, 55800.00}, {75, 111618.36, 28902.01}}) {
    CAPTURE(c.lat_deg);
    CHECK(std::abs(meridian_arc_m(c.lat_deg - 0.5, c.lat_deg + 0.5) - c.latitude_degree_m) <= 0.006);
    CHECK(std::abs(latitude_minute_m(c.lat_deg) - c.latitude_degree_m / 60) <= 0.001);
    CHECK(std::abs(longitude_minute_m(c.lat_deg) - c.longitude_degree_m / 60) <= 0.001);
  }
}

TEST_CASE("the quarter meridian has its published length") {
  // Source: WGS84 quarter meridian 10 001 965.729 m (Rapp, Geometric Geodesy, 1991).
  CHECK(std::abs(meridian_arc_m(0, 90) - 10'001'965.729) <= 0.001);
  CHECK(meridian_arc_m(10, -30) == -meridian_arc_m(-30, 10));
}

TEST_CASE("the Mercator scale is what the meridional parts grow by") {
  // d(parts)/d(lat) in minutes = meridian radius / parallel radius (Snyder 1987, eq. 7-8).
  for (double lat_deg = -75; lat_deg <= 75; lat_deg += 5) {
    CAPTURE(lat_deg);
    constexpr double k_step_deg = 1e-3;
    const double grown = meridional_parts_arcmin(lat_deg + k_step_deg) - meridional_parts_arcmin(lat_deg - k_step_deg);
    CHECK(std::abs(grown / (120 * k_step_deg) - meridian_radius_m(lat_deg) / parallel_radius_m(lat_deg)) <= 1e-7);
  }
}
