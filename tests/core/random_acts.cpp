#include "tests/core/random_acts.h"

namespace fogsheet {
namespace {

const Mark* random_mark(Random& random, const Document& document) {
  if (document.marks.empty()) return nullptr;
  return &document.marks.at(static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(document.marks.size()) - 1)));
}

Date random_date(Random& random) {
  return {.year = static_cast<int>(random.whole(k_first_sheet_year, k_last_sheet_year)),
          .month = static_cast<int>(random.whole(1, 12)),
          .day = static_cast<int>(random.whole(1, 28))};
}

NewMark random_new_mark(Random& random, const Document& document) {
  const Position at = random_place_on(random, document);
  constexpr MarkKind k_kinds[] = {MarkKind::landmark, MarkKind::light, MarkKind::turn, MarkKind::danger, MarkKind::other};
  return {.name = random_name(random),
          .lat_deg = at.lat_deg,
          .lon_deg = at.lon_deg,
          .kind = k_kinds[random.whole(0, 4)],
          .radius_nm = random.uniform(0.001, k_most_danger_radius_nm)};
}

bool tried_random_act(Random& random, History& history) {
  const Document& document = history.now();
  const Mark* mark = random_mark(random, document);
  const Mark* other = random_mark(random, document);
  switch (random.whole(0, 13)) {
    case 0: case 1: case 2: case 3: case 4: return add_mark(history, random_new_mark(random, document)).ok();
    case 5: case 6: case 7: return mark && add_leg(history, mark->id, other->id).ok();
    case 8: return mark && add_leg_to_new_turn(history, mark->id, random_new_mark(random, document)).ok();
    case 9: {
      const Position at = random_place_on(random, document);
      return mark && move_mark(history, mark->id, at.lat_deg, at.lon_deg).ok();
    }
    case 10: return mark && remove_mark(history, mark->id).ok();
    case 11: return set_date(history, random_date(random)).ok();
    case 12: {
      if (random.whole(0, 3) == 0) return set_chart_note(history, std::nullopt).ok();
      return set_chart_note(history, PrintedVariation{.value_deg = random.uniform(-180, 180),
                                                      .year = static_cast<int>(random.whole(k_first_sheet_year, k_last_sheet_year)),
                                                      .annual_change_min = random.uniform(-120, 120)}).ok();
    }
    default: return random.whole(0, 19) == 0 && new_sheet(history, random_sheet(random)).ok();
  }
}

}  // namespace

std::string random_name(Random& random) {
  constexpr const char* k_characters[] = {"a", "B", "7", " ", "'", "<", "&", "\"", "é", "′", "灯", "⚓", "𝄞", "\xD7\x90"};
  std::string name = "n";
  const std::int64_t length = random.whole(0, 11);
  for (std::int64_t i = 0; i < length; ++i) name += k_characters[random.whole(0, 13)];
  return name;
}

NewSheet random_sheet(Random& random) {
  const std::vector<Paper>& papers = all_papers();
  const bool near_180 = random.whole(0, 2) == 0;
  return {.name = random.whole(0, 1) ? random_name(random) : "",
          .mid_lat_deg = random.uniform(-70, 70),
          .mid_lon_deg = near_180 ? (random.whole(0, 1) ? 179.99 : -179.99) : random.uniform(-180, 180),
          .scale = static_cast<double>(random.whole(25'000, 1'000'000)),
          .paper = papers[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(papers.size()) - 1))],
          .date = random_date(random)};
}

Position random_place_on(Random& random, const Document& document) {
  const Projection projection = projection_of(document);
  const SheetRect& neat = projection.neat_line();
  return projection.to_position({random.uniform(neat.left_mm + 0.1, neat.right_mm - 0.1),
                                 random.uniform(neat.top_mm + 0.1, neat.bottom_mm - 0.1)});
}

void do_random_act(Random& random, History& history) {
  while (!tried_random_act(random, history)) {
  }
}

Document random_document(Random& random, int acts) {
  Result<Document> first = made_sheet(random_sheet(random));
  while (!first) first = made_sheet(random_sheet(random));
  History history(*first);
  for (int act = 0; act < acts; ++act) do_random_act(random, history);
  return history.now();
}

}  // namespace fogsheet
