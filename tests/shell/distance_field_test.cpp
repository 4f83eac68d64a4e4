// Distances from an outline: a disc, whose distances are known.
#include "shell/canvas/distance_field.h"

#include <algorithm>
#include <cmath>

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("the field of a disc is its distance to the rim, to half a texel") {
  constexpr int k_side = 41, k_range = 6;
  constexpr double k_radius = 11.3;
  std::vector<std::uint8_t> coverage(k_side * k_side);
  const auto inward = [&](int x, int y) { return k_radius - std::hypot(x - 20, y - 20); };
  for (int y = 0; y < k_side; ++y)
    for (int x = 0; x < k_side; ++x) coverage[y * k_side + x] = static_cast<std::uint8_t>(std::clamp(std::lround(255 * (inward(x, y) + 0.5)), 0L, 255L));
  const std::vector<std::uint8_t> field = distance_field(coverage, k_side, k_side, k_range);
  for (int y = 0; y < k_side; ++y)
    for (int x = 0; x < k_side; ++x) {
      if (std::abs(inward(x, y)) > k_range - 1) continue;
      CHECK(std::abs((field[y * k_side + x] - 128) * k_range / 127.0 - inward(x, y)) < 0.5);
    }
}

TEST_CASE("nothing covered is far outside, all covered far inside") {
  CHECK(distance_field(std::vector<std::uint8_t>(64, 0), 8, 8, 4)[27] == 0);
  CHECK(distance_field(std::vector<std::uint8_t>(64, 255), 8, 8, 4)[27] == 255);
}
