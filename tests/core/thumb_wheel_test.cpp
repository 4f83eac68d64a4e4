// The wheel's graduations: where they stand, and that its rim goes along with the thumb.
#include "core/figure/thumb_wheel.h"

#include <vector>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

/// The places of its whole degrees' figures.
std::vector<double> figures(double turned_deg) {
  std::vector<double> places;
  Figure figure;
  add_thumb_wheel(figure, 0, turned_deg);
  for (const Shape& shape : figure.on(Layer::labels))
    if (const auto* text = std::get_if<Text>(&shape); text && text->anchor == Anchor::middle) places.push_back(text->at.x_mm);
  return places;
}

}  // namespace

TEST_CASE("a whole degree is ten graduations of 12 px from the middle, either way") {
  const std::vector<double> places = figures(0.5);
  REQUIRE(places.size() == 2);
  CHECK(places[0] - places[1] == doctest::Approx(120));
  CHECK((places[0] + places[1]) / 2 == doctest::Approx((k_wheel_left + k_wheel_width) / 2));
}

TEST_CASE("turned clockwise the rim moves to the right, by a graduation a tenth") {
  const std::vector<double> before = figures(0.3), after = figures(0.4);
  REQUIRE(before.size() == after.size());
  for (std::size_t i = 0; i < before.size(); ++i) CHECK(after[i] - before[i] == doctest::Approx(12));
}
