// Milliseconds for a thousand legs run through a table of streams one after another, with reckoning and doubt left out: what an
// edit of a passage costs. Half of them on one heading, half hour by hour. Run natively and as WebAssembly by core.bench.mjs.
// The median of rounds, after some untimed ones: an engine first runs a module as it comes, and compiles it well later.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "core/base/random.h"
#include "core/passage/leg_run.h"

int main() {
  using namespace fogsheet;
  constexpr int k_legs = 1000;
  constexpr int k_untimed_rounds = 20;
  constexpr int k_rounds = 101;
  Random random(1000);
  TidalStreams streams{.kind = TidalStreams::Kind::by_hours, .steady = {}, .hours = {}, .high_waters = {}};
  for (int hour = -k_stream_hours; hour <= k_stream_hours; ++hour)
    streams.hours.push_back({.hour = hour, .stream = {.set = TrueDirection(random.uniform(0, 360)), .drift_kn = random.uniform(0, 3)}});
  for (int i = 0; i < 400; ++i) streams.high_waters.push_back({i * 44'700});
  std::vector<LegPlan> legs;
  for (int i = 0; i < k_legs; ++i) {
    const Way way = i % 2 == 0 ? Way::one_heading : Way::hour_by_hour;
    legs.push_back({.track = TrueDirection(random.uniform(0, 360)),
                    .distance_nm = random.uniform(2, 30),
                    .speed_kn = random.uniform(4, 8),
                    .way = way,
                    .streams = nullptr});
  }
  double sum_h = 0;  // printed, so that no compiler leaves the work out
  std::vector<double> rounds_ms;
  for (int round = 0; round < k_untimed_rounds + k_rounds; ++round) {
    const auto begin = std::chrono::steady_clock::now();
    const StreamTimetable table(streams);
    double at_s = 0;
    for (LegPlan& leg : legs) {
      leg.streams = &table;
      const Result<LegRun> run = run_leg(leg, at_s);
      at_s = run.value().arrival_s;
    }
    sum_h += at_s / k_seconds_per_hour;
    const std::chrono::duration<double, std::milli> taken = std::chrono::steady_clock::now() - begin;
    if (round >= k_untimed_rounds) rounds_ms.push_back(taken.count());
  }
  std::sort(rounds_ms.begin(), rounds_ms.end());
  std::printf("%.3f %.3f\n", rounds_ms[k_rounds / 2], sum_h);
}
