#include "tests/core/kept_texts.h"

namespace fogsheet {

Document document_of_format_1() {
  Document document;
  document.sheet = {.name = "Gull Sound",
                    .middle = {26'500'000, -107'999'000},  // 44°10.0'N 179°59.9'W
                    .scale = 100'000,
                    .paper = Paper::a4_across,
                    .date = {2026, 7, 1},
                    .datum = "WGS84"};
  document.chart_note = ChartNote{.printed = {.value_deg = -9.42, .year = 2024, .annual_change_min = 12.5},
                                  .entered_at = {26'500'000, -107'000'000}};
  document.marks = Table<Mark>::of({
      {.id = {2}, .name = "Gull Rock", .kind = MarkKind::landmark, .at = {26'512'345, -107'950'000}},
      {.id = {3}, .name = "Off Sarn ′灯", .kind = MarkKind::light, .at = {26'480'000, 107'960'001}},
      {.id = {4}, .name = "Ledge", .kind = MarkKind::danger, .at = {26'500'500, -107'999'500}, .radius_nm = 0.25},
      {.id = {7}, .name = "1", .kind = MarkKind::turn, .at = {26'490'000, -107'999'000}},
      {.id = {5}, .name = "<b>", .kind = MarkKind::other, .at = {26'490'000, -107'998'000}},
  });
  document.legs = Table<Leg>::of({{.id = {6}, .from = {2}, .to = {3}}, {.id = {8}, .from = {3}, .to = {7}}, {.id = {9}, .from = {7}, .to = {2}}});
  document.roses = Table<Rose>::of({{.id = {1}, .at = {26'470'000, -107'960'000}, .radius_mm = 38.9}});
  document.next_id = 12;
  return document;
}

Document document_with_details() {
  Document document = document_of_format_1();
  Mark light = *document.marks.find({3});
  light.height_m = 23.5;
  Mark turn = *document.marks.find({7});
  turn.note = "leave it\nto port";
  document.marks = document.marks.replaced(light).replaced(turn);
  Leg leg = *document.legs.find({8});
  leg.written = WrittenReading{.bearing_deg = 97, .reference = Reference::magnetic, .revision = 9, .from_at = light.at, .to_at = {26'490'100, -107'999'000}};
  document.legs = document.legs.replaced(leg);
  Rose rose = document.roses.at(0);
  rose.own_place = true;
  document.roses = document.roses.replaced(rose);
  document.sheet.note = "read on the 2024 chart";
  document.sheet.signs = SignSet::b;
  document.text_notes = Table<TextNote>::of({{.id = {10}, .at = {26'500'000, -107'990'000}, .text = "eddy here\non the ebb"}});
  return document;
}

Document document_with_compass() {
  Document document = document_with_details();
  document.compass = Shared(KeptCard{.boat = "Pipit", .compass = "Bulkhead ′灯", .date = {2026, 5, 1}, .source = CardSource::swing, .points = {{0, -1.25, 0.5}, {90, 4, 0.75}, {271, 0, 0}}, .field = CardField{18'123, -67.25}, .in_links = false});
  return document;
}

Document document_with_passages() {
  const Date day{2026, 6, 20};
  Document document = document_with_compass();
  const PlannedStream by_hour{.entry = StreamEntry::by_hour, .hours = {{-3, {TrueDirection(352.5), 0.7}}, {0, {TrueDirection(10), 1.25}}}, .source = "atlas"};
  Passage full{.id = {1}, .name = "outward 灯"};
  full.legs = {{.leg = {6}, .name = "Gull Rock – Off Sarn", .speed_kn = 5.25, .leeway = PlannedLeeway{340, 2.5}, .stream = by_hour, .way = Way::hour_by_hour, .leave = MarkToLeave{{2}, Side::port, 0.4}, .look_for = "white post", .triangle = true},
               {.leg = {8}, .name = "Off Sarn – 1"}};
  full.speed_kn = 5;
  full.leeway = PlannedLeeway{340, 2};
  full.stream = {.entry = StreamEntry::steady, .steady = {TrueDirection(352), 0.7}, .source = "tidal atlas"};
  full.date = day;
  full.time = ClockTime{400};
  full.zone = {60, "BST"};
  full.home_date = Date{2026, 6, 21};
  full.home_time = ClockTime{1020};
  full.tide_place = "Pellow";
  full.tides = {{.date = day, .time = {312}, .is_high = true, .height_m = 4.1}, {.date = day, .time = {684}, .is_high = false}};
  full.visibility_nm = 0.5;
  full.plot_every_min = 30;
  full.turn_back = "if not seen by 0733";
  full.note = "first\nsecond";
  full.deck_log = {{.kind = DeckEntryKind::departed, .date = day, .time = {402}, .log_nm = 1204.5},
                   {.kind = DeckEntryKind::reading, .date = day, .time = {420}, .note = "fog"},
                   {.kind = DeckEntryKind::seen, .date = day, .time = {451}, .log_nm = 1208.66, .side = Side::port, .distance_nm = 0.35}};
  document.passages = Shared(Passages{.all = {full, Passage{.id = {3}, .way = Way::hour_by_hour, .date = {2026, 7, 1}}}, .in_hand = {3}, .next_id = 4});
  return document;
}

}  // namespace fogsheet
