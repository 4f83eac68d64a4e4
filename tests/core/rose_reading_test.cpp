// What the rings say: the true ring as the edge lies, the magnetic ring turned by the variation as used.
#include "core/instruments/rose_reading.h"

#include <cmath>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr StraightEdge k_eastward{.a = {50, 100}, .b = {110, 100}};
constexpr double k_tolerance_deg = 1e-9;

}  // namespace

TEST_CASE("the magnetic ring is turned by the variation as used") {
  // 9.42 deg west is used as 9 deg west: the compass reads more than true by 9, not by 9.42.
  const RoseReading reading = read_rose(k_eastward, Variation{-9.42}, Rounding::whole_degrees);
  CHECK(std::abs(reading.on_true_ring.deg() - 90) < k_tolerance_deg);
  REQUIRE(reading.on_magnetic_ring);
  CHECK(std::abs(reading.on_magnetic_ring->deg() - 99) < k_tolerance_deg);
  REQUIRE(reading.chain.rows.size() == 3);
  CHECK(reading.chain.rows[2].shown_deg == 99);
}

TEST_CASE("by tenths the ring is turned by tenths") {
  const RoseReading reading = read_rose(k_eastward, Variation{-9.42}, Rounding::tenths);
  REQUIRE(reading.on_magnetic_ring);
  CHECK(std::abs(reading.on_magnetic_ring->deg() - 99.4) < k_tolerance_deg);
}

TEST_CASE("without a variation only the true ring is read") {
  const RoseReading reading = read_rose(k_eastward, std::nullopt, Rounding::whole_degrees);
  CHECK_FALSE(reading.on_magnetic_ring);
  REQUIRE(reading.chain.rows.size() == 1);
  CHECK(reading.chain.rows[0].term == ChainTerm::true_direction);
  CHECK(reading.chain.rows[0].shown_deg == 90);
}
