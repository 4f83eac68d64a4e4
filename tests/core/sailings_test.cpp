#include "core/earth/sailings.h"

#include <cmath>
#include <vector>

#include "core/base/random.h"
#include "core/earth/rhumb.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("the books' worked examples") {
  // Source: Bowditch, The American Practical Navigator (NGA Pub. 9), chapter The Sailings.
  const PlaneRun run = plane_run({TrueDirection(5), 188});
  CHECK(std::abs(run.dlat_arcmin - 187.3) <= 0.1);
  CHECK(std::abs(run.departure_nm - 16.4) <= 0.1);
  const std::vector<CourseDistance> legs = {
      {TrueDirection(158), 15.5}, {TrueDirection(135), 33.7}, {TrueDirection(259), 16.1}, {TrueDirection(293), 39.0}, {TrueDirection(169), 40.4}};
  const CourseDistance made_good = plane_course(traverse(legs));
  CHECK(std::abs(made_good.course.deg() - 192.3) <= 0.2);
  CHECK(std::abs(made_good.distance_nm - 67.3) <= 0.2);
  CHECK(std::abs(parallel_departure_nm(49.5, 210) - 136.4) <= 0.1);
  const CourseDistance mercator = mercator_course({32.245, -66.48166667}, {36.97833333, -75.70333333});
  CHECK(std::abs(mercator.course.deg() - 301.8) <= 0.1);
  CHECK(std::abs(mercator.distance_nm - 538.2) <= 0.1);
}

TEST_CASE("across 180 the short way, from opposite meridians eastward") {
  CHECK(dlon_arcmin(-178, 179) == -180);
  CHECK(dlon_arcmin(179, -178) == 180);
  CHECK(dlon_arcmin(0, 180) == 10'800);
  CHECK(dlon_arcmin(0, -180) == 10'800);
  CHECK(parallel_longitude_deg(0, 179.5, 60) == -179.5);
}

TEST_CASE("what has no answer says so") {
  CHECK(*plane_distance_nm(35, 9, TrueDirection(180)) == doctest::Approx(1560));
  CHECK(plane_distance_nm(35, 9, TrueDirection(90)).problem().fault == Fault::course_never_there);
  CHECK(plane_distance_nm(35, 9, TrueDirection(10)).problem() == Problem{.fault = Fault::course_never_there, .numbers = {10, 9}});
  CHECK(*parallel_latitude_deg(30, 60) == doctest::Approx(60));
  CHECK(parallel_latitude_deg(61, 60).problem().fault == Fault::number_out_of_range);
  CHECK(parallel_latitude_deg(10, 0).problem().fault == Fault::number_out_of_range);
  CHECK(parallel_latitude_deg(-10, 20).problem().fault == Fault::number_out_of_range);
  CHECK(mid_latitude_position({80, 0}, {TrueDirection(0), 700}).problem().numbers.at(1) == 90);
  CHECK(mercator_position({-80, 0}, {TrueDirection(180), 700}).problem().fault == Fault::latitude_out_of_range);
  CHECK(plane_course({}).distance_nm == 0);
}

TEST_CASE("along a parallel Mercator sailing is parallel sailing") {
  const CourseDistance leg = mercator_course({50, 0}, {50, 10});
  CHECK(leg.course.deg() == 90);
  CHECK(leg.distance_nm == doctest::Approx(parallel_departure_nm(50, 600)));
  const Result<Position> end = mercator_position({50, 0}, leg);
  CHECK(std::abs(end->lat_deg - 50) <= 1e-9);
  CHECK(std::abs(end->lon_deg - 10) <= 1e-9);
}

TEST_CASE("Mercator sailing there and back, and never far from the ellipsoid's truth") {
  Random random(24);
  for (int i = 0; i < 10'000; ++i) {
    const Position from{.lat_deg = random.uniform(-70, 70), .lon_deg = random.uniform(-180, 180)};
    const Position to{.lat_deg = from.lat_deg + random.uniform(-5, 5), .lon_deg = from.lon_deg + random.uniform(-5, 5)};
    const CourseDistance leg = mercator_course(from, to);
    const Result<Position> end = mercator_position(from, leg);
    REQUIRE(end.ok());
    // The nearer to east or west, the less the way back knows of the longitude.
    const double slack_deg = 1e-9 / (1e-6 + std::abs(std::cos(leg.course.deg() * 3.14159265358979323846 / 180)));
    CHECK(std::abs(end->lat_deg - to.lat_deg) <= 1e-9);
    CHECK(std::abs(reduce_difference_deg(end->lon_deg - to.lon_deg)) <= slack_deg);
    const RhumbLeg truth = rhumb_inverse(from, to);
    CHECK(std::abs(leg.distance_nm - truth.distance_nm) <= 0.007 * truth.distance_nm + 1e-6);
  }
}
