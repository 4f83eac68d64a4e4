#include "tests/bench/link_routes.h"

#include <array>
#include <cmath>
#include <string>

#include "core/base/random.h"
#include "core/document/actions.h"

namespace fogsheet {

Document seeded_route(std::uint64_t seed, int marks) {
  constexpr std::array k_firsts = {"Gull", "Tolver", "Sarn", "Gannet", "Pellow", "Brim", "Anvil", "Kettle", "Widow", "Nether", "Ox", "Harl", "Quern", "Stane", "Vigil", "Lamb"};
  constexpr std::array k_seconds = {"Rock", "Light", "Head", "Post", "Ledge", "Point", "Beacon", "Spit", "Stack", "Perch", "Bank", "Island"};
  Random random(seed);
  const auto one_of = [&](const auto& list) { return std::string(list[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(list.size()) - 1))]); };
  const Position middle{std::round(random.uniform(-60, 60) * 600) / 600, std::round(random.uniform(-180, 179) * 600) / 600};
  History history(made_sheet({.name = one_of(k_firsts) + " Sound", .mid_lat_deg = middle.lat_deg, .mid_lon_deg = middle.lon_deg, .scale = 100'000, .date = {2026, 6, 20}}).value());
  const Projection projection = projection_of(history.now());
  const SheetRect water = projection.neat_line();
  std::optional<MarkId> last;
  for (int i = 0; i < marks; ++i) {
    const Position at = projection.to_position({random.uniform(water.left_mm, water.right_mm), random.uniform(water.top_mm, water.bottom_mm)});
    std::string name = one_of(k_firsts) + " " + one_of(k_seconds);
    if (random.whole(0, 3) == 0) name += " " + std::to_string(random.whole(1, 9));
    const MarkId mark = *add_mark(history, {.name = name, .lat_deg = at.lat_deg, .lon_deg = at.lon_deg});
    if (last && !add_leg(history, *last, mark)) continue;
    last = mark;
  }
  return history.now();
}

double least_characters(const Document& route) {
  const Projection projection = projection_of(route);
  const SheetRect water = projection.neat_line();
  const GridPosition north_west = quantise(projection.to_position({water.left_mm, water.top_mm})), south_east = quantise(projection.to_position({water.right_mm, water.bottom_mm}));
  constexpr double k_circle = 216'000'000;
  const double east = std::fmod(static_cast<double>(south_east.lon) - north_west.lon + k_circle, k_circle);
  const double cells = std::abs(static_cast<double>(north_west.lat) - south_east.lat) * east;
  double counts[256] = {}, bytes = 0;
  for (const Mark& mark : route.marks)
    for (const char c : mark.name) {
      ++counts[static_cast<unsigned char>(c)];
      ++bytes;
    }
  double names_bits = 0;
  for (const double count : counts)
    if (count > 0) names_bits += count * std::log2(bytes / count);
  const auto marks = static_cast<double>(route.marks.size());
  return (marks * std::log2(cells) + names_bits + marks) / 6;
}

}  // namespace fogsheet
