// Nanoseconds for one rhumb inverse, over seeded legs: run natively and as WebAssembly, whose ratio core.bench.mjs prints.
// The median of rounds, after some untimed ones: an engine first runs a module as it comes, and compiles it well later.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "core/base/random.h"
#include "core/earth/rhumb.h"

int main() {
  using namespace fogsheet;
  constexpr int k_legs = 1000;
  constexpr int k_untimed_rounds = 50;
  constexpr int k_rounds = 201;
  Random random(1852);
  std::vector<Position> places;
  for (int i = 0; i <= k_legs; ++i) places.push_back({.lat_deg = random.uniform(-75, 75), .lon_deg = random.uniform(-180, 180)});
  double sum_nm = 0;  // printed, so that no compiler leaves the work out
  std::vector<double> rounds_ns;
  for (int round = 0; round < k_untimed_rounds + k_rounds; ++round) {
    const auto begin = std::chrono::steady_clock::now();
    for (int i = 0; i < k_legs; ++i) sum_nm += rhumb_inverse(places[i], places[i + 1]).distance_nm;
    const std::chrono::duration<double, std::nano> taken = std::chrono::steady_clock::now() - begin;
    if (round >= k_untimed_rounds) rounds_ns.push_back(taken.count() / k_legs);
  }
  std::sort(rounds_ns.begin(), rounds_ns.end());
  std::printf("%.1f %.3f\n", rounds_ns[k_rounds / 2], sum_nm);
}
