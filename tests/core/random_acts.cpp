#include "tests/core/random_acts.h"

namespace fogsheet {
namespace {

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
          .radius_nm = random.uniform(0.001, k_most_danger_radius_nm),
          .height_m = random.whole(0, 2) == 0 ? random.uniform(0, k_most_height_m) : 0,
          .note = random.whole(0, 2) == 0 ? random_name(random) : ""};
}

template <class Row>
const Row* random_row(Random& random, const Table<Row>& table) {
  if (table.empty()) return nullptr;
  return &table.at(static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(table.size()) - 1)));
}

std::size_t random_place(Random& random) { return static_cast<std::size_t>(random.whole(0, 20)); }

TrueDirection random_direction(Random& random) { return TrueDirection(random.uniform(0, 360)); }

MarkChange random_change(Random& random, const Document& document) {
  const NewMark wanted = random_new_mark(random, document);
  MarkChange change;
  if (random.whole(0, 1)) change.name = wanted.name;
  if (random.whole(0, 1)) change.at = Position{wanted.lat_deg, wanted.lon_deg};
  if (random.whole(0, 1)) change.height_m = wanted.height_m;
  if (random.whole(0, 1)) change.note = wanted.note;
  if (random.whole(0, 2) == 0) {
    change.kind = wanted.kind;
    change.radius_nm = wanted.radius_nm;
  }
  return change;
}

bool tried_mark_act(Random& random, History& history) {
  const Document& document = history.now();
  const Mark* mark = random_row(random, document.marks);
  const Mark* other = random_row(random, document.marks);
  if (!mark) return false;
  switch (random.whole(0, 4)) {
    case 0: return change_mark(history, mark->id, random_change(random, document)).ok();
    case 1: return reorder_mark(history, mark->id, random_place(random)).ok();
    case 2: return duplicate_mark(history, mark->id, random_name(random)).ok();
    case 3: return add_mark_by_bearing(history, mark->id, random_direction(random), random.uniform(0.01, 3), random_new_mark(random, document)).ok();
    default: return add_mark_by_crossing(history, {mark->id, random_direction(random)}, {other->id, random_direction(random)}, random_new_mark(random, document)).ok();
  }
}

bool tried_leg_act(Random& random, History& history) {
  const Leg* leg = random_row(random, history.now().legs);
  if (!leg) return false;
  constexpr Reference k_references[] = {Reference::true_north, Reference::magnetic, Reference::compass};
  switch (random.whole(0, 5)) {
    case 0: return insert_mark(history, leg->id, random_new_mark(random, history.now())).ok();
    case 1: return reorder_leg(history, leg->id, random_place(random)).ok();
    case 2: return reverse_leg(history, leg->id).ok();
    case 3: return remove_leg(history, leg->id).ok();
    case 4: return write_on_leg(history, leg->id, random.uniform(0, 359.9), k_references[random.whole(0, 2)]).ok();
    default: return rub_out_reading(history, leg->id).ok();
  }
}

bool tried_rose_act(Random& random, History& history) {
  const Position at = random_place_on(random, history.now());
  const Rose* rose = random_row(random, history.now().roses);
  const double radius_mm = random.uniform(k_least_rose_radius_mm, k_most_rose_radius_mm);
  switch (random.whole(0, 4)) {
    case 0: return add_rose(history, at.lat_deg, at.lon_deg, radius_mm).ok();
    case 1: return rose && change_rose(history, rose->id, {.at = at}).ok();
    case 2: return rose && change_rose(history, rose->id, {.radius_mm = radius_mm}).ok();
    case 3: return rose && change_rose(history, rose->id, {.own_place = !rose->own_place}).ok();
    default: return rose && remove_rose(history, rose->id).ok();
  }
}

bool tried_note_act(Random& random, History& history) {
  const Position at = random_place_on(random, history.now());
  const TextNote* note = random_row(random, history.now().text_notes);
  switch (random.whole(0, 3)) {
    case 0: return add_text_note(history, at.lat_deg, at.lon_deg, random_name(random) + "\n" + random_name(random)).ok();
    case 1: return note && change_text_note(history, note->id, {.at = at}).ok();
    case 2: return note && change_text_note(history, note->id, {.text = random_name(random)}).ok();
    default: return note && remove_text_note(history, note->id).ok();
  }
}

bool tried_card_act(Random& random, History& history) {
  if (random.whole(0, 3) == 0) return drop_card(history).ok();
  KeptCard card{.boat = random_name(random), .compass = random_name(random), .date = random_date(random), .source = static_cast<CardSource>(random.whole(0, 2))};
  for (int heading_deg = 0; heading_deg < 360; heading_deg += static_cast<int>(random.whole(1, 90))) card.points.push_back({static_cast<double>(heading_deg), random.uniform(-60, 60), random.uniform(0, 20)});
  if (random.whole(0, 1) == 0) card.field = CardField{random.uniform(0, 40'000), random.uniform(-90, 90)};
  card.in_links = random.whole(0, 1) == 0;
  return use_card(history, std::move(card)).ok();
}

bool tried_sheet_act(Random& random, History& history) {
  const Sheet& sheet = history.now().sheet;
  const Position middle = unquantise(sheet.middle);
  if (random.whole(0, 1) == 0)
    return reshape_sheet(history, {middle.lat_deg + random.uniform(-0.01, 0.01), middle.lon_deg, sheet.scale * random.uniform(0.9, 1.3), sheet.paper}).ok();
  return describe_sheet(history, {.name = random_name(random), .note = random_name(random), .signs = random.whole(0, 1) ? SignSet::a : SignSet::b}).ok();
}

// Another sheet altogether: what a difference between documents must be able to tell too.
bool tried_new_sheet(Random& random, History& history) {
  Result<Document> made = made_sheet(random_sheet(random));
  if (!made) return false;
  std::string name = made->sheet.name;
  history.commit(std::move(made).value(), {Act::new_sheet, std::move(name)});
  return true;
}

bool tried_random_act(Random& random, History& history) {
  const Document& document = history.now();
  const Mark* mark = random_row(random, document.marks);
  const Mark* other = random_row(random, document.marks);
  switch (random.whole(0, 19)) {
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
    case 13: case 14: return tried_mark_act(random, history);
    case 15: case 16: return tried_leg_act(random, history);
    case 17: return tried_rose_act(random, history);
    case 18: {
      const std::int64_t which = random.whole(0, 2);
      return which == 0 ? tried_note_act(random, history) : which == 1 ? tried_card_act(random, history) : tried_sheet_act(random, history);
    }
    default: return random.whole(0, 19) == 0 && tried_new_sheet(random, history);
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
