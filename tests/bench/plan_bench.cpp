// Milliseconds for the whole plan of a passage of a thousand legs, worked out anew after a mark was moved: rhumb lines, runs in a
// stream, sums to the compass, doubts. Run natively and as WebAssembly by core.bench.mjs; the median of rounds.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "core/base/random.h"
#include "core/document/actions.h"
#include "core/document/facts.h"
#include "core/passage/passage_plan.h"

int main() {
  using namespace fogsheet;
  constexpr int k_legs = 1000;
  constexpr int k_untimed_rounds = 10;
  constexpr int k_rounds = 51;
  Random random(1001);
  const Document empty = made_sheet({.name = "bench", .mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 1'000'000, .paper = Paper::a3_across, .date = {2026, 6, 20}}).value();
  std::vector<Mark> marks;
  std::vector<Leg> legs;
  for (std::uint32_t i = 0; i <= k_legs; ++i) {
    marks.push_back({.id = {i + 1}, .name = "turn", .kind = MarkKind::turn, .at = quantise({44 + random.uniform(-0.6, 0.6), -31 + random.uniform(-1, 1)})});
    if (i > 0) legs.push_back({.id = {k_legs + 1 + i}, .from = {i}, .to = {i + 1}});
  }
  Document document = empty;
  document.marks = Table<Mark>::of(std::move(marks));
  document.legs = Table<Leg>::of(std::move(legs));
  document.next_id = 3 * k_legs;
  History history(document);
  Passage wanted{.speed_kn = 6, .leeway = PlannedLeeway{340, 2}, .stream = {.entry = StreamEntry::steady, .steady = {TrueDirection(352), 0.7}}, .date = {2026, 6, 20}, .time = ClockTime{400}};
  const PassageId id = make_passage(history, wanted).value();
  const DeviationCard card = DeviationCard::make({{CompassDirection(0), {-2}}, {CompassDirection(90), {4}}, {CompassDirection(180), {4}}, {CompassDirection(270), {-4}}}).value();
  const VariationInUse variation = variation_of(history.now(), Rounding::whole_degrees);
  const PlanNeeds needs{.variation_of = [&](const Leg&) -> const VariationInUse& { return variation; }, .card = &card};
  double sum = 0;  // printed, so that no compiler leaves the work out
  std::vector<double> rounds_ms;
  PassagePlan plan;
  for (int round = 0; round < k_untimed_rounds + k_rounds; ++round) {
    const MarkId moved{static_cast<std::uint32_t>(random.whole(1, k_legs))};
    if (!move_mark(history, moved, 44 + random.uniform(-0.6, 0.6), -31 + random.uniform(-1, 1)).ok()) return 1;
    const Passage& passage = *find(*history.now().passages, id);
    const auto begin = std::chrono::steady_clock::now();
    plan = plan_of(history.now(), passage, needs, false, round > 0 ? &plan : nullptr);
    const std::chrono::duration<double, std::milli> taken = std::chrono::steady_clock::now() - begin;
    sum += plan.hours;
    if (!plan.complete) return 2;
    if (round >= k_untimed_rounds) rounds_ms.push_back(taken.count());
  }
  std::sort(rounds_ms.begin(), rounds_ms.end());
  std::printf("%.3f %.3f\n", rounds_ms[k_rounds / 2], sum);
}
