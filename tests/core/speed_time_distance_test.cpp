#include "core/passage/speed_time_distance.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("any two of speed, time and distance give the third") {
  Random random(60);
  for (int i = 0; i < 500; ++i) {
    const double speed_kn = random.uniform(0.1, 40), hours = random.uniform(0.01, 60);
    const double distance_nm = distance_run_nm(speed_kn, hours).value();
    CHECK(std::abs(speed_needed_kn(distance_nm, hours).value() - speed_kn) <= 1e-12 * speed_kn);
    CHECK(std::abs(hours_taken(distance_nm, speed_kn).value() - hours) <= 1e-12 * hours);
  }
  CHECK(hours_taken(0, 5).value() == 0);
  CHECK(distance_run_nm(5, 0).value() == 0);
  CHECK(speed_needed_kn(0, 2).value() == 0);
}

TEST_CASE("what gives no third is refused") {
  const double none = std::nan("");
  for (const double speed_kn : {0.0, -4.0, none}) {
    CHECK(distance_run_nm(speed_kn, 1).problem().fault == Fault::speed_not_positive);
    CHECK(hours_taken(1, speed_kn).problem().fault == Fault::speed_not_positive);
  }
  CHECK(distance_run_nm(4, -1).problem().fault == Fault::time_not_positive);
  CHECK(speed_needed_kn(4, 0).problem().fault == Fault::time_not_positive);
  CHECK(speed_needed_kn(4, -2).problem().fault == Fault::time_not_positive);
  CHECK(speed_needed_kn(-4, 2).problem().fault == Fault::number_out_of_range);
  CHECK(hours_taken(none, 2).problem().fault == Fault::number_out_of_range);
  CHECK(time_of_arrival({}, 90'000, 0.001).problem().fault == Fault::leg_takes_too_long);
}

TEST_CASE("arrivals run over midnight and the year's end") {
  const Instant start = instant_of({2026, 12, 31}, {22 * 60 + 40}, {});
  CHECK(iso_instant(time_of_arrival(start, 23.4, 5.2).value()) == "2027-01-01T03:10:00Z");  // 4 h 30 min
  CHECK(time_of_arrival(start, 0, 5.2).value() == start);
}
