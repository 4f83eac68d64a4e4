// Labels: none over another, and thousands of them quickly enough to count.
#include "core/figure/label_placer.h"

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("turned boxes overlap where their corners say so") {
  const Box flat{.middle = {0, 0}, .half_width_mm = 10, .half_height_mm = 2};
  CHECK(overlap(flat, {.middle = {12, 0}, .half_width_mm = 3, .half_height_mm = 1}));
  CHECK_FALSE(overlap(flat, {.middle = {13.1, 0}, .half_width_mm = 3, .half_height_mm = 1}));
  // A box on its corner reaches half its diagonal.
  CHECK(overlap(flat, {.middle = {0, 4}, .half_width_mm = 2, .half_height_mm = 2, .turn_deg = 45}));
  CHECK_FALSE(overlap(flat, {.middle = {0, 4}, .half_width_mm = 1.3, .half_height_mm = 1.3, .turn_deg = 45}));
  CHECK_FALSE(overlap(flat, {.middle = {0, 5}, .half_width_mm = 2, .half_height_mm = 2, .turn_deg = 45}));
}

TEST_CASE("a label goes where it covers nothing, else goes without a place") {
  LabelPlacer placer({0, 0, 100, 100});
  placer.block({.middle = {50, 50}, .half_width_mm = 5, .half_height_mm = 5});
  placer.discourage({.middle = {70, 50}, .half_width_mm = 5, .half_height_mm = 5});
  const Box over{.middle = {52, 50}, .half_width_mm = 4, .half_height_mm = 2}, less{.middle = {70, 50}, .half_width_mm = 4, .half_height_mm = 2},
      free{.middle = {30, 50}, .half_width_mm = 4, .half_height_mm = 2}, outside{.middle = {1, 50}, .half_width_mm = 4, .half_height_mm = 2};
  CHECK(placer.place(std::vector<Box>{over, less, free}) == 2);
  CHECK(placer.place(std::vector<Box>{over, less, free}) == 1);  // the free one is taken now
  CHECK_FALSE(placer.place(std::vector<Box>{over, less, free, outside}));
}

TEST_CASE("no two placed labels overlap, whatever lies under them") {
  Random random(20260621);
  LabelPlacer placer({0, 0, 400, 280});
  std::vector<Box> placed;
  const auto anywhere = [&] { return SheetPoint{random.uniform(0, 400), random.uniform(0, 280)}; };
  for (int i = 0; i < 3000; ++i)
    placer.discourage({.middle = anywhere(), .half_width_mm = random.uniform(1, 200), .half_height_mm = 0.3, .turn_deg = random.uniform(0, 180)});
  for (int i = 0; i < 3000; ++i) {
    std::vector<Box> places;
    for (int p = 0; p < 8; ++p) places.push_back({.middle = anywhere(), .half_width_mm = 6, .half_height_mm = 1.6, .turn_deg = random.uniform(-90, 90)});
    if (const auto place = placer.place(places)) placed.push_back(places[*place]);
  }
  CHECK(placed.size() > 500);
  for (std::size_t i = 0; i < placed.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) REQUIRE_FALSE(overlap(placed[i], placed[j]));
}
