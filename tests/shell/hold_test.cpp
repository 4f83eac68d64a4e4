// A right press, or a hold, on what lies on the sheet; and that nothing is half done when the browser takes a contact away.
#include <cmath>

#include "shell/tools/tool.h"
#include "imgui.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

void hold_still(Tabletop& table, ScreenPoint at) {
  table.send(PointerPhase::down, at);
  table.now_ms += 900;
  table.send(PointerPhase::move, at);
  table.send(PointerPhase::up, at);
}

void press_right(Tabletop& table, ScreenPoint at) { table.app.pointer({.phase = PointerPhase::down, .at = at, .buttons = 2, .time_ms = table.now_ms += 20}); }

std::string slip_of(Tabletop& table) {
  for (const Panel& panel : table.app.panels())
    if (panel.place == PanelPlace::slip) return panel.name;
  return "";
}

ScreenPoint middle_of_leg(Tabletop& table) {
  const ScreenPoint a = table.middle("mark/#" + *table.leg(0)["from"].text()), b = table.middle("mark/#" + *table.leg(0)["to"].text());
  return {(2 * a.x_px + b.x_px) / 3, (2 * a.y_px + b.y_px) / 3};
}

}  // namespace

TEST_CASE("whatever the tool in hand, a right press or a hold opens the slip of a mark, a leg, a note and a rose") {
  for (const auto ask : {hold_still, press_right})
    for (const char* tool : {"none", "mark", "leg", "rose", "dividers", "note", "straight-edge"}) {
      CAPTURE(tool);
      Tabletop table;
      table.done("add-note", Value::object({{"text", "keep clear"}, {"lat_deg", 44.19}, {"lon_deg", -31.37}}));
      const std::string note = *(*table.app.read()["notes"].items())[0]["id"].text();
      if (std::string(tool) != "none") table.done("tool", Value::object({{"tool", tool}}));
      const std::size_t marks = table.read("marks").items()->size(), legs = table.read("legs").items()->size();
      ask(table, table.middle("mark/Gannet Post"));
      CHECK(slip_of(table) == "mark");
      ask(table, middle_of_leg(table));
      CHECK(slip_of(table) == "leg");
      ask(table, table.middle("rose/centre"));
      CHECK(slip_of(table) == "rose");
      CHECK(table.read("marks").items()->size() == marks);
      CHECK(table.read("legs").items()->size() == legs);
      CHECK(table.read("edge").is_null());
    }
}

TEST_CASE("a hold on the edge takes the straight-edge in hand") {
  Tabletop table;
  table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}}));
  const ScreenPoint body = table.middle("edge/reading");
  table.done("tool", Value::object({{"tool", "mark"}}));
  hold_still(table, body);
  CHECK(slip_of(table) == "straight-edge");
  CHECK(table.app.where("edge/end-a").is_object());  // its handles can be taken
}

TEST_CASE("a right press on nothing does nothing; a hold there is the press it always was") {
  Tabletop table;
  table.done("tool", Value::object({{"tool", "mark"}}));
  const std::size_t marks = table.read("marks").items()->size();
  press_right(table, {560, 690});
  CHECK(table.read("marks").items()->size() == marks);
  hold_still(table, {560, 690});
  CHECK(table.read("marks").items()->size() == marks + 1);
}

TEST_CASE("no drag of any tool leaves anything half done when it is cancelled: by the browser, by Esc, by a second finger") {
  struct Case {
    const char* tool;
    const char* from;
  };
  for (const Case& c : {Case{"none", "mark/Off Sarn"}, Case{"mark", "mark/Off Sarn"}, Case{"leg", "mark/Off Sarn"}, Case{"straight-edge", "mark/Off Sarn"}, Case{"straight-edge", "edge/end-b"},
                        Case{"straight-edge", "edge/reading"}, Case{"rose", "rose/centre"}, Case{"rose", "rose/size"}, Case{"dividers", "dividers/leg-a"}, Case{"dividers", "dividers/hinge"}})
    for (int way = 0; way < 3; ++way) {
      CAPTURE(c.tool); CAPTURE(c.from); CAPTURE(way);
      Tabletop table;
      if (std::string(c.from).find("edge/") == 0) table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}}));
      else if (std::string(c.tool) != "none") table.done("tool", Value::object({{"tool", c.tool}}));
      if (std::string(c.tool) == "dividers") {
        table.press("mark/Off Sarn");
        table.press("mark/Off Gannet");
      }
      table.hand = PointerKind::touch;
      table.now_ms += 1000;
      const ScreenPoint from = table.middle(c.from);
      const auto lies = [&] { return table.app.read(); };
      const Value before = lies();
      table.send(PointerPhase::down, from);
      if (std::string(c.tool) == "none") table.now_ms += 350;
      for (int i = 1; i <= 10; ++i) table.send(PointerPhase::move, from + ScreenPoint{6.0 * i, 4.0 * i});
      const ScreenPoint to = from + ScreenPoint{60, 40};
      if (way == 0) table.send(PointerPhase::cancel, to);
      if (way == 1) table.app.key({.key = "Escape"});
      if (way == 2) {
        table.now_ms += 20;
        table.app.pointer({.phase = PointerPhase::down, .kind = PointerKind::touch, .id = 7, .at = to + ScreenPoint{90, 0}, .time_ms = table.now_ms});
      }
      CHECK(lies() == before);
      table.send(PointerPhase::up, to);
      CHECK(lies() == before);
    }
}

TEST_CASE("the drag of a handle never moves the paper, whichever hand drags") {
  const std::string place = "sheet/44°10.0'N 031°20.0'W";
  for (const PointerKind hand : {PointerKind::mouse, PointerKind::touch, PointerKind::pen})
    for (const char* handle : {"edge/end-a", "edge/end-b", "edge/reading", "rose/centre", "rose/size", "dividers/leg-a", "dividers/leg-b", "dividers/hinge"}) {
      CAPTURE(handle); CAPTURE(static_cast<int>(hand));
      Tabletop table;
      const std::string part = handle;
      if (part.starts_with("edge/")) table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}}));
      else table.done("tool", Value::object({{"tool", part.starts_with("rose") ? "rose" : "dividers"}}));
      if (part.starts_with("dividers")) {
        table.press("mark/Off Sarn");
        table.press("mark/Off Gannet");
      }
      table.hand = hand;
      table.now_ms += 1000;
      const ScreenPoint paper = table.middle(place), from = table.middle(handle);
      table.hold(from, from + ScreenPoint{70, -50});
      CHECK(table.middle(place) == paper);
      table.lift(from + ScreenPoint{70, -50});
      CHECK(table.middle(place) == paper);
      const bool moved = !(table.middle(handle) == from);
      CHECK(moved);
    }
}

TEST_CASE("touch locked, the sheet is deaf to rain, fingers and right buttons") {
  Tabletop table;
  table.done("tool", Value::object({{"tool", "mark"}}));
  table.done("lock-touch");
  const Value before = table.read("marks");
  table.hand = PointerKind::touch;
  table.press(ScreenPoint{560, 690});
  hold_still(table, {560, 690});
  press_right(table, table.middle("mark/Gannet Post"));
  CHECK(table.read("marks") == before);
}

TEST_CASE("keys turn a settled edge by tenths about the rose, with Shift by degrees; it stays settled and is read anew") {
  Tabletop table;
  table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}}));
  const auto bearing = [&] { return *table.read("edge")["bearing_true_deg"].number(); };
  const double lined_up = bearing();
  table.app.key({.key = "]"});
  CHECK(bearing() == doctest::Approx(lined_up + 0.1).epsilon(1e-9));
  table.app.key({.key = "["});
  const std::string rose = *(*table.app.read()["roses"].items())[0]["id"].text();
  table.done("slide-edge-to", Value::object({{"rose", rose}}));
  const double settled = bearing();
  table.app.key({.key = "]"});
  table.app.key({.key = "}", .shift = true});
  CHECK(bearing() == doctest::Approx(settled + 1.1).epsilon(1e-9));
  CHECK(table.read("edge")["settled_on"] == Value(rose));
  CHECK(table.read("edge")["shown"].has("true"));
  std::optional<FigureItem> wheel = table.item<FigureItem>("turn-edge");
  REQUIRE(wheel.has_value());
  REQUIRE(wheel->wheel.has_value());
  CHECK(wheel->wheel->value == doctest::Approx(1.1).epsilon(1e-9));
  CHECK(wheel->wheel->text.find("turned 1.1° clockwise") == 0);
  // By the wheel, and back.
  table.done("nudge-edge", Value::object({{"by_deg", -1.1}}));
  CHECK(bearing() == doctest::Approx(settled).epsilon(1e-9));
  CHECK(table.item<FigureItem>("turn-edge")->wheel->text.find("not turned") == 0);
  CHECK(table.ask("nudge-edge", Value::object({{"by_deg", 500}})).has("error"));
}

TEST_CASE("while it slides its angle is locked to the keys too") {
  Tabletop table;
  table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}}));
  const double was = *table.read("edge")["bearing_true_deg"].number();
  const ScreenPoint body = table.middle("edge/reading");
  table.hold(body, body + ScreenPoint{0, -60});
  table.app.key({.key = "]"});
  CHECK(std::abs(*table.read("edge")["bearing_true_deg"].number() - was) < 1e-9);
  CHECK(table.read("edge")["locked"] == Value(true));
}

TEST_CASE("an edge set to a direction is set anew by a nudge") {
  Tabletop table;
  table.done("turn-edge", Value::object({{"bearing_deg", 95.0}, {"reference", "magnetic"}}));
  table.app.key({.key = "]"});
  CHECK(*table.read("edge")["bearing_magnetic_deg"].number() == doctest::Approx(95.1).epsilon(1e-9));
  CHECK(table.field("direction").text == "095.1");
}

TEST_CASE("it settles in 120 ms, at once where motion is not wanted; ticks say so for 0.4 s, then nothing is drawn") {
  for (const bool reduced : {false, true}) {
    CAPTURE(reduced);
    FakePlatform platform;
    platform.settings["motion"] = reduced ? "reduced" : "";
    App app(platform);
    app.set_viewport({.width_px = 1180, .height_px = 742});
    const Value marks = app.read()["marks"];
    app.command("lay-edge", Value::object({{"from", (*marks.items())[0]["id"]}, {"to", (*marks.items())[1]["id"]}}));
    app.frame(1000);
    app.frame(1300);
    CHECK_FALSE(app.wants_frame());
    app.command("slide-edge-to", Value::object({{"rose", (*app.read()["roses"].items())[0]["id"]}}));
    const auto drawn_at = [&](double ms) {
      const DrawnFrame& frame = app.frame(ms);
      constexpr std::size_t tint = 3, above = 5;
      return frame.layers[above].list->VtxBuffer.Size > 0 ? std::vector<float>{frame.layers[tint].list->VtxBuffer[0].pos.x, frame.layers[tint].list->VtxBuffer[0].pos.y} : std::vector<float>{};
    };
    const auto first = drawn_at(1400), halfway = drawn_at(1460), there = drawn_at(1530);
    CHECK((first == there) == reduced);
    CHECK((halfway == there) == reduced);
    CHECK(app.wants_frame());
    drawn_at(1790);
    CHECK(app.wants_frame());
    drawn_at(1810);
    CHECK_FALSE(app.wants_frame());
  }
}
