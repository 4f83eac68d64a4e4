#include "tests/values/compare.h"

#include "doctest/doctest.h"

using fogsheet::values::Wanted;
using fogsheet::values::within;

TEST_CASE("numbers agree within their tolerance, directions round the circle") {
  CHECK(within({"distance_nm", "2.6", 0.05, "nm"}, "2.593"));
  CHECK_FALSE(within({"distance_nm", "2.6", 0.05, "nm"}, "2.66"));
  CHECK(within({"true_deg", "0", 1e-6, "deg"}, "360"));
  CHECK(within({"true_deg", "359.9", 0.2, "deg"}, "0.05"));
  CHECK_FALSE(within({"dlon_arcmin", "0", 1e-6, "arcmin"}, "360"));
  CHECK_FALSE(within({"distance_nm", "2.6", 0.05, "nm"}, "nothing"));
}

TEST_CASE("times of day and instants are apart by the clock") {
  CHECK(within({"eta", "2359", 2, "min"}, "0001"));
  CHECK_FALSE(within({"eta", "2359", 1, "min"}, "0001"));
  CHECK(within({"time_abeam", "1905", 1, "min"}, "1904"));
  CHECK(within({"minutes", "1200", 1, "min"}, "1201"));
  CHECK(within({"eta_iso", "2026-12-31T23:59:30Z", 60, "s"}, "2027-01-01T00:00:00Z"));
  CHECK_FALSE(within({"eta_iso", "2026-12-31T23:59:30Z", 20, "s"}, "2027-01-01T00:00:00Z"));
}

TEST_CASE("texts and counts are equal; no solution is none") {
  CHECK(within({"zone", "caution", 0, "text"}, "caution"));
  CHECK_FALSE(within({"zone", "caution", 0, "text"}, "normal"));
  CHECK(within({"course_to_steer_true_deg", "none", 0.1, "deg"}, "none"));
  CHECK_FALSE(within({"course_to_steer_true_deg", "none", 0.1, "deg"}, "12"));
  CHECK_FALSE(within({"course_to_steer_true_deg", "12", 0.1, "deg"}, "none"));
}
