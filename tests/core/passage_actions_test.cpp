// Passages on a sheet: what each action makes, and what becomes of a passage when the legs under it change.
#include "core/document/passage_actions.h"

#include "core/document/actions.h"
#include "core/document/difference.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_middle_lat = 44 + 10 / 60.0, k_middle_lon = -(31 + 20 / 60.0);

History usual_history() { return History(made_sheet({.name = "Sound", .mid_lat_deg = k_middle_lat, .mid_lon_deg = k_middle_lon, .date = {2026, 7, 1}}).value()); }

MarkId turn_at(History& history, const char* name, double north_min, double east_min) {
  return add_mark(history, {.name = name, .lat_deg = k_middle_lat + north_min / 60, .lon_deg = k_middle_lon + east_min / 60, .kind = MarkKind::turn}).value();
}

// A, B, C, D in a row, and a leg from B to nowhere in that row.
struct Drawn {
  History history = usual_history();
  MarkId a = turn_at(history, "A", 0, -4), b = turn_at(history, "B", 1, -2), c = turn_at(history, "C", 0, 0), d = turn_at(history, "D", 2, 1);
  LegId ab = add_leg(history, a, b).value(), bc = add_leg(history, b, c).value(), cd = add_leg(history, c, d).value();
  PassageId passage = make_passage(history, {.name = "over", .date = {2026, 7, 1}}).value();

  const Passage& it() const { return *find(*history.now().passages, passage); }
  std::vector<LegId> legs() const {
    std::vector<LegId> ids;
    for (const PassageLeg& leg : it().legs) ids.push_back(leg.leg);
    return ids;
  }
};

}  // namespace

TEST_CASE("a passage takes the legs that follow one another") {
  Drawn drawn;
  CHECK(drawn.legs() == std::vector{drawn.ab, drawn.bc, drawn.cd});
  CHECK(drawn.it().legs[1].name == "B – C");
  CHECK(drawn.history.now().passages->in_hand == drawn.passage);
  CHECK(drawn.history.undo_label()->act == Act::make_passage);

  SUBCASE("however they were drawn") {
    History history = usual_history();
    const MarkId a = turn_at(history, "A", 0, -4), b = turn_at(history, "B", 1, -2), c = turn_at(history, "C", 0, 0);
    const LegId second = add_leg(history, b, c).value(), first = add_leg(history, a, b).value();
    CHECK(legs_in_a_row(history.now()) == std::vector{first, second});
    const LegId back = add_leg(history, c, a).value();  // round and round: from the first in the list, each once
    CHECK(legs_in_a_row(history.now()) == std::vector{second, back, first});
  }
  SUBCASE("and there is none without a leg") {
    History history = usual_history();
    CHECK(make_passage(history, {}).problem().fault == Fault::no_legs_for_passage);
    CHECK(!history.now().passages);
  }
}

TEST_CASE("a leg drawn on from the passage's end is part of it, another is not") {
  Drawn drawn;
  const MarkId e = turn_at(drawn.history, "E", 3, 3);
  add_leg(drawn.history, drawn.b, e).value();
  CHECK(drawn.legs().size() == 3);
  const LegId on = add_leg(drawn.history, drawn.d, e).value();
  CHECK(drawn.legs().back() == on);
  drawn.history.undo();
  CHECK(drawn.legs().size() == 3);
}

TEST_CASE("a leg parted by a mark is two in the passage, and what it had goes on") {
  Drawn drawn;
  Passage wanted = drawn.it();
  wanted.legs[1].speed_kn = 4;
  wanted.legs[1].leave = MarkToLeave{drawn.c, Side::port, 0.3};
  REQUIRE(change_passage(drawn.history, wanted).ok());
  const MarkId middle = insert_mark(drawn.history, drawn.bc, {.name = "M", .lat_deg = k_middle_lat, .lon_deg = k_middle_lon - 1 / 60.0, .kind = MarkKind::turn}).value();
  REQUIRE(drawn.legs().size() == 4);
  CHECK(drawn.history.now().legs.find(drawn.legs()[1])->to == middle);
  CHECK(drawn.history.now().legs.find(drawn.legs()[2])->from == middle);
  CHECK(drawn.it().legs[1].speed_kn == 4);
  CHECK(drawn.it().legs[2].speed_kn == 4);
  CHECK(!drawn.it().legs[1].leave);
  CHECK(drawn.it().legs[2].leave == MarkToLeave{drawn.c, Side::port, 0.3});
}

TEST_CASE("a mark taken off under a leg: what was entered for it stays") {
  Drawn drawn;
  Passage wanted = drawn.it();
  wanted.legs[1].look_for = "lattice post";
  REQUIRE(change_passage(drawn.history, wanted).ok());
  REQUIRE(remove_mark(drawn.history, drawn.c).ok());
  CHECK(drawn.legs().size() == 3);
  CHECK(drawn.it().legs[1].look_for == "lattice post");
  CHECK(drawn.history.now().legs.find(drawn.bc) == nullptr);
  REQUIRE(leave_leg_out(drawn.history, drawn.passage, 1).ok());
  CHECK(drawn.legs() == std::vector{drawn.ab, drawn.cd});
  drawn.history.undo();
  drawn.history.undo();
  CHECK(drawn.history.now().legs.find(drawn.bc) != nullptr);
}

TEST_CASE("alternatives: each with its own, one in hand") {
  Drawn drawn;
  const PassageId other = duplicate_passage(drawn.history, drawn.passage, "by the north").value();
  CHECK(drawn.history.now().passages->in_hand == other);
  CHECK(find(*drawn.history.now().passages, other)->legs.size() == 3);
  REQUIRE(choose_passage(drawn.history, drawn.passage).ok());
  CHECK(drawn.history.now().passages->in_hand == drawn.passage);
  REQUIRE(remove_passage(drawn.history, drawn.passage).ok());
  CHECK(drawn.history.now().passages->in_hand == other);
  REQUIRE(remove_passage(drawn.history, other).ok());
  CHECK(drawn.history.now().passages->all.empty());
  CHECK(remove_passage(drawn.history, other).problem().fault == Fault::passage_unknown);
  CHECK(make_passage(drawn.history, {}).value() != other);  // names of passages are never used again
}

TEST_CASE("what a passage can't have is refused, and it stays as it was") {
  Drawn drawn;
  const Document before = drawn.history.now();
  const auto refused = [&](auto change) {
    Passage wanted = drawn.it();
    change(wanted);
    const Result<Done> result = change_passage(drawn.history, wanted);
    REQUIRE_FALSE(result.ok());
    CHECK(drawn.history.now() == before);
    return result.problem().fault;
  };
  CHECK(refused([](Passage& p) { p.speed_kn = 0; }) == Fault::number_out_of_range);
  CHECK(refused([](Passage& p) { p.speed_kn = -3; }) == Fault::number_out_of_range);
  CHECK(refused([](Passage& p) { p.leeway = PlannedLeeway{360, 2}; }) == Fault::direction_out_of_range);
  CHECK(refused([](Passage& p) { p.stream.hours = {{1, {TrueDirection(10), 1}}, {-2, {}}, {1, {}}}; }) == Fault::stream_hour_twice);
  CHECK(refused([](Passage& p) { p.id = {77}; }) == Fault::passage_unknown);
  CHECK(put_leg_in(drawn.history, drawn.passage, {999}).problem().fault == Fault::leg_unknown);
  CHECK(leave_leg_out(drawn.history, drawn.passage, 3).problem().fault == Fault::number_out_of_range);
}

TEST_CASE("the deck log goes from leg to leg, and back") {
  Drawn drawn;
  const auto write = [&](DeckEntryKind kind, int minutes) { return write_deck_log(drawn.history, drawn.passage, {.kind = kind, .date = {2026, 7, 1}, .time = {minutes}}); };
  CHECK(write(DeckEntryKind::seen, 400).problem().fault == Fault::not_under_way);
  REQUIRE(write(DeckEntryKind::departed, 400).ok());
  CHECK(write(DeckEntryKind::departed, 401).problem().fault == Fault::already_under_way);
  CHECK(under_way(drawn.it()).departed);
  CHECK(under_way(drawn.it()).leg == 0);
  REQUIRE(write(DeckEntryKind::reading, 410).ok());
  REQUIRE(write(DeckEntryKind::seen, 440).ok());
  CHECK(under_way(drawn.it()).leg == 1);
  CHECK(turn_entry(drawn.it(), 0)->time == ClockTime{400});
  CHECK(turn_entry(drawn.it(), 1)->time == ClockTime{440});
  CHECK(turn_entry(drawn.it(), 2) == nullptr);
  CHECK(write(DeckEntryKind::not_seen, 430).problem().fault == Fault::deck_time_before);
  REQUIRE(take_back_turn(drawn.history, drawn.passage).ok());
  CHECK(under_way(drawn.it()).leg == 0);
  CHECK(drawn.it().deck_log.size() == 2);
  for (int leg = 0; leg < 3; ++leg) REQUIRE(write(DeckEntryKind::not_seen, 450 + leg).ok());
  CHECK(under_way(drawn.it()).leg == 3);
  CHECK(write(DeckEntryKind::passed, 500).problem().fault == Fault::not_under_way);
  for (int turn = 0; turn < 4; ++turn) REQUIRE(take_back_turn(drawn.history, drawn.passage).ok());
  CHECK(!under_way(drawn.it()).departed);
  CHECK(take_back_turn(drawn.history, drawn.passage).problem().fault == Fault::not_under_way);
}

TEST_CASE("while legs come and go under a passage that is run, she stays on the leg she is on") {
  Drawn drawn;
  const auto write = [&](DeckEntryKind kind, int minutes) { REQUIRE(write_deck_log(drawn.history, drawn.passage, {.kind = kind, .date = {2026, 7, 1}, .time = {minutes}, .log_nm = minutes / 10.0}).ok()); };
  write(DeckEntryKind::departed, 400);
  write(DeckEntryKind::seen, 440);
  const auto in_hand = [&] { return drawn.legs()[under_way(drawn.it()).leg]; };
  REQUIRE(in_hand() == drawn.bc);
  const auto part = [&](LegId leg, double east_min) { return insert_mark(drawn.history, leg, {.name = "M", .lat_deg = k_middle_lat, .lon_deg = k_middle_lon + east_min / 60, .kind = MarkKind::turn}); };

  SUBCASE("one that has ended is parted") {
    REQUIRE(part(drawn.ab, -3).ok());
    REQUIRE(drawn.legs().size() == 4);
    CHECK(in_hand() == drawn.bc);
    CHECK(turn_entry(drawn.it(), 2)->time == ClockTime{440});
    REQUIRE(take_back_turn(drawn.history, drawn.passage).ok());
    CHECK(under_way(drawn.it()).leg == 1);
  }
  SUBCASE("the one in hand is parted") {
    REQUIRE(part(drawn.bc, -1).ok());
    CHECK(in_hand() == drawn.bc);
  }
  SUBCASE("one that has ended can't be left out, one that is to come can") {
    const Document before = drawn.history.now();
    CHECK(leave_leg_out(drawn.history, drawn.passage, 0).problem().fault == Fault::passage_leg_run);
    CHECK(drawn.history.now() == before);
    REQUIRE(leave_leg_out(drawn.history, drawn.passage, 2).ok());
    CHECK(in_hand() == drawn.bc);
  }
}

TEST_CASE("a step of a passage is kept as a difference") {
  Drawn drawn;
  const Document before = drawn.history.now();
  Passage wanted = drawn.it();
  wanted.speed_kn = 5.5;
  REQUIRE(change_passage(drawn.history, wanted).ok());
  const Document after = drawn.history.now();
  const std::vector<std::uint8_t> step = difference(before, after);
  CHECK(applied(step, before).value() == after);
  CHECK(applied(difference(after, before), after).value() == before);
  Document none = after;
  none.passages.reset();
  CHECK(applied(difference(after, none), after).value() == none);
}
