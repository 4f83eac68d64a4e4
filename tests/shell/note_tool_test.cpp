// Words written on the sheet: begun by a press, typed, moved after a hold, rubbed out.
#include <cmath>

#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

struct Bench : Tabletop {
  std::size_t count() { return app.read()["notes"].items()->size(); }
  Value note(std::size_t i) { return (*app.read()["notes"].items())[i]; }
  void take() { done("tool", Value::object({{"tool", "note"}})); }
  /// A drag that begins after the finger has rested.
  void drag_held(ScreenPoint from, ScreenPoint to) {
    send(PointerPhase::down, from);
    now_ms += 400;
    for (int i = 1; i <= 5; ++i) send(PointerPhase::move, {from.x_px + (to.x_px - from.x_px) * i / 5, from.y_px + (to.y_px - from.y_px) * i / 5});
    send(PointerPhase::up, to);
  }
};

const ScreenPoint k_place{640, 470};

}  // namespace

TEST_CASE("a press begins a note, its words are typed, and it is one step") {
  Bench bench;
  bench.take();
  bench.press(k_place);
  CHECK(bench.count() == 0);
  bench.type("words", "overfalls on the ebb");
  REQUIRE(bench.count() == 1);
  CHECK(*bench.note(0)["text"].text() == "overfalls on the ebb");
  bench.press_button("write-note");
  CHECK_FALSE(bench.item<FieldItem>("words"));
  const ScreenPoint at = bench.middle("note/overfalls on the ebb");
  CHECK(std::hypot(at.x_px - k_place.x_px, at.y_px - k_place.y_px) < 0.5);
  bench.done("undo");
  CHECK(bench.count() == 0);
  bench.done("redo");
  CHECK(bench.count() == 1);
}

TEST_CASE("a note without words is refused in place, and closing writes nothing") {
  Bench bench;
  bench.take();
  bench.press(k_place);
  bench.press_button("write-note");
  CHECK(bench.field("words").error.size() > 5);
  bench.done("close-slip");
  CHECK(bench.count() == 0);
  bench.press(k_place);
  const std::string endless(1200, 'x');
  bench.type("words", endless);
  CHECK(bench.field("words").text == endless);
  CHECK(bench.field("words").error.size() > 10);
  CHECK(bench.count() == 0);
}

TEST_CASE("with no tool a note is selected by a press and moved after a hold, else the paper moves") {
  Bench bench;
  bench.done("add-note", Value::object({{"text", "tide rips"}, {"lat_deg", 44.12}, {"lon_deg", -31.2}}));
  const ScreenPoint at = bench.middle("note/tide rips");
  bench.press(at + ScreenPoint{20, -5});
  CHECK(bench.field("words").text == "tide rips");
  const Value before = bench.note(0);
  bench.drag(at, at + ScreenPoint{-30, 20});
  CHECK(bench.note(0) == before);
  const ScreenPoint panned = bench.middle("note/tide rips");
  CHECK(std::abs(panned.x_px - at.x_px + 30) < 0.5);
  bench.drag_held(panned + ScreenPoint{10, -4}, panned + ScreenPoint{60, 36});
  const ScreenPoint moved = bench.middle("note/tide rips");
  CHECK(std::abs(moved.x_px - panned.x_px - 50) < 0.5);
  CHECK(std::abs(moved.y_px - panned.y_px - 40) < 0.5);
  bench.done("undo");
  CHECK(bench.note(0) == before);
}

TEST_CASE("words and place are changed by typing; wrong places stay as typed; rubbed out it is gone") {
  Bench bench;
  bench.done("add-note", Value::object({{"text", "tide rips"}, {"lat_deg", 44.12}, {"lon_deg", -31.2}}));
  const std::string id = *bench.note(0)["id"].text();
  bench.done("select-note", Value::object({{"id", id}}));
  bench.type("words", "tide rips\nat springs");
  CHECK(*bench.note(0)["text"].text() == "tide rips\nat springs");
  bench.type("place", "44°09.0'N 031°14.0'W");
  CHECK(*bench.note(0)["lat_deg"].number() == doctest::Approx(44.15));
  bench.type("place", "nowhere");
  CHECK(bench.field("place").text == "nowhere");
  CHECK(bench.field("place").error.size() > 10);
  bench.type("words", "");
  CHECK(bench.field("words").error.size() > 5);
  CHECK(bench.count() == 1);
  bench.press_button("remove-note");
  CHECK(bench.count() == 0);
  CHECK_FALSE(bench.item<FieldItem>("words"));
  CHECK(bench.ask("remove-note", Value::object({{"id", id}})).has("error"));
}
