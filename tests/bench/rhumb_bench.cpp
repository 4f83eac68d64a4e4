// Nanoseconds for one rhumb inverse, over seeded legs: run natively and as WebAssembly, whose ratio core.bench.mjs prints.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "core/base/random.h"
#include "core/earth/rhumb.h"

int main() {
  using namespace fogsheet;
  constexpr int k_legs = 1000;
  constexpr int k_rounds = 200;
  Random random(1852);
  std::vector<Position> places;
  for (int i = 0; i <= k_legs; ++i) places.push_back({.lat_deg = random.uniform(-75, 75), .lon_deg = random.uniform(-180, 180)});
  double sum_nm = 0;  // printed, so that no compiler leaves the work out
  const auto begin = std::chrono::steady_clock::now();
  for (int round = 0; round < k_rounds; ++round)
    for (int i = 0; i < k_legs; ++i) sum_nm += rhumb_inverse(places[i], places[i + 1]).distance_nm;
  const std::chrono::duration<double, std::nano> taken = std::chrono::steady_clock::now() - begin;
  std::printf("%.1f %.3f\n", taken.count() / (k_legs * k_rounds), sum_nm);
}
