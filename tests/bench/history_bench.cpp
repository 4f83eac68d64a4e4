// A long past of a full sheet: what a commit takes, what ten thousand steps weigh, and what it takes to open the sheet with
// its past beside opening it without. Prints one line each: a name, a number, its unit.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <string>
#include <vector>

#ifdef __EMSCRIPTEN__
#include <unistd.h>
#endif

#include "core/base/random.h"
#include "core/document/actions.h"
#include "shell/keeper/records.h"

using namespace fogsheet;

namespace {

constexpr int k_marks = 10'000;

double now_ms() { return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

/// The heap as it has grown so far; 0 where it can't be told.
double heap_mb() {
#ifdef __EMSCRIPTEN__
  return reinterpret_cast<std::uintptr_t>(sbrk(0)) / 1e6;
#else
  return 0;
#endif
}

Document full_sheet(Random& random) {
  Document sheet = made_sheet({.name = "Full", .mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 200'000, .paper = Paper::a3_across, .date = {2026, 11, 25}}).value();
  const auto around = [&](std::int32_t middle, std::int64_t reach) { return middle + static_cast<std::int32_t>(random.whole(-reach, reach)); };
  std::vector<Mark> marks;
  for (int i = 0; i < k_marks; ++i)
    marks.push_back({.id = {sheet.next_id++}, .name = "Gull Rock " + std::to_string(i), .at = {around(sheet.sheet.middle.lat, 90'000), around(sheet.sheet.middle.lon, 180'000)}});
  sheet.marks = Table<Mark>::of(std::move(marks));
  return sheet;
}

void say(const char* what, double value, const char* unit) { std::printf("%s: %.3f %s\n", what, value, unit); }

template <class Do>
double median_ms(int rounds, Do go) {
  std::vector<double> times;
  for (int i = 0; i < rounds; ++i) {
    const double start = now_ms();
    go();
    times.push_back(now_ms() - start);
  }
  std::nth_element(times.begin(), times.begin() + rounds / 2, times.end());
  return times[static_cast<std::size_t>(rounds) / 2];
}

StoreBytes record_of(History& history) { return written(SheetRecord{.key = {1}, .history = history.kept()}); }

}  // namespace

int main() {
  Random random(7);
  History history(full_sheet(random));
  const StoreBytes without = record_of(history);
  const double heap_before_mb = heap_mb();
  const double start = now_ms();
  for (std::size_t step = 0; step < History::k_most_steps; ++step) {
    const Mark& mark = history.now().marks.at(static_cast<std::size_t>(random.whole(0, k_marks - 1)));
    const Position at = unquantise(mark.at);
    if (!move_mark(history, mark.id, at.lat_deg + 0.0001, at.lon_deg)) return 1;
    written(JournalRecord{.change = history.change()});
    history.mark();
  }
  say("commit, with its record", (now_ms() - start) / History::k_most_steps, "ms");
  say("heap of 10000 steps", heap_mb() - heap_before_mb, "MB");
  const double keep_start = now_ms();
  const StoreBytes with = record_of(history);
  say("whole sheet written", now_ms() - keep_start, "ms");
  say("whole sheet", static_cast<double>(with.size()) / 1e3, "kB");

  const auto open = [](const StoreBytes& bytes) { return median_ms(9, [&] { History opened(std::move(read_sheet_record(bytes)).value().history); }); };
  const double without_ms = open(without), with_ms = open(with);
  say("opened without its past", without_ms, "ms");
  say("opened with its past", with_ms, "ms");
  say("with its past beside without", with_ms / without_ms, "times");

  History opened(std::move(read_sheet_record(with)).value().history);
  const double undo_start = now_ms();
  opened.undo();
  say("first undo after opening", now_ms() - undo_start, "ms");
  return opened.last_state() == History::k_most_steps ? 0 : 1;
}
