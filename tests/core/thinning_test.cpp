// Lines thinned: what stays lies near, whatever the line, and the time is bounded.
#include "core/earth/thinning.h"

#include <cmath>

#include "core/base/random.h"
#include "core/base/units.h"
#include "core/earth/mercator.h"
#include "core/earth/rhumb.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

// How far a place lies from a rhumb line, by another road: the least geodesic-free distance over many points along it, each by
// the rhumb distance from the place.
double off_m(GridPosition place, GridPosition from, GridPosition to) {
  const Position a = unquantise(from), b = unquantise(to);
  const double turn_deg = reduce_longitude_deg(b.lon_deg - a.lon_deg), low = isometric_latitude(a.lat_deg), high = isometric_latitude(b.lat_deg);
  double least_m = 1e9;
  for (int i = 0; i <= 2'000; ++i) {
    const double share = i / 2'000.0;
    const Position on{latitude_from_isometric_deg(low + share * (high - low)), a.lon_deg + share * turn_deg};
    least_m = std::min(least_m, rhumb_inverse(unquantise(place), on).distance_nm * k_metres_per_nm);
  }
  return least_m;
}

std::vector<GridPosition> wandering(std::uint64_t seed, std::size_t count, Position from) {
  Random random(seed);
  std::vector<GridPosition> points;
  double course = 0;
  for (std::size_t i = 0; i < count; ++i) {
    course += (random.uniform() - 0.5) * 0.6;
    from.lat_deg += 3e-4 * std::cos(course);
    from.lon_deg += 3e-4 * std::sin(course);
    points.push_back(quantise({from.lat_deg, reduce_longitude_deg(from.lon_deg)}));
  }
  return points;
}

}  // namespace

TEST_CASE("what is left out lies as near as was asked for, over 180 deg and far north too") {
  for (const Position start : {Position{44, -31}, Position{-17, 179.99}, Position{69, 10}}) {
    const std::vector<GridPosition> points = wandering(7, 600, start);
    const Thinned few = thinned(points, 50, 10'000);
    CHECK(few.within_m <= 50);
    CHECK(few.kept.size() < points.size() / 3);
    CHECK(few.kept.front() == 0);
    CHECK(few.kept.back() == points.size() - 1);
    double worst_m = 0;
    for (std::size_t k = 0; k + 1 < few.kept.size(); ++k)
      for (std::uint32_t i = few.kept[k] + 1; i < few.kept[k + 1]; i += 3) worst_m = std::max(worst_m, off_m(points[i], points[few.kept[k]], points[few.kept[k + 1]]));
    CHECK(worst_m <= 50.5);  // the other road is as fine as its steps: 0.5 m of some hundred metres
    CHECK(worst_m <= few.within_m + 0.5);
  }
}

TEST_CASE("points on a rhumb line go, its ends stay") {
  std::vector<GridPosition> points;
  const double low = isometric_latitude(50), high = isometric_latitude(51);
  for (int i = 0; i <= 1'000; ++i) points.push_back(quantise({latitude_from_isometric_deg(low + i / 1e3 * (high - low)), -4 - i / 1e3 * 3}));
  const Thinned few = thinned(points, 1, 300);
  CHECK(few.kept == std::vector<std::uint32_t>{0, 1'000});
  CHECK(few.within_m < 0.3);  // 0.0001' is 0.19 m
}

TEST_CASE("with too many points it stops and says how far off the rest is") {
  const std::vector<GridPosition> points = wandering(3, 20'000, {44, -31});
  const Thinned few = thinned(points, 1, 50);
  CHECK(few.kept.size() == 50);
  CHECK(few.within_m > 1);
  CHECK(thinned(points, few.within_m, 20'000).kept.size() <= 50);
}

TEST_CASE("short and flat lines") {
  CHECK(thinned({}, 10, 300).kept.empty());
  const GridPosition at{26'400'000, -18'600'000};
  CHECK(thinned(std::vector{at}, 10, 300).kept.size() == 1);
  CHECK(thinned(std::vector{at, at}, 10, 300).kept.size() == 2);
  const Thinned round = thinned(std::vector<GridPosition>{at, {at.lat + 60'000, at.lon}, at}, 10, 300);
  CHECK(round.kept.size() == 3);  // there and back
}
