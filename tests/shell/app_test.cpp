// The application without a browser: pointers in, document and panels out.
#include "shell/app.h"

#include <cmath>

#include "doctest/doctest.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

struct Desk : Tabletop {
  Value sheet_alone() {
    const Value all = app.read();
    Value rest;
    for (const auto& [name, value] : *all.members())
      if (name != "edge" && name != "history") rest.set(name, value);
    return rest;
  }
};

}  // namespace

TEST_CASE("two presses and a drag read both rings, and the sum adds up") {
  Desk desk;
  desk.ask("tool", Value::object({{"tool", "straight-edge"}}));
  desk.press(desk.middle("mark/Off Sarn"));
  desk.press(desk.middle("mark/Off Gannet"));
  const double laid_deg = *desk.app.read()["edge"]["bearing_true_deg"].number();
  CHECK(desk.app.read()["edge"]["settled_on"].is_null());
  desk.drag(desk.middle("edge/reading"), desk.middle("rose/centre"));
  const Value edge = desk.app.read()["edge"];
  CHECK(*edge["settled_on"].text() == *(*desk.app.read()["roses"].items())[0]["id"].text());
  CHECK(std::abs(*edge["bearing_true_deg"].number() - laid_deg) < 1e-9);
  CHECK(*edge["locked"].flag());
  CHECK(*edge["shown"]["true"].text() == "096°T");
  CHECK(*edge["shown"]["magnetic"].text() == "105°M");

  for (const Panel& panel : desk.app.panels())
    for (const PanelItem& item : panel.items)
      if (const auto* sum = std::get_if<ColumnSumItem>(&item)) {
        REQUIRE(sum->rows.size() == 4);
        CHECK(std::stoi(sum->rows[0].figures) + std::stoi(sum->rows[1].figures) == std::stoi(sum->rows[2].figures));
        CHECK(sum->rows[1].sign == "+");
        CHECK(sum->rows[3].beside == "not entered");
      }
}

TEST_CASE("a second finger puts a drag back, and Esc puts the edge down") {
  Desk desk;
  desk.ask("lay-edge", Value::object({{"from", desk.mark_id(0)}, {"to", desk.mark_id(1)}}));
  const Value before = desk.app.read()["edge"];
  const ScreenPoint grip = desk.middle("edge/reading");
  desk.app.pointer({.phase = PointerPhase::down, .kind = PointerKind::touch, .id = 1, .at = grip, .buttons = 1});
  desk.app.pointer({.phase = PointerPhase::move, .kind = PointerKind::touch, .id = 1, .at = grip + ScreenPoint{0, 70}, .buttons = 1, .time_ms = 100});
  CHECK_FALSE(desk.app.read()["edge"] == before);
  desk.app.pointer({.phase = PointerPhase::down, .kind = PointerKind::touch, .id = 2, .at = grip + ScreenPoint{90, 70}, .buttons = 1, .time_ms = 120});
  CHECK(desk.app.read()["edge"] == before);
  desk.app.key({.key = "Escape"});
  CHECK(desk.app.read()["edge"].is_null());
}

TEST_CASE("Esc during a drag throws the drag away and no more") {
  Desk desk;
  desk.ask("lay-edge", Value::object({{"from", desk.mark_id(0)}, {"to", desk.mark_id(1)}}));
  const Value before = desk.app.read()["edge"];
  const ScreenPoint grip = desk.middle("edge/reading");
  desk.send(PointerPhase::down, grip);
  desk.send(PointerPhase::move, grip + ScreenPoint{0, 70});
  CHECK_FALSE(desk.app.read()["edge"] == before);
  CHECK(desk.app.key({.key = "Escape"}));
  CHECK(desk.app.read()["edge"] == before);
  desk.send(PointerPhase::up, grip + ScreenPoint{0, 90});
  CHECK(desk.app.read()["edge"] == before);
  desk.app.key({.key = "Escape"});
  CHECK(desk.app.read()["edge"].is_null());
}

TEST_CASE("news of offline use reaches the panels and asks for no frame") {
  Desk desk;
  desk.app.frame(0);
  while (desk.app.wants_frame()) desk.app.frame(desk.now_ms += 1000);
  const std::uint64_t painted = desk.app.panels_revision();
  desk.app.set_offline_state("ready");
  CHECK(desk.app.panels_revision() > painted);
  CHECK_FALSE(desk.app.wants_frame());
}

TEST_CASE("undo of every command gives an equal sheet, redo likewise") {
  Desk desk;
  const std::string a = desk.mark_id(0), b = desk.mark_id(3);
  const std::string leg = *(*desk.app.read()["legs"].items())[0]["id"].text(), rose = *(*desk.app.read()["roses"].items())[0]["id"].text();
  const std::pair<const char*, Value> acts[] = {
      {"add-mark", Value::object({{"name", "Ness"}, {"lat_deg", 44.1}, {"lon_deg", -31.3}, {"kind", "light"}})},
      {"move-mark", Value::object({{"id", a}, {"lat_deg", 44.2}, {"lon_deg", -31.35}})},
      {"add-leg", Value::object({{"from", a}, {"to", b}})},
      {"set-date", Value::object({{"date", "2027-01-31"}})},
      {"set-printed-variation", Value::object({{"value_deg", -8.25}, {"year", 2022}, {"annual_change_min", 11}})},
      {"write-on-leg", Value::object({{"leg", leg}, {"bearing_deg", 61}, {"reference", "true"}})},
      {"rub-out-reading", Value::object({{"leg", leg}})},
      {"add-rose", Value::object({{"lat_deg", 44.15}, {"lon_deg", -31.4}, {"radius_mm", 25}})},
      {"move-rose", Value::object({{"id", rose}, {"lat_deg", 44.1}, {"lon_deg", -31.3}})},
      {"size-rose", Value::object({{"id", rose}, {"radius_mm", 30}})},
      {"set-rose-own-place", Value::object({{"id", rose}, {"own_place", true}})},
      {"remove-rose", Value::object({{"id", rose}})},
      {"add-note", Value::object({{"text", "tide rips"}, {"lat_deg", 44.12}, {"lon_deg", -31.3}})},
      {"remove-mark", Value::object({{"id", a}})},
      {"new-sheet", Value::object({{"mid_lat_deg", -33.5}, {"mid_lon_deg", 179.9}, {"scale", 50000}, {"paper", "A3-upright"}})},
      {"open-demo", Value::object()},
  };
  for (const auto& act : acts) {
    const char* name = act.first;
    const Value& arguments = act.second;
    CAPTURE(name);
    const Value before = desk.sheet_alone();
    REQUIRE(desk.ask(name, arguments).has("ok"));
    const Value after = desk.sheet_alone();
    CHECK_FALSE(after == before);
    REQUIRE(desk.ask("undo").has("ok"));
    CHECK(desk.sheet_alone() == before);
    REQUIRE(desk.ask("redo").has("ok"));
    CHECK(desk.sheet_alone() == after);
  }
}

TEST_CASE("an opened link gives an equal sheet; a damaged one changes nothing and says so") {
  Desk first, second;
  first.ask("add-mark", Value::object({{"name", "Ness"}, {"lat_deg", 44.1}, {"lon_deg", -31.3}}));
  second.app.start(first.app.link(), false);
  CHECK(second.sheet_alone() == first.sheet_alone());
  const Value before = second.sheet_alone();
  const Value answer = second.ask("open-text", Value::object({{"text", "1:AAAA"}}));
  CHECK(answer.has("error"));
  CHECK(second.sheet_alone() == before);
  CHECK(second.says(*answer["error"].text()));
}

TEST_CASE("the rings are read on an edge turned to a magnetic bearing") {
  Desk desk;
  CHECK(desk.ask("turn-edge", Value::object({{"bearing_deg", 95}, {"reference", "magnetic"}})).has("ok"));
  const Value edge = desk.app.read()["edge"];
  CHECK(*edge["shown"]["magnetic"].text() == "095°M");
  CHECK(*edge["shown"]["true"].text() == "086°T");  // 9 W: common practice, no source: true is magnetic less west
}

TEST_CASE("a typed middle that can't be read keeps what was typed and says what is wrong") {
  Desk desk;
  desk.ask("open-slip", Value::object({{"slip", "new-sheet"}}));
  desk.ask("fill-new-sheet", Value::object({{"field", "middle"}, {"text", "44°72.4'N 031°20'W"}}));
  const Value before = desk.sheet_alone();
  CHECK(desk.ask("make-new-sheet").has("error"));
  CHECK(desk.sheet_alone() == before);
  bool kept = false;
  for (const Panel& panel : desk.app.panels())
    for (const PanelItem& item : panel.items)
      if (const auto* field = std::get_if<FieldItem>(&item); field && field->name == "middle") kept = field->text == "44°72.4'N 031°20'W" && field->error.find("72.4") != std::string::npos;
  CHECK(kept);
}

TEST_CASE("a frame is drawn once for each change, and panning redraws nothing of the sheet") {
  Desk desk;
  CHECK(desk.app.wants_frame());
  const std::uint64_t revision = desk.app.frame(0).layers[0].revision;
  CHECK_FALSE(desk.app.wants_frame());
  desk.drag({600, 650}, {640, 600});
  CHECK(desk.app.wants_frame());
  CHECK(desk.app.frame(1000).layers[0].revision == revision);
  desk.ask("set-palette", Value::object({{"palette", "night"}}));
  CHECK(desk.app.frame(2000).layers[0].revision != revision);
  CHECK(desk.platform.settings["palette"] == "night");
}

TEST_CASE("without a canvas the lists stand in its place") {
  Desk desk;
  desk.app.set_canvas_lost(true);
  CHECK(desk.says("WebGL2"));
}

TEST_CASE("while touch is locked nothing is pressed but the bar that opens it") {
  Desk desk;
  const ScreenPoint place = desk.middle("sheet/44\xC2\xB0" "10.0'N 031\xC2\xB0" "20.0'W");
  desk.ask("tool", Value::object({{"tool", "mark"}}));
  const std::size_t marks = desk.app.read()["marks"].items()->size();
  CHECK(desk.ask("lock-touch")["ok"].flag());
  desk.press(place);
  CHECK(desk.app.read()["marks"].items()->size() == marks);
  for (const Panel& panel : desk.app.panels()) CHECK(panel.deaf == (panel.name != "touch-lock"));
  CHECK(desk.ask("unlock-touch")["ok"].flag());
  desk.press(place);
  CHECK(desk.app.read()["marks"].items()->size() == marks + 1);
}
