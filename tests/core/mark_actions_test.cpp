// Marks changed, copied, placed by bearing and by crossing: what each act makes, and each reason for which it refuses.
#include "core/document/mark_actions.h"

#include <cmath>

#include "core/document/leg_actions.h"
#include "core/document/sheet_actions.h"
#include "core/earth/geodesy.h"
#include "core/earth/rhumb.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

History usual_history() {
  return History(made_sheet({.mid_lat_deg = 44 + 10 / 60.0, .mid_lon_deg = -(31 + 20 / 60.0), .date = {2026, 7, 1}}).value());
}

NewMark mark_at(std::string name, double north_min, double east_min) {
  return {.name = std::move(name), .lat_deg = 44 + (10 + north_min) / 60, .lon_deg = -(31 + (20 - east_min) / 60)};
}

MarkId added(History& history, std::string name, double north_min, double east_min) {
  return add_mark(history, mark_at(std::move(name), north_min, east_min)).value();
}

const Mark& mark_of(const History& history, MarkId id) { return *history.now().marks.find(id); }

}  // namespace

TEST_CASE("a mark's parts are changed one by one, the others left") {
  History history = usual_history();
  const MarkId id = added(history, "Gull Rock", 1, 2);
  const GridPosition at = mark_of(history, id).at;
  REQUIRE(change_mark(history, id, {.name = "  Gannet Rock "}));
  CHECK(mark_of(history, id).name == "Gannet Rock");
  CHECK(mark_of(history, id).at == at);
  CHECK(history.undo_label()->act == Act::change_mark);
  REQUIRE(change_mark(history, id, {.kind = MarkKind::light, .height_m = 23.46}));
  CHECK(mark_of(history, id).kind == MarkKind::light);
  CHECK(mark_of(history, id).height_m == 23.5);
  REQUIRE(change_mark(history, id, {.note = "white, two a minute"}));
  CHECK(mark_of(history, id).note == "white, two a minute");
  REQUIRE(change_mark(history, id, {.kind = MarkKind::danger, .radius_nm = 0.3}));
  CHECK(mark_of(history, id).radius_nm == 0.3);
  REQUIRE(change_mark(history, id, {.kind = MarkKind::other}));
  CHECK(mark_of(history, id).radius_nm == 0);
  REQUIRE(change_mark(history, id, {.at = Position{44.2, -31.3}}));
  CHECK(history.undo_label()->act == Act::move_mark);
}

TEST_CASE("a change is refused with its reason, and nothing of it is done") {
  History history = usual_history();
  const MarkId id = added(history, "Gull Rock", 1, 2);
  const MarkId other = added(history, "Ledge", 2, 2);
  REQUIRE(add_leg(history, id, other));
  const Document before = history.now();
  const auto reason = [&](const MarkChange& change) {
    const Result<Done> changed = change_mark(history, id, change);
    REQUIRE_FALSE(changed.ok());
    CHECK(history.now() == before);
    return changed.problem().fault;
  };
  CHECK(reason({.name = "  "}) == Fault::name_empty);
  CHECK(reason({.name = std::string(201, 'a')}) == Fault::name_too_long);
  CHECK(reason({.kind = MarkKind::danger}) == Fault::radius_missing);
  CHECK(reason({.height_m = -1}) == Fault::number_out_of_range);
  CHECK(reason({.height_m = 9'001}) == Fault::number_out_of_range);
  CHECK(reason({.note = std::string(1'001, 'a')}) == Fault::note_too_long);
  CHECK(reason({.at = Position{76, -31.3}}) == Fault::latitude_out_of_range);
  CHECK(reason({.at = Position{44.2, -181}}) == Fault::longitude_out_of_range);
  CHECK(reason({.at = Position{45.2, -31.3}}) == Fault::place_off_sheet);
  CHECK(reason({.at = unquantise(mark_of(history, other).at)}) == Fault::leg_of_no_length);
  CHECK(change_mark(history, {99}, {}).problem().fault == Fault::mark_unknown);
}

TEST_CASE("the same name at the same place is one mark put in twice") {
  History history = usual_history();
  const MarkId id = added(history, "Gull Rock", 1, 2);
  CHECK(add_mark(history, mark_at("Gull Rock", 1, 2)).problem() == Problem{.fault = Fault::mark_already_there, .texts = {"Gull Rock"}});
  CHECK(add_mark(history, mark_at("Gull Rock", 1, 3)));
  CHECK(add_mark(history, mark_at("Gull Rock Light", 1, 2)));
  REQUIRE(change_mark(history, id, {.note = "itself is no other"}));
}

TEST_CASE("a copy stands beside its mark and has all it has but the name") {
  History history = usual_history();
  NewMark wanted = mark_at("Ledge", 1, 2);
  wanted.kind = MarkKind::danger;
  wanted.radius_nm = 0.25;
  wanted.note = "dries";
  const MarkId id = add_mark(history, wanted).value();
  const Mark& copy = mark_of(history, duplicate_mark(history, id, "Ledge 2").value());
  CHECK(copy.name == "Ledge 2");
  CHECK(copy.kind == MarkKind::danger);
  CHECK(copy.radius_nm == 0.25);
  CHECK(copy.note == "dries");
  const Projection projection = projection_of(history.now());
  const SheetPoint a = projection.to_sheet(unquantise(mark_of(history, id).at)), b = projection.to_sheet(unquantise(copy.at));
  CHECK(std::abs(b.x_mm - a.x_mm - 6) < 0.01);
  CHECK(b.y_mm == a.y_mm);
}

TEST_CASE("a mark by bearing and distance lies where the rhumb line leads") {
  History history = usual_history();
  const MarkId from = added(history, "Gull Rock", 0, 0);
  const MarkId made = add_mark_by_bearing(history, from, TrueDirection(62), 3.2, {.name = "Turn 1", .kind = MarkKind::turn}).value();
  const RhumbLeg leg = rhumb_inverse(unquantise(mark_of(history, from).at), unquantise(mark_of(history, made).at));
  CHECK(std::abs(leg.course.deg() - 62) < 0.003);       // 0.19 m of grid in 3.2 nm
  CHECK(std::abs(leg.distance_nm - 3.2) < 0.0001);
  CHECK(add_mark_by_bearing(history, {99}, TrueDirection(0), 1, {.name = "a"}).problem().fault == Fault::mark_unknown);
  CHECK(add_mark_by_bearing(history, from, TrueDirection(0), 0, {.name = "a"}).problem().fault == Fault::number_out_of_range);
  CHECK(add_mark_by_bearing(history, from, TrueDirection(0), 60, {.name = "a"}).problem().fault == Fault::place_off_sheet);
}

TEST_CASE("a mark where two lines cross bears from both marks as the lines do") {
  History history = usual_history();
  const MarkId a = added(history, "Gull Rock", 2, -3), b = added(history, "Ledge", 1, 3);
  const MarkId made = add_mark_by_crossing(history, {a, TrueDirection(140)}, {b, TrueDirection(215)}, {.name = "Fix"}).value();
  const Position at = unquantise(mark_of(history, made).at);
  CHECK(std::abs(rhumb_inverse(unquantise(mark_of(history, a).at), at).course.deg() - 140) < 0.01);
  CHECK(std::abs(rhumb_inverse(unquantise(mark_of(history, b).at), at).course.deg() - 215) < 0.01);
  // A line reaches both ways.
  const MarkId back = add_mark_by_crossing(history, {a, TrueDirection(320)}, {b, TrueDirection(35)}, {.name = "The same"}).value();
  CHECK(mark_of(history, back).at == mark_of(history, made).at);
  CHECK(add_mark_by_crossing(history, {a, TrueDirection(90)}, {b, TrueDirection(270.9)}, {.name = "x"}).problem().fault == Fault::lines_do_not_cross);
  CHECK(add_mark_by_crossing(history, {a, TrueDirection(90)}, {b, TrueDirection(93)}, {.name = "x"}).problem().fault == Fault::place_off_sheet);
  CHECK(add_mark_by_crossing(history, {{99}, TrueDirection(90)}, {b, TrueDirection(93)}, {.name = "x"}).problem().fault == Fault::mark_unknown);
}

TEST_CASE("the list is put in another order") {
  History history = usual_history();
  const MarkId a = added(history, "A", 0, 0), b = added(history, "B", 1, 0), c = added(history, "C", 2, 0);
  REQUIRE(reorder_mark(history, c, 0));
  CHECK(history.now().marks.at(0).id == c);
  REQUIRE(reorder_mark(history, a, 99));
  CHECK(history.now().marks.at(1).id == b);
  CHECK(history.now().marks.at(2).id == a);
  CHECK(reorder_mark(history, {99}, 0).problem().fault == Fault::mark_unknown);
}
