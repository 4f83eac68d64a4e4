// The outline of what is on the sheet, and what the keys do to one thing of it.
#include <algorithm>
#include <cmath>
#include <set>

#include "doctest/doctest.h"
#include "shell/app.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

struct Keyboard : Tabletop {
  bool key(const char* name, bool shift = false) { return app.key({.key = name, .shift = shift}); }
  void keys(const char* name, int times, bool shift = false) {
    for (int i = 0; i < times; ++i) key(name, shift);
  }
  Panel outline() {
    for (const Panel& panel : app.panels())
      if (panel.name == "outline") return panel;
    FAIL("no outline");
    return {};
  }
  std::vector<ButtonItem> things() {
    std::vector<ButtonItem> found;
    for (const PanelItem& item : outline().items)
      if (const auto* button = std::get_if<ButtonItem>(&item); button && button->look == ButtonLook::thing) found.push_back(*button);
    return found;
  }
  std::string words_of(const std::string& thing) {
    for (const ButtonItem& each : things())
      if (each.name == thing) return each.label;
    return "";
  }
  void focus(const std::string& thing) { done("focus-thing", Value::object({{"thing", thing}})); }
  void press_thing(const std::string& thing) { done("press-thing", Value::object({{"thing", thing}})); }
  std::string mark_thing(std::size_t i) { return "mark/" + mark_id(i); }
  void lay_edge() { done("lay-edge", Value::object({{"from", mark_id(0)}, {"to", mark_id(1)}})); }
  std::string step_label() {
    const Value history = read("history");
    const std::string* label = history["undo_label"].text();
    return label ? *label : "";
  }
};

}  // namespace

TEST_CASE("shut, the outline is one button; open, every thing of the sheet has its line in words") {
  Keyboard bench;
  REQUIRE(bench.outline().items.size() == 1);
  CHECK(bench.things().empty());
  bench.done("outline");
  const Value read = bench.app.read();
  const std::size_t count = 1 + read["marks"].items()->size() + read["legs"].items()->size() + read["roses"].items()->size();
  CHECK(bench.things().size() == count);
  CHECK(bench.outline().in_focus == "sheet");
  CHECK(bench.words_of(bench.mark_thing(0)).starts_with(*bench.mark(0)["name"].text() + ", turning point, 44°"));
  CHECK(bench.words_of("leg/" + bench.leg_id(0)).starts_with("Leg 1, "));

  bench.lay_edge();
  CHECK(bench.things().size() == count + 3);
  CHECK(bench.words_of("edge/end-a") == "Straight-edge, its start, on " + *bench.mark(0)["name"].text());
  bench.done("outline");
  CHECK(bench.things().empty());
}

TEST_CASE("of a long sheet a part is shown at a time") {
  Keyboard bench;
  for (int i = 0; i < 60; ++i)
    bench.done("add-mark", Value::object({{"name", "Pole " + std::to_string(i)}, {"lat_deg", 44.12 + 0.001 * i}, {"lon_deg", -31.3}}));
  bench.done("outline");
  std::set<std::string> seen;
  CHECK(bench.things().size() == 20);
  for (int i = 0; i < 10; ++i) {
    for (const ButtonItem& each : bench.things()) seen.insert(each.name);
    bench.key("PageDown");
  }
  const Value read = bench.app.read();
  CHECK(seen.size() == 1 + read["marks"].items()->size() + read["legs"].items()->size() + read["roses"].items()->size());
  bench.key("Home");
  CHECK(bench.outline().in_focus == "sheet");
  // What the keys are on stays in sight though things come before it.
  bench.focus(bench.things().back().name);
  const std::string last = bench.things().back().name;
  bench.lay_edge();
  CHECK(bench.outline().in_focus == last);
  CHECK(!bench.words_of(last).empty());
}

TEST_CASE("arrows move a mark: a run of them is one step, Esc throws it away") {
  Keyboard bench;
  bench.focus(bench.mark_thing(8));
  const ScreenPoint start = bench.middle("mark/#" + bench.mark_id(8));
  bench.keys("ArrowRight", 3);
  bench.key("ArrowDown", true);
  CHECK(bench.step_label().empty());
  bench.app.keys_at_rest();
  const ScreenPoint moved = bench.middle("mark/#" + bench.mark_id(8));
  // Positions are whole 0.0001', which is far under a hundredth of a pixel here.
  CHECK(std::abs(moved.x_px - start.x_px - 3) < 0.05);
  CHECK(std::abs(moved.y_px - start.y_px - 10) < 0.05);
  CHECK(!bench.step_label().empty());
  CHECK(bench.platform.heard.back().starts_with(*bench.mark(8)["name"].text()));

  bench.keys("ArrowLeft", 5);
  CHECK(bench.key("Escape"));
  bench.app.keys_at_rest();
  CHECK(std::abs(bench.middle("mark/#" + bench.mark_id(8)).x_px - moved.x_px) < 1e-9);
  bench.done("undo");
  CHECK(std::abs(bench.middle("mark/#" + bench.mark_id(8)).x_px - start.x_px) < 1e-9);
  CHECK(bench.step_label().empty());
}

TEST_CASE("on the sheet itself arrows move what is selected, else the paper") {
  Keyboard bench;
  const ScreenPoint rose = bench.middle("rose/centre");
  bench.key("ArrowRight");
  CHECK(bench.middle("rose/centre").x_px == doctest::Approx(rose.x_px - 40).epsilon(0.001));
  bench.done("select-mark", Value::object({{"id", bench.mark_id(2)}}));
  bench.key("ArrowRight");
  bench.key("Enter");
  CHECK(bench.step_label().starts_with("move"));
}

TEST_CASE("each command and press puts down what arrows were moving") {
  for (const bool by_command : {true, false}) {
    Keyboard bench;
    bench.focus(bench.mark_thing(2));
    bench.keys("ArrowUp", 4);
    if (by_command) bench.done("closer");
    else bench.press(ScreenPoint{600, 30});
    CHECK(bench.step_label().starts_with("move"));
  }
}

TEST_CASE("the edge by keys: an end leaves its mark at once and is caught from outside; the body settles on the rose") {
  Keyboard bench;
  bench.lay_edge();
  bench.focus("edge/end-b");
  bench.key("ArrowUp");
  CHECK(bench.read("edge")["on"].items()->size() == 1);
  bench.keys("ArrowUp", 4, true);   // 41 px away, out of reach
  bench.keys("ArrowDown", 2, true);
  CHECK(bench.read("edge")["on"].items()->size() == 2);  // 21 px away it is caught
  bench.app.keys_at_rest();
  bench.lay_edge();
  const double bearing = *bench.read("edge")["bearing_true_deg"].number();
  const ScreenPoint rose = bench.middle("rose/centre");
  const ScreenPoint edge = bench.middle("edge/reading");
  bench.focus("edge/body");
  bench.platform.heard.clear();
  int presses = 0;
  while (bench.read("edge")["settled_on"].text() == nullptr && presses++ < 60) bench.key(rose.y_px > edge.y_px ? "ArrowDown" : "ArrowUp", true);
  REQUIRE(bench.read("edge")["settled_on"].text() != nullptr);
  bench.app.keys_at_rest();
  CHECK(std::abs(*bench.read("edge")["bearing_true_deg"].number() - bearing) < 1e-9);  // but for the grid that ends lie on
  CHECK(bench.read("edge")["locked"] == Value(true));
  REQUIRE(bench.platform.heard.size() == 1);
  CHECK(bench.platform.heard.front() == "Straight-edge, settled on the rose, 096 true, 105 magnetic, back 276 true");
  bench.key("Escape");  // nothing is being moved: the edge is put down
  CHECK(bench.read("edge").is_null());
  CHECK(bench.step_label().empty());  // nothing of it is in the sheet's past
}

TEST_CASE("a reading is told once when the edge has settled, and again only when it settles again") {
  Keyboard bench;
  bench.lay_edge();
  CHECK(bench.platform.heard.empty());
  const Value slide = Value::object({{"rose", *(*bench.read("roses").items())[0]["id"].text()}});
  bench.done("slide-edge-to", slide);
  REQUIRE(bench.platform.heard.size() == 1);
  CHECK(bench.platform.heard.back() == "096 true, 105 magnetic, back 276 true");
  bench.done("closer");
  bench.key("ArrowRight");
  bench.done("open-slip", Value::object({{"slip", "more"}}));
  CHECK(bench.platform.heard.size() == 1);
  bench.done("lift-edge");
  bench.lay_edge();
  bench.done("slide-edge-to", slide);
  CHECK(bench.platform.heard.size() == 2);
}

TEST_CASE("things are pressed with the tool in hand, or open their slip") {
  Keyboard bench;
  bench.key("s");
  bench.press_thing(bench.mark_thing(0));
  bench.press_thing(bench.mark_thing(1));
  CHECK(bench.read("edge")["on"].items()->size() == 2);
  bench.key("Escape");
  bench.key("Escape");
  bench.press_thing(bench.mark_thing(2));
  CHECK(bench.field("name").text == *bench.mark(2)["name"].text());
}

TEST_CASE("Delete rubs out what the keys are on, they go on to the next, and it can be taken back") {
  Keyboard bench;
  bench.done("outline");
  const std::size_t marks = bench.read("marks").items()->size(), things = bench.things().size();
  const std::string name = *bench.mark(marks - 1)["name"].text();
  bench.focus(bench.mark_thing(marks - 1));
  bench.key("Delete");
  CHECK(bench.read("marks").items()->size() == marks - 1);
  CHECK(bench.outline().in_focus.starts_with("rose/"));
  bench.done("undo");
  CHECK(*bench.mark(marks - 1)["name"].text() == name);
  bench.focus("sheet");
  bench.key("Delete");
  CHECK(bench.things().size() == things);
}

TEST_CASE("the slip of keys has every tool's and every command's key; keys pressed alone can be turned off") {
  Keyboard bench;
  CHECK(bench.key("?"));
  const std::optional<TableItem> table = bench.item<TableItem>("keys");
  REQUIRE(table.has_value());
  std::set<std::string> shown;
  for (const std::vector<std::string>& row : table->rows) shown.insert(row[0]);
  CHECK(shown.size() == table->rows.size());  // no key does two things
  for (const char* key : {"M", "L", "S", "O", "D", "N", "R", "+", "-", "0", "?", "I", "Ctrl+Z", "Ctrl+Y", "Arrows", "Enter", "Delete", "Esc"}) CHECK_MESSAGE(shown.count(key) == 1, key);

  bench.done("set-single-keys", Value::object({{"keys", "off"}}));
  CHECK(!bench.key("m"));
  CHECK(!bench.key("+"));
  CHECK(bench.key("ArrowLeft"));
  CHECK(bench.key("Escape"));
  CHECK(bench.platform.settings["single-keys"] == "off");
}

TEST_CASE("while a drag is under way arrows move neither the thing nor the paper") {
  for (const bool in_focus : {true, false}) {
    CAPTURE(in_focus);
    Keyboard bench;
    bench.lay_edge();
    const ScreenPoint grip = bench.middle("edge/reading");
    bench.hold(grip, grip + ScreenPoint{0, 70});
    if (in_focus) bench.focus("edge/body");  // a command puts the drag back
    if (in_focus) bench.hold(grip, grip + ScreenPoint{0, 70});
    const ScreenPoint edge = bench.middle("edge/reading"), rose = bench.middle("rose/centre");
    CHECK(bench.key("ArrowRight"));
    CHECK(bench.middle("edge/reading") == edge);
    CHECK(bench.middle("rose/centre") == rose);
    bench.send(PointerPhase::up, grip + ScreenPoint{0, 70});
    CHECK(bench.key("ArrowRight"));  // the hand has let go
    CHECK_FALSE((bench.middle("edge/reading") == edge && bench.middle("rose/centre") == rose));
  }
}

TEST_CASE("a rose is under the keys for as long as its tool or its slip shows which") {
  Keyboard bench;
  const Value rose = (*bench.read("roses").items())[0];
  bench.done("tool", Value::object({{"tool", "rose"}}));
  bench.key("ArrowRight");
  bench.key("Enter");
  CHECK(bench.step_label().starts_with("move"));
  bench.done("undo");
  bench.done("tool", Value::object({{"tool", "rose"}}));  // put down
  const ScreenPoint centre = bench.middle("rose/centre");
  bench.key("ArrowRight");
  bench.app.keys_at_rest();
  CHECK((*bench.read("roses").items())[0] == rose);
  CHECK(bench.middle("rose/centre").x_px < centre.x_px);  // the paper has moved
  CHECK_FALSE(bench.key("Delete"));
  CHECK(bench.read("roses").items()->size() == 1);

  bench.press_thing("rose/" + *rose["id"].text());  // its slip opens
  bench.key("ArrowRight");
  bench.key("Enter");
  CHECK(bench.step_label().starts_with("move"));
}

TEST_CASE("a selected leg is rubbed out by Delete, and arrows move the paper") {
  Keyboard bench;
  const std::size_t legs = bench.read("legs").items()->size();
  bench.done("select-leg", Value::object({{"id", bench.leg_id(0)}}));
  const ScreenPoint rose = bench.middle("rose/centre");
  bench.key("ArrowRight");
  CHECK(bench.middle("rose/centre").x_px == doctest::Approx(rose.x_px - 40));
  CHECK(bench.key("Delete"));
  CHECK(bench.read("legs").items()->size() == legs - 1);
  CHECK_FALSE(bench.key("Delete"));
  CHECK(bench.read("legs").items()->size() == legs - 1);
}

TEST_CASE("Delete held down rubs one thing out and no more") {
  Keyboard bench;
  bench.done("outline");
  const std::size_t marks = bench.read("marks").items()->size();
  bench.focus(bench.mark_thing(1));
  for (const bool repeat : {false, true, true}) CHECK(bench.app.key({.key = "Delete", .repeat = repeat}));
  CHECK(bench.read("marks").items()->size() == marks - 1);
}

TEST_CASE("pages of the outline go on from what is shown, though things have come before it") {
  Keyboard bench;
  for (int i = 0; i < 60; ++i)
    bench.done("add-mark", Value::object({{"name", "Pole " + std::to_string(i)}, {"lat_deg", 44.12 + 0.001 * i}, {"lon_deg", -31.3}}));
  bench.done("outline");
  bench.key("PageDown");
  const std::vector<ButtonItem> before = bench.things();
  bench.focus(before.back().name);
  bench.lay_edge();
  REQUIRE(bench.things().back().name == before.back().name);
  const std::string first = bench.things().front().name;
  bench.focus(before[before.size() - 2].name);
  CHECK(bench.things().front().name == first);  // nothing jumps under the keys
  bench.done("outline");
  bench.done("outline");
  bench.focus(before.back().name);
  bench.key("PageDown");
  const std::string next = bench.things().front().name;
  CHECK(std::stoi(next.substr(5)) == std::stoi(before.back().name.substr(5)) + 1);
  bench.key("PageUp");
  CHECK(bench.things().front().name == first);
}

TEST_CASE("what a change of the sheet takes off it has no longer the focus") {
  Keyboard bench;
  bench.done("outline");
  bench.lay_edge();
  bench.focus("edge/body");
  bench.done("reshape-sheet", Value::object({{"scale", 200'000}}));
  REQUIRE(bench.read("edge").is_null());
  CHECK(bench.outline().in_focus.empty());
}

TEST_CASE("Esc after arrows puts the tool back too") {
  Keyboard bench;
  bench.lay_edge();
  bench.done("tool", Value::object({{"tool", "mark"}}));
  for (const char* thing : {"edge/end-b", "edge/body"}) {
    bench.focus(thing);
    bench.keys("ArrowUp", 3);
    CHECK(bench.item<ButtonItem>("tool/straight-edge")->pressed == true);
    bench.key("Escape");
    CHECK(bench.item<ButtonItem>("tool/mark")->pressed == true);
  }
}

TEST_CASE("what ends where it began is no step of the sheet") {
  Keyboard bench;
  bench.done("add-note", Value::object({{"text", "rips"}, {"lat_deg", 44.12}, {"lon_deg", -31.3}}));
  const std::string note = "note/" + *(*bench.read("notes").items())[0]["id"].text(), rose = "rose/" + *(*bench.read("roses").items())[0]["id"].text();
  const Value step = bench.read("history")["step"];
  for (const std::string& thing : {bench.mark_thing(3), rose, note}) {
    CAPTURE(thing);
    bench.focus(thing);
    bench.keys("ArrowRight", 3);
    bench.keys("ArrowLeft", 3);
    bench.platform.heard.clear();
    bench.app.keys_at_rest();
    CHECK(bench.read("history")["step"] == step);
    CHECK(bench.platform.heard.size() == 1);  // where it lies is said all the same
  }
}

TEST_CASE("the hinge by keys: both points leave their marks at once, and either is caught from outside") {
  Keyboard bench;
  bench.done("open-dividers", Value::object({{"from", bench.mark_id(0)}, {"to", bench.mark_id(1)}}));
  const double opening_nm = *bench.read("dividers")["distance_nm"].number();
  bench.focus("dividers/hinge");
  bench.key("ArrowLeft");
  CHECK(bench.read("dividers")["on"].items()->empty());
  bench.keys("ArrowLeft", 5, true);  // 51 px away, out of reach
  CHECK(bench.read("dividers")["on"].items()->empty());
  bench.keys("ArrowRight", 3, true);  // 21 px away one is caught, which brings the other home
  const Value on = bench.read("dividers")["on"];
  REQUIRE(on.items()->size() == 1);
  CHECK(*(*on.items())[0].text() == bench.mark_id(0));
  CHECK(*bench.read("dividers")["distance_nm"].number() == doctest::Approx(opening_nm));
  bench.key("ArrowRight");  // the other, back on its own, holds nothing either
  CHECK(bench.read("dividers")["on"].items()->empty());
}

TEST_CASE("a thing that can't be moved says so to a script") {
  Keyboard bench;
  for (const std::string& thing : {std::string("sheet"), "leg/" + bench.leg_id(0)}) {
    const Value moved = bench.ask("nudge-thing", Value::object({{"thing", thing}, {"right_px", 3}, {"down_px", 0}}));
    REQUIRE(moved.has("error"));
    CHECK(bench.says(*moved["error"].text()));
  }
}

TEST_CASE("the last rose rubbed out by Delete says what is lost, as its button does") {
  Keyboard bench;
  bench.press_thing("rose/" + *(*bench.read("roses").items())[0]["id"].text());
  bench.key("Delete");
  CHECK(bench.says("no rose left"));
}
