#include "core/instruments/dividers.h"

#include <cmath>

#include "core/base/random.h"
#include "core/earth/mercator.h"
#include "core/earth/rhumb.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

Projection sheet_at(double lat_deg) { return Projection({.lat_deg = lat_deg, .lon_deg = -30}, 100'000, Paper::a4_upright); }

}  // namespace

TEST_CASE("carrying, swinging and walking keep the opening") {
  Random random(5);
  for (int i = 0; i < 1000; ++i) {
    const Dividers dividers{{random.uniform(0, 200), random.uniform(0, 280)}, {random.uniform(0, 200), random.uniform(0, 280)}};
    const double opening = opening_mm(dividers);
    const SheetPoint point{random.uniform(0, 200), random.uniform(0, 280)};
    CHECK(std::abs(opening_mm(swung_towards(dividers, point)) - opening) <= 1e-9);
    CHECK(std::abs(opening_mm(walked(dividers)) - opening) <= 1e-9);
    CHECK(std::abs(opening_mm(at_latitude_scale(dividers, 12)) - opening) <= 1e-9);
    CHECK(at_latitude_scale(dividers, 12).a.x_mm == 12);
    CHECK(at_latitude_scale(dividers, 12).b.y_mm <= at_latitude_scale(dividers, 12).a.y_mm);
  }
  const Dividers dividers{{1, 1}, {2, 1}};
  CHECK(swung_towards(dividers, {1, 1}) == dividers);
  CHECK(walked(dividers) == Dividers{{2, 1}, {3, 1}});
}

TEST_CASE("level with the work the scale gives the rhumb distance") {
  // By another path: the rhumb line between the same two points. By hand, over a leg of some ten miles, the scale at the
  // height of the middle is the leg's own to some parts in a hundred thousand.
  Random random(9);
  for (const double lat_deg : {-60.0, 0.0, 44.0, 70.0}) {
    const Projection projection = sheet_at(lat_deg);
    for (int i = 0; i < 200; ++i) {
      const SheetPoint a{random.uniform(20, 190), random.uniform(20, 270)}, b{random.uniform(20, 190), random.uniform(20, 270)};
      const DividersReading reading = read_dividers({a, b}, projection);
      const RhumbLeg leg = rhumb_inverse(projection.to_position(a), projection.to_position(b));
      CAPTURE(lat_deg);
      CHECK(std::abs(reading.distance_nm - leg.distance_nm) <= 2e-5 * leg.distance_nm + 1e-9);
      const double minute_nm = latitude_minute_m(projection.to_position(midpoint(a, b)).lat_deg) / 1852;
      CHECK(std::abs(reading.scale_minutes * minute_nm - reading.distance_nm) <= 1e-5 * reading.distance_nm);
    }
  }
}

TEST_CASE("set on the scale they read what they were set to") {
  for (const double lat_deg : {-60.0, 0.0, 44.0, 70.0}) {
    const Projection projection = sheet_at(lat_deg);
    for (const double minutes : {0.0, 0.1, 1.0, 5.0, 12.0}) {
      const double opening = opening_for_minutes_mm(minutes, lat_deg, projection);
      const double y_mm = projection.y_mm(lat_deg);
      CHECK(std::abs(read_dividers({{0, y_mm}, {opening, y_mm}}, projection).scale_minutes - minutes) <= 1e-9);
    }
  }
}

TEST_CASE("set to a distance they read it, and lie as they did") {
  Random random(17);
  for (const double lat_deg : {-60.0, 0.0, 44.0, 70.0}) {
    const Projection projection = sheet_at(lat_deg);
    for (int i = 0; i < 100; ++i) {
      const Dividers lay{{random.uniform(20, 190), random.uniform(20, 270)}, {random.uniform(20, 190), random.uniform(20, 270)}};
      const double wanted_nm = random.uniform(0.05, 20);
      const double lat = projection.to_position(lay.a).lat_deg;
      const Dividers set = opened_to(lay, opening_for_distance_mm(wanted_nm, lat, projection));
      CHECK(set.a == lay.a);
      CHECK(std::abs(direction_deg(set.b - set.a) - direction_deg(lay.b - lay.a)) <= 1e-9);
      CHECK(std::abs(read_dividers({{0, lay.a.y_mm}, {opening_mm(set), lay.a.y_mm}}, projection).distance_nm - wanted_nm) <= 1e-9);
    }
  }
  CHECK(opened_to({{5, 5}, {5, 5}}, 3) == Dividers{{5, 5}, {8, 5}});
  CHECK(opening_for_distance_mm(0, 44, sheet_at(44)) == 0);
}

TEST_CASE("the hinge stands over the middle, and the legs are alike") {
  Random random(29);
  for (int i = 0; i < 1000; ++i) {
    const Dividers dividers{{random.uniform(0, 200), random.uniform(0, 280)}, {random.uniform(0, 200), random.uniform(0, 280)}};
    const bool left = random.uniform(0, 1) < 0.5;
    const SheetPoint at = hinge(dividers, left, 20);
    CHECK(std::abs(distance_mm(at, dividers.a) - distance_mm(at, dividers.b)) <= 1e-9);
    CHECK(std::abs(distance_mm(at, midpoint(dividers.a, dividers.b)) - 20) <= 1e-9);
    // Left of the way: seen from above with y downwards, a turn against the clock.
    const SheetVector run = dividers.b - dividers.a, out = at - midpoint(dividers.a, dividers.b);
    CHECK((run.x_mm * out.y_mm - run.y_mm * out.x_mm < 0) == left);
    // And the other way round it is the other side.
    CHECK(distance_mm(hinge({dividers.b, dividers.a}, !left, 20), at) <= 1e-9);
  }
  CHECK(hinge_is_left({{10, 50}, {40, 60}}, {100, 100}));        // eastward: up is left
  CHECK_FALSE(hinge_is_left({{40, 60}, {10, 50}}, {100, 100}));
  CHECK_FALSE(hinge_is_left({{10, 60}, {10, 30}}, {100, 100}));  // northward at the west border: inward is right
  CHECK(hinge_is_left({{190, 60}, {190, 30}}, {100, 100}));
  CHECK(hinge({{5, 5}, {5, 5}}, true, 3) == SheetPoint{5, 2});
}

TEST_CASE("steps are alike and lie on the line, past its end too") {
  const std::vector<SheetPoint> steps = steps_towards({0, 0}, {30, 40}, 15, 5);
  REQUIRE(steps.size() == 5);
  CHECK(distance_mm(steps[0], {9, 12}) <= 1e-9);
  CHECK(distance_mm(steps[2], step_along({0, 0}, {30, 40}, 15)->last) <= 1e-9);
  CHECK(distance_mm(steps[4], {45, 60}) <= 1e-9);
  CHECK(steps_towards({0, 0}, {30, 40}, 15, 0).empty());
  CHECK(steps_towards({3, 3}, {3, 3}, 15, 5).empty());
}

TEST_CASE("a line is stepped off in whole steps and a rest") {
  const Result<SteppedLine> line = step_along({0, 0}, {30, 40}, 15);
  REQUIRE(line.ok());
  CHECK(line->steps == 3);
  CHECK(line->rest_mm == doctest::Approx(5));
  CHECK(distance_mm(line->last, {27, 36}) <= 1e-9);
  CHECK(step_along({0, 0}, {30, 40}, 10)->steps == 5);
  CHECK(step_along({0, 0}, {30, 40}, 10)->rest_mm == 0);
  CHECK(step_along({0, 0}, {0, 0}, 10)->steps == 0);
  CHECK(step_along({0, 0}, {30, 40}, 60)->rest_mm == 50);
  CHECK(step_along({0, 0}, {30, 40}, 0.5).problem().fault == Fault::number_out_of_range);
  CHECK(step_along({0, 0}, {30'000, 0}, 1).problem().fault == Fault::number_out_of_range);
}

TEST_CASE("a mark by bearing and distance lies where it was set") {
  Random random(13);
  for (int i = 0; i < 10'000; ++i) {
    const Position from{.lat_deg = random.uniform(-74, 74), .lon_deg = random.uniform(-180, 180)};
    const TrueDirection to(random.uniform(0, 360));
    const double distance_nm = random.uniform(0.1, 50);
    const Result<GridPosition> mark = mark_by_bearing_and_distance(from, to, distance_nm);
    REQUIRE(mark.ok());
    const RhumbLeg back = rhumb_inverse(from, unquantise(*mark));
    // Half a step of 0.0001' both ways: 0.13 m.
    CHECK(std::abs(back.distance_nm - distance_nm) * 1852 <= 0.14);
  }
  CHECK(mark_by_bearing_and_distance({74.9, 0}, TrueDirection(0), 10).problem().fault == Fault::latitude_out_of_range);
  CHECK(mark_by_bearing_and_distance({50, 0}, TrueDirection(0), -1).problem().fault == Fault::number_out_of_range);
  CHECK(mark_by_bearing_and_distance({50, 0}, TrueDirection(0), 9000).problem().fault == Fault::latitude_out_of_range);
}
