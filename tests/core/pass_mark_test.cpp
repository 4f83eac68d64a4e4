#include "core/passage/pass_mark.h"

#include <cmath>

#include "core/passage/plane_vector.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("the course leaves the mark abeam at the distance, on its side") {
  for (const Side side : {Side::port, Side::starboard}) {
    const Passing passing = pass_at_distance(TrueDirection(350), 5, 3, side).value();
    CHECK(passing.run_nm == doctest::Approx(4));  // 3, 4, 5
    const PlaneVector mark_from_abeam = along(TrueDirection(350), 5) - along(passing.course, passing.run_nm);
    CHECK(std::abs(length_of(mark_from_abeam) - 3) <= 1e-12);
    CHECK(std::abs(dot(along(passing.course), mark_from_abeam)) <= 1e-12);
    CHECK((to_starboard(along(passing.course), mark_from_abeam) > 0) == (side == Side::starboard));
  }
  CHECK(pass_at_distance(TrueDirection(20), 5, 0, Side::port)->course == TrueDirection(20));
  CHECK(pass_at_distance(TrueDirection(20), 5, 5, Side::port)->run_nm == 0);
  CHECK(pass_at_distance(TrueDirection(20), 0, 0, Side::port)->run_nm == 0);
}

TEST_CASE("a mark nearer than it is to be left at is refused") {
  CHECK(pass_at_distance(TrueDirection(20), 1, 1.5, Side::port).problem().fault == Fault::mark_too_near);
  CHECK(pass_at_distance(TrueDirection(20), -1, 0, Side::port).problem().fault == Fault::number_out_of_range);
  CHECK(pass_at_distance(TrueDirection(20), 1, std::nan(""), Side::port).problem().fault == Fault::number_out_of_range);
}
