// The straight-edge: sliding keeps the angle, settling, turning. Expected values are plane geometry, worked by hand.
#include "core/instruments/straight_edge.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

// Bearings must not change by more than this under any slide.
constexpr double k_angle_tolerance_deg = 1e-9;
constexpr double k_length_tolerance_mm = 1e-9;

constexpr StraightEdge k_eastward{.a = {50, 100}, .b = {110, 100}};

double difference_deg(TrueDirection one, TrueDirection other) { return std::abs(reduce_difference_deg(one.deg() - other.deg())); }

double distance_to_line_mm(const StraightEdge& edge, SheetPoint point) { return std::abs(across_mm(edge, point)); }

SheetPoint random_point(Random& random) { return {random.uniform(0, 420), random.uniform(0, 297)}; }

StraightEdge random_edge(Random& random) {
  StraightEdge edge{.a = random_point(random), .b = random_point(random)};
  while (distance_mm(edge.a, edge.b) < k_least_edge_mm) edge.b = random_point(random);
  return edge;
}

}  // namespace

TEST_CASE("an edge's bearing is its direction of travel, clockwise from up") {
  struct Case { SheetPoint b; double expected_deg; };
  const Case cases[] = {{{50, 40}, 0}, {{110, 40}, 45}, {{110, 100}, 90}, {{50, 160}, 180}, {{-10, 100}, 270}, {{-10, 40}, 315}};
  for (const Case& c : cases) {
    CAPTURE(c.expected_deg);
    CHECK(difference_deg(bearing({.a = {50, 100}, .b = c.b}), TrueDirection(c.expected_deg)) < k_angle_tolerance_deg);
  }
}

TEST_CASE("the body lies on the upper side, and to the left of an upright edge") {
  CHECK(body_side(k_eastward).y_mm == doctest::Approx(-1));
  CHECK(body_side(turned_round(k_eastward)).y_mm == doctest::Approx(-1));
  CHECK(body_side({.a = {50, 100}, .b = {50, 20}}).x_mm == doctest::Approx(-1));
  CHECK(body_side({.a = {50, 20}, .b = {50, 100}}).x_mm == doctest::Approx(-1));
}

TEST_CASE("the strip is 10 mm wide and runs 12 mm past the marks") {
  const EdgeOutline strip = outline(k_eastward);
  CHECK(distance_mm(strip.reading_start, {38, 100}) < k_length_tolerance_mm);
  CHECK(distance_mm(strip.reading_end, {122, 100}) < k_length_tolerance_mm);
  CHECK(distance_mm(strip.far_end, {122, 90}) < k_length_tolerance_mm);
  CHECK(distance_mm(strip.far_start, {38, 90}) < k_length_tolerance_mm);
}

TEST_CASE("a strip is lengthened until it reaches past a rose, never shortened") {
  const SheetPoint middle = midpoint(k_eastward.a, k_eastward.b);
  const double half_mm = distance_mm(k_eastward.a, k_eastward.b) / 2;
  const EdgeOutline same = lengthened(k_eastward, middle, half_mm);
  CHECK(distance_mm(same.reading_start, outline(k_eastward).reading_start) < 1e-9);
  CHECK(distance_mm(same.reading_end, outline(k_eastward).reading_end) < 1e-9);
  const EdgeOutline longer = lengthened(k_eastward, middle, half_mm + 40);
  CHECK(distance_mm(longer.reading_start, middle) == doctest::Approx(half_mm + 40));
  CHECK(distance_mm(longer.reading_end, middle) == doctest::Approx(half_mm + 40));
  CHECK(std::abs(direction_deg(longer.reading_end - longer.reading_start) - direction_deg(k_eastward.b - k_eastward.a)) < 1e-9);
  // Past one end alone, only that end grows.
  const EdgeOutline past_b = lengthened(k_eastward, k_eastward.b, k_edge_overhang_mm + 5);
  CHECK(distance_mm(past_b.reading_start, outline(k_eastward).reading_start) < 1e-9);
  CHECK(distance_mm(past_b.reading_end, k_eastward.b) == doctest::Approx(k_edge_overhang_mm + 5));
}

TEST_CASE("handles lie in the body, past the ends") {
  const SheetPoint a = handle(outline(k_eastward), EdgeEnd::a);
  const SheetPoint b = handle(outline(k_eastward), EdgeEnd::b);
  CHECK(a.y_mm == doctest::Approx(95));
  CHECK(b.y_mm == doctest::Approx(95));
  CHECK(a.x_mm < 50);
  CHECK(a.x_mm > 38);
  CHECK(b.x_mm > 110);
  CHECK(b.x_mm < 122);
}

TEST_CASE("sliding by any path leaves the bearing as it was") {
  constexpr std::uint64_t k_seed = 20260701;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int edge_count = 0; edge_count < 200; ++edge_count) {
    const StraightEdge first = random_edge(random);
    StraightEdge edge = first;
    for (int step = 0; step < 500; ++step) {
      const SheetVector by{random.uniform(-300, 300), random.uniform(-300, 300)};
      edge = step % 7 == 0 ? slid_onto(edge, random_point(random)) : slid(edge, by);
    }
    CAPTURE(edge_count);
    CHECK(difference_deg(bearing(edge), bearing(first)) < k_angle_tolerance_deg);
    CHECK(distance_mm(edge.a, edge.b) == doctest::Approx(distance_mm(first.a, first.b)));
  }
}

TEST_CASE("after the first slide the bearing keeps its every bit") {
  Random random(7);
  for (int edge_count = 0; edge_count < 200; ++edge_count) {
    const StraightEdge first = slid(random_edge(random), {0.1, -0.3});
    StraightEdge edge = first;
    for (int step = 0; step < 100; ++step) edge = slid(edge, {random.uniform(-30, 30), random.uniform(-30, 30)});
    CHECK(bearing(edge).deg() == bearing(first).deg());
  }
}

TEST_CASE("the least edge there is keeps its bearing over ten thousand slides") {
  const StraightEdge first{.a = {100.1, 100.7}, .b = {101.5, 102.2}};
  StraightEdge edge = first;
  Random random(11);
  for (int step = 0; step < 10'000; ++step) edge = slid(edge, {random.uniform(-1, 1), random.uniform(-1, 1)});
  CHECK(difference_deg(bearing(edge), bearing(first)) < k_angle_tolerance_deg);
}

TEST_CASE("a slide under the hand keeps the bearing, settling and lifting on the way") {
  constexpr std::uint64_t k_seed = 20260702;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int run = 0; run < 100; ++run) {
    const RoseInReach roses[] = {{RoseId{1}, random_point(random), 44}, {RoseId{2}, random_point(random), 30}};
    const StraightEdge first = random_edge(random);
    StraightEdge edge = first;
    for (int drag = 0; drag < 5; ++drag) {
      Slide slide(edge, roses, 0);
      SheetVector displacement;
      for (int move = 0; move < 60; ++move) {
        displacement = displacement + SheetVector{random.uniform(-10, 10), random.uniform(-10, 10)};
        const StraightEdge at = slide.at(displacement);
        CHECK(difference_deg(bearing(at), bearing(first)) < k_angle_tolerance_deg);
        CHECK(at.locked);
      }
      edge = slide.released(displacement);
      CHECK(difference_deg(bearing(edge), bearing(first)) < k_angle_tolerance_deg);
      if (edge.settled_on) {
        CHECK(distance_to_line_mm(edge, roses[edge.settled_on->value - 1].centre) < k_length_tolerance_mm);
      }
    }
  }
}

TEST_CASE("a slide takes the edge off its marks and locks it") {
  StraightEdge edge = k_eastward;
  edge.on_a = MarkId{1};
  edge.on_b = MarkId{2};
  const StraightEdge moved = slid(edge, {3, 4});
  CHECK_FALSE(moved.on_a);
  CHECK_FALSE(moved.on_b);
  CHECK(moved.locked);
  CHECK(distance_mm(moved.a, {53, 104}) < k_length_tolerance_mm);
  CHECK(distance_mm(moved.b, {113, 104}) < k_length_tolerance_mm);
}

TEST_CASE("moving an end snaps it, unlocks and unsettles the edge") {
  StraightEdge edge = slid(k_eastward, {0, 0});
  edge.settled_on = RoseId{4};
  edge.on_a = MarkId{1};
  const StraightEdge moved = with_end_at(edge, EdgeEnd::b, {50, 20}, MarkId{9});
  CHECK(difference_deg(bearing(moved), TrueDirection(0)) < k_angle_tolerance_deg);
  CHECK(moved.on_a == MarkId{1});
  CHECK(moved.on_b == MarkId{9});
  CHECK_FALSE(moved.locked);
  CHECK_FALSE(moved.settled_on);
}

TEST_CASE("an end moved onto the other leaves the edge as it was") {
  CHECK(with_end_at(k_eastward, EdgeEnd::b, {51, 100}, MarkId{9}) == k_eastward);
  CHECK(with_end_at(k_eastward, EdgeEnd::a, {110, 100}, std::nullopt) == k_eastward);
}

TEST_CASE("turning about a point keeps the ends' distances from its foot") {
  const StraightEdge edge = turned(k_eastward, {70, 100}, TrueDirection(0));
  CHECK(distance_mm(edge.a, {70, 120}) < k_length_tolerance_mm);
  CHECK(distance_mm(edge.b, {70, 60}) < k_length_tolerance_mm);
  CHECK_FALSE(edge.locked);
}

TEST_CASE("turning reaches any direction, about points on and off the line") {
  Random random(20260703);
  for (int run = 0; run < 500; ++run) {
    const StraightEdge edge = random_edge(random);
    const SheetPoint about = random_point(random);
    const TrueDirection to(random.uniform(0, 360));
    const StraightEdge after = turned(edge, about, to);
    CHECK(difference_deg(bearing(after), to) < k_angle_tolerance_deg);
    CHECK(std::abs(distance_to_line_mm(after, about) - distance_to_line_mm(edge, about)) < k_length_tolerance_mm);
    CHECK(std::abs(distance_mm(after.a, about) - distance_mm(edge.a, about)) < k_length_tolerance_mm);
  }
}

TEST_CASE("an edge turned about the rose it lies on stays settled") {
  StraightEdge edge = k_eastward;
  edge.settled_on = RoseId{4};
  CHECK(turned(edge, {80, 100}, TrueDirection(33)).settled_on == RoseId{4});
  CHECK_FALSE(turned(edge, {80, 130}, TrueDirection(33)).settled_on);
}

TEST_CASE("a mark under the point that the edge turns about keeps its end") {
  StraightEdge edge = k_eastward;
  edge.on_a = MarkId{1};
  edge.on_b = MarkId{2};
  const StraightEdge after = turned(edge, edge.a, TrueDirection(33));
  CHECK(after.on_a == MarkId{1});
  CHECK_FALSE(after.on_b);
}

TEST_CASE("turned round, an edge reads the reciprocal") {
  StraightEdge edge{.a = {50, 100}, .b = {110, 80}, .on_a = MarkId{1}, .locked = true, .settled_on = RoseId{4}};
  const StraightEdge round = turned_round(edge);
  CHECK(difference_deg(bearing(round), bearing(edge).reciprocal()) < k_angle_tolerance_deg);
  CHECK(round.on_b == MarkId{1});
  CHECK_FALSE(round.on_a);
  CHECK(round.settled_on == RoseId{4});
  CHECK(turned_round(round) == edge);
}

TEST_CASE("slid onto a point, the line passes through it, however far past the ends") {
  Random random(20260704);
  for (int run = 0; run < 500; ++run) {
    const SheetPoint point = random_point(random);
    CHECK(distance_to_line_mm(slid_onto(random_edge(random), point), point) < k_length_tolerance_mm);
  }
}

TEST_CASE("across is positive on the body's side") {
  CHECK(across_mm(k_eastward, {70, 93}) == doctest::Approx(7));
  CHECK(across_mm(k_eastward, {200, 105}) == doctest::Approx(-5));
}

TEST_CASE("the edge reaches roses under its body, 4 mm before its reading edge, and one radius past its ends") {
  struct Case { const char* what; SheetPoint centre; bool reached; };
  const Case cases[] = {{"on the edge", {80, 100}, true},
                        {"under the body", {80, 90.1}, true},
                        {"past the body", {80, 89.9}, false},
                        {"before the edge", {80, 103.9}, true},
                        {"further before it", {80, 104.1}, false},
                        {"past the end", {139.9, 100}, true},
                        {"further past the end", {140.1, 100}, false},
                        {"before the start", {20.1, 100}, true},
                        {"further before the start", {19.9, 100}, false}};
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const RoseInReach roses[] = {{RoseId{1}, c.centre, 30}};
    CHECK((rose_in_reach(k_eastward, roses, 0) != nullptr) == c.reached);
  }
  const RoseInReach further[] = {{RoseId{1}, {80, 109}, 30}};
  CHECK(rose_in_reach(k_eastward, further, 10) != nullptr);
}

TEST_CASE("of several roses the nearest takes the edge") {
  const RoseInReach roses[] = {{RoseId{1}, {80, 94}, 30}, {RoseId{2}, {80, 102}, 30}, {RoseId{3}, {138, 100}, 30}};
  REQUIRE(rose_in_reach(k_eastward, roses, 0));
  CHECK(rose_in_reach(k_eastward, roses, 0)->id == RoseId{2});
  CHECK(rose_in_reach(k_eastward, {}, 0) == nullptr);
}

TEST_CASE("the edge cuts a ring ahead of the centre in the direction of travel") {
  CHECK(distance_mm(cut(k_eastward, {80, 100}, 30), {110, 100}) < k_length_tolerance_mm);
  CHECK(distance_mm(cut(turned_round(k_eastward), {80, 100}, 30), {50, 100}) < k_length_tolerance_mm);
  // 3-4-5: a line 3 off the centre cuts a circle of 5 at 4 ahead of the foot.
  CHECK(distance_mm(cut(k_eastward, {80, 97}, 5), {84, 100}) < k_length_tolerance_mm);
}

TEST_CASE("a slide settles within reach of a rose and leaves it by the hand's own displacement") {
  const RoseInReach roses[] = {{RoseId{1}, {80, 150}, 44}};
  Slide slide(k_eastward, roses, 0);
  CHECK_FALSE(slide.at({0, 45}).settled_on);
  const StraightEdge near = slide.at({0, 47});
  CHECK(near.settled_on == RoseId{1});
  CHECK(near.a.y_mm == doctest::Approx(150));
  CHECK(slide.at({0, 59.5}).settled_on == RoseId{1});
  CHECK_FALSE(slide.at({0, 61}).settled_on);
}

TEST_CASE("a settled edge is held until it is slid 8 mm across, and then free until it has been out of reach") {
  const RoseInReach roses[] = {{RoseId{1}, {80, 100}, 44}};
  StraightEdge edge = k_eastward;
  edge.settled_on = RoseId{1};
  Slide slide(edge, roses, 0);
  const StraightEdge held = slide.at({12, 7.9});
  CHECK(held.settled_on == RoseId{1});
  CHECK(held.a.x_mm == doctest::Approx(62));
  CHECK(held.a.y_mm == doctest::Approx(100));
  CHECK_FALSE(slide.at({0, 8.1}).settled_on);
  CHECK(slide.at({0, 8.1}).a.y_mm == doctest::Approx(108.1));
  CHECK_FALSE(slide.at({0, 2}).settled_on);
  CHECK_FALSE(slide.at({0, 20}).settled_on);
  CHECK(slide.at({0, 2}).settled_on == RoseId{1});
}

TEST_CASE("on release a rose in reach takes the edge, even the one that it was lifted from") {
  const RoseInReach roses[] = {{RoseId{1}, {80, 100}, 44}};
  StraightEdge edge = k_eastward;
  edge.settled_on = RoseId{1};
  Slide lifted(edge, roses, 0);
  CHECK_FALSE(lifted.at({0, 9}).settled_on);
  CHECK(lifted.released({0, 9}).settled_on == RoseId{1});
  Slide away(edge, roses, 0);
  CHECK_FALSE(away.released({0, 11}).settled_on);
}
