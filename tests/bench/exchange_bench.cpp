// Milliseconds to read a track of 10 000 and of 100 000 points, thinned and ready to be put on a sheet; as WebAssembly, the
// medians of interleaved rounds. The track wanders, so that thinning has something to do; each point has its height and time.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "core/base/number_text.h"
#include "core/base/random.h"
#include "core/exchange/gpx_reader.h"

namespace {

std::string track(int points) {
  fogsheet::Random random(100'000);
  std::string text = "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"bench\"><trk><trkseg>\n";
  double lat_deg = 44, lon_deg = -31, course = 0;
  for (int i = 0; i < points; ++i) {
    course += random.uniform(-0.05, 0.05);
    lat_deg += 3e-5 * std::cos(course);
    lon_deg += 3e-5 * std::sin(course);
    text += "<trkpt lat=\"" + fogsheet::print_fixed(lat_deg, 7) + "\" lon=\"" + fogsheet::print_fixed(lon_deg, 7) + "\"><ele>1.5</ele><time>2026-11-25T10:00:00Z</time></trkpt>\n";
  }
  return text + "</trkseg></trk></gpx>\n";
}

}  // namespace

int main() {
  constexpr int k_rounds = 7;
  const std::string short_track = track(10'000), long_track = track(100'000);
  std::vector<double> short_ms, long_ms;
  std::size_t kept = 0;
  double within_m = 0;
  for (int round = 0; round <= k_rounds; ++round)  // the first is not counted: an engine compiles as it goes
    for (const auto& [text, taken] : {std::pair(&short_track, &short_ms), std::pair(&long_track, &long_ms)}) {
      const auto begin = std::chrono::steady_clock::now();
      const fogsheet::Result<fogsheet::MarksAndLines> read = fogsheet::read_gpx(*text);
      const std::chrono::duration<double, std::milli> time = std::chrono::steady_clock::now() - begin;
      if (round > 0) taken->push_back(time.count());
      kept = read->lines.at(0).points.size();
      within_m = read->lines.at(0).within_m;
    }
  for (std::vector<double>* taken : {&short_ms, &long_ms}) std::sort(taken->begin(), taken->end());
  std::printf("10000 points: %.2f ms\n100000 points: %.2f ms\nkept: %zu within %.1f m, of %.1f MB\n", short_ms[k_rounds / 2], long_ms[k_rounds / 2], kept, within_m, static_cast<double>(long_track.size()) / 1e6);
}
