#include "core/base/units.h"

#include <cmath>

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("units by name and symbol") {
  // Source: BIPM SI Brochure; agreement of 1959; common usage for cables.
  CHECK(unit_in("nautical mile", "m") == 1852);
  CHECK(std::abs(*unit_in("nautical mile", "ft") - 6076.1155) <= 5e-5);
  CHECK(std::abs(*unit_in("knot", "m/s") - 0.514444444) <= 5e-10);
  CHECK(std::abs(*unit_in("cable (US customary)", "m") - 219.456) <= 1e-9);
  CHECK(unit_in("point of the compass", "deg") == 11.25);
  CHECK(unit_in("nm", "nm") == 1);
}

TEST_CASE("unknown names and different kinds have no ratio") {
  CHECK_FALSE(unit_in("league", "m"));
  CHECK_FALSE(unit_in("nm", "league"));
  CHECK_FALSE(unit_in("knot", "m"));
  CHECK_FALSE(unit_in("", "m"));
}
