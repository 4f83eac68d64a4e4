#include "core/earth/rhumb.h"

#include <cmath>

#include "core/base/random.h"
#include "core/earth/geodesy.h"
#include "core/earth/mercator.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_radians = 3.14159265358979323846 / 180;

// A rhumb line by quadrature and nothing of the library: course from the isometric latitudes, distance from the length of
// the meridian; along a parallel its length. Between, where the course is nearly east or west, the isometric latitude's
// difference is itself taken by quadrature of M / (N cos lat).
RhumbLeg rhumb_by_quadrature(Position from, Position to) {
  double dlon = reduce_difference_deg(to.lon_deg - from.lon_deg) * k_radians;
  if (dlon == -180 * k_radians) dlon = -dlon;
  const double half_deg = (to.lat_deg - from.lat_deg) / 2;
  const double middle_deg = from.lat_deg + half_deg;
  constexpr int k_steps = 300;
  struct Node {
    double at, weight;
  };  // Gauss-Legendre of three points
  constexpr Node k_nodes[] = {{-0.77459666924148337704, 5.0 / 9}, {0, 8.0 / 9}, {0.77459666924148337704, 5.0 / 9}};
  double stretch = 0;   // mean of M / (N cos lat)
  double radius_m = 0;  // mean of M
  for (int i = 0; i < k_steps; ++i)
    for (const Node& node : k_nodes) {
      const double lat_deg = middle_deg + half_deg * ((2 * i + 1 + node.at) / k_steps - 1);
      stretch += node.weight * meridian_radius_m(lat_deg) / parallel_radius_m(lat_deg) / (2 * k_steps);
      radius_m += node.weight * meridian_radius_m(lat_deg) / (2 * k_steps);
    }
  const double dlat = 2 * half_deg * k_radians;
  const double dpsi = dlat * stretch;
  return {.course = TrueDirection(std::atan2(dlon, dpsi) / k_radians), .distance_nm = std::hypot(dlon, dpsi) * radius_m / stretch / k_metres_per_nm};
}

Position random_position(Random& random, double most_lat_deg) {
  return {.lat_deg = random.uniform(-most_lat_deg, most_lat_deg), .lon_deg = random.uniform(-180, 180)};
}

}  // namespace

TEST_CASE("rhumb lines agree with quadrature to 0.1 mm") {
  Random random(1852);
  double worst_m = 0;
  for (int i = 0; i < 10'000; ++i) {
    const Position from = random_position(random, 75);
    const Position to = i % 4 == 0   ? Position{from.lat_deg, random.uniform(-180, 180)}
                        : i % 4 == 1 ? Position{from.lat_deg + random.uniform(-1e-6, 1e-6), random.uniform(-180, 180)}
                        : i % 4 == 2 ? Position{from.lat_deg + random.uniform(-0.5, 0.5), from.lon_deg + random.uniform(-0.5, 0.5)}
                                     : random_position(random, 75);
    CAPTURE(from.lat_deg);
    CAPTURE(from.lon_deg);
    CAPTURE(to.lat_deg);
    CAPTURE(to.lon_deg);
    const RhumbLeg leg = rhumb_inverse(from, to);
    const RhumbLeg expected = rhumb_by_quadrature(from, to);
    const double off_m = std::abs(leg.distance_nm - expected.distance_nm) * k_metres_per_nm;
    worst_m = std::max(worst_m, off_m);
    CHECK(off_m <= 1e-4);
    CHECK(std::abs(reduce_difference_deg(leg.course.deg() - expected.course.deg())) <= 1e-8);
  }
  MESSAGE("largest difference from quadrature: " << worst_m * 1000 << " mm");
}

TEST_CASE("the way back of a rhumb line ends at its start, to 1 mm") {
  Random random(60);
  for (int i = 0; i < 10'000; ++i) {
    const Position from = random_position(random, 75);
    const Position to = random_position(random, 75);
    const RhumbLeg leg = rhumb_inverse(from, to);
    const Result<Position> end = rhumb_direct(from, leg.course, leg.distance_nm);
    REQUIRE(end.ok());
    CHECK(geodesic_inverse(*end, to).distance_m <= 0.001);
  }
}

TEST_CASE("edges of the rhumb line") {
  SUBCASE("the same position: no distance, course 0") {
    const RhumbLeg leg = rhumb_inverse({50, -4}, {50, 356});
    CHECK(leg.distance_nm == 0);
    CHECK(leg.course.deg() == 0);
  }
  SUBCASE("along the meridian and the parallel the course is exact") {
    CHECK(rhumb_inverse({10, 5}, {20, 5}).course.deg() == 0);
    CHECK(rhumb_inverse({20, 5}, {10, 5}).course.deg() == 180);
    CHECK(rhumb_inverse({50, 5}, {50, 6}).course.deg() == 90);
    CHECK(rhumb_inverse({50, 6}, {50, 5}).course.deg() == 270);
  }
  SUBCASE("the short way over 180") {
    CHECK(rhumb_inverse({-18, 179}, {-18, -179}).course.deg() == 90);
    CHECK(rhumb_inverse({-18, -179}, {-18, 179}).course.deg() == 270);
    CHECK(rhumb_direct({-18, 179}, TrueDirection(90), 120)->lon_deg < -178);
  }
  SUBCASE("from opposite meridians the eastward way") {
    CHECK(rhumb_inverse({10, 0}, {10, 180}).course.deg() == 90);
    CHECK(rhumb_inverse({10, 0}, {10, -180}).course.deg() == 90);
    CHECK(rhumb_inverse({10, 90}, {10, -90}).course.deg() == 90);
    CHECK(rhumb_inverse({10, -90}, {10, 90}).course.deg() == 90);
  }
  SUBCASE("a line past a pole stops short") {
    const Result<Position> end = rhumb_direct({80, 0}, TrueDirection(10), 700);
    REQUIRE_FALSE(end.ok());
    CHECK(end.problem() == Problem{.fault = Fault::latitude_out_of_range, .numbers = {90, 90}});
    CHECK(rhumb_direct({-80, 0}, TrueDirection(10), -700).problem().numbers.at(0) == -90);
    CHECK(rhumb_direct({80, 0}, TrueDirection(10), std::nan("")).problem().fault == Fault::number_missing);
  }
  SUBCASE("a length below nought goes backwards") {
    const Result<Position> back = rhumb_direct({50, -4}, TrueDirection(30), -10);
    const Result<Position> on = rhumb_direct({50, -4}, TrueDirection(210), 10);
    CHECK(geodesic_inverse(*back, *on).distance_m <= 1e-6);
  }
}

TEST_CASE("geodesics there and back end at their start, to 1 mm") {
  Random random(90);
  for (int i = 0; i < 10'000; ++i) {
    const Position from = random_position(random, 90);
    const Position to = random_position(random, 90);
    const GeodesicLeg leg = geodesic_inverse(from, to);
    const GeodesicEnd end = geodesic_direct(from, leg.departure, leg.distance_m);
    CHECK(geodesic_inverse(end.position, to).distance_m <= 0.001);
    CHECK(std::abs(reduce_difference_deg(end.arrival.deg() - leg.arrival.deg())) <= 1e-6);
  }
}
