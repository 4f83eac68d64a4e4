// The straight-edge the other way round: set to a direction, slid to a mark, a line drawn along it.
#include "shell/direction.h"

#include <cmath>

#include "core/earth/rhumb.h"
#include "core/formats/document_text.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

struct Bench : Tabletop {
  std::size_t count(const char* part) { return app.read()[part].items()->size(); }
  void set(const char* text, const char* ring) {
    if (!item<FieldItem>("direction")) done("begin-direction");
    ask("choose-direction-ring", Value::object({{"reference", ring}}));
    type("direction", text);
  }
  void slide_to(const std::string& mark) {
    // By its body, so far that the reading edge would pass the mark by a little: it is to snap.
    const ScreenPoint at = middle("edge/reading");
    const ScreenPoint to = middle(mark);
    drag(at, {to.x_px + 3, to.y_px + 4});
  }
};

double apart_deg(double a, double b) { return std::abs(std::remainder(a - b, 360)); }

}  // namespace

TEST_CASE("a typed magnetic bearing is laid off from a mark, and its line drawn in one step") {
  Bench bench;
  bench.ask("tool", Value::object({{"tool", "straight-edge"}}));
  bench.set("095", "magnetic");
  CHECK(*bench.read("edge")["shown"]["magnetic"].text() == "095°M");
  CHECK(*bench.read("edge")["shown"]["true"].text() == "086°T");  // 9 W: common practice, no source: true is magnetic less west
  // The sum runs upwards from what was set.
  const std::optional<ColumnSumItem> sum = bench.item<ColumnSumItem>("chain");
  REQUIRE(sum);
  CHECK(sum->rows[0].word == "magnetic");
  CHECK(sum->rows[1].sign == "−");
  CHECK(sum->rows[2].word == "true");
  CHECK_FALSE(bench.item<ButtonItem>("draw-line"));

  const std::string sarn = bench.mark_id(0);
  bench.slide_to("mark/#" + sarn);
  CHECK(bench.read("edge")["settled_on"].is_null());
  CHECK(*bench.read("edge")["locked"].flag());
  REQUIRE(bench.item<ButtonItem>("draw-line"));
  const std::size_t legs = bench.count("legs"), marks = bench.count("marks");
  bench.press_button("draw-line");
  CHECK(bench.count("legs") == legs + 1);
  CHECK(bench.count("marks") == marks + 1);
  const Value leg = bench.leg(legs);
  CHECK(*leg["from"].text() == sarn);
  CHECK(apart_deg(*leg["course_true_deg"].number(), 86) < 0.1);
  bench.done("undo");
  CHECK(bench.count("legs") == legs);
  CHECK(bench.count("marks") == marks);
}

TEST_CASE("the line's end is dragged along the edge, and typed") {
  Bench bench;
  bench.done("turn-edge", Value::object({{"bearing_deg", 60}, {"reference", "true"}}));
  bench.done("slide-edge-to", Value::object({{"mark", bench.mark_id(0)}}));
  const Value sarn = bench.mark(0);
  const auto place_of_sarn = [&] { return bench.middle("sheet/" + std::to_string(*sarn["lat_deg"].number()) + " " + std::to_string(*sarn["lon_deg"].number())); };
  const ScreenPoint end = bench.middle("edge/line-end"), start = place_of_sarn();
  // Where the finger goes aside, the end stays on the edge.
  bench.drag(end, {start.x_px + 90 + 20, start.y_px - 40 + 30});
  const ScreenPoint moved = bench.middle("edge/line-end");
  CHECK(std::abs(std::atan2(moved.x_px - start.x_px, start.y_px - moved.y_px) * 180 / 3.14159265358979 - 60) < 0.01);
  CHECK(std::hypot(moved.x_px - start.x_px, moved.y_px - start.y_px) == doctest::Approx(110 * std::sin(1.0471975512) + 10 * std::cos(1.0471975512)));
  bench.type("line-length", "2.5");
  CHECK(bench.field("line-length").text == "2.50");
  bench.done("draw-line");
  const Value leg = bench.leg(bench.count("legs") - 1);
  CHECK(std::abs(*leg["distance_nm"].number() - 2.5) < 0.001);
  CHECK(apart_deg(*leg["course_true_deg"].number(), 60) < 0.1);
}

TEST_CASE("wrong directions and lengths stay as typed, with the reason, and turn nothing") {
  Bench bench;
  bench.set("095", "true");
  const Value before = bench.read("edge");
  for (const char* text : {"360", "400", "-5", "abc", "095C", "12.5.3"}) {
    CAPTURE(text);
    bench.type("direction", text);
    CHECK(bench.field("direction").text == text);
    CHECK(bench.field("direction").error.size() > 10);
    CHECK(bench.read("edge") == before);
  }
  bench.ask("choose-direction-ring", Value::object({{"reference", "compass"}}));
  bench.type("direction", "095");
  CHECK(bench.field("direction").error.find("deviation is not entered") != std::string::npos);
  bench.set("095", "true");
  CHECK(bench.field("direction").error.empty());
  bench.done("slide-edge-to", Value::object({{"mark", bench.mark_id(0)}}));
  for (const char* text : {"0", "900", "far"}) {
    CAPTURE(text);
    bench.type("line-length", text);
    CHECK(bench.field("line-length").text == text);
    CHECK(bench.field("line-length").error.size() > 10);
  }
  CHECK(bench.ask("draw-line", Value::object({{"distance_nm", -1}})).has("error"));
  bench.done("lift-edge");
  CHECK(bench.ask("draw-line").has("error"));
}

TEST_CASE("set anew at a mark it turns about that mark; turned round, the line goes the other way") {
  Bench bench;
  bench.set("095", "true");
  bench.done("slide-edge-to", Value::object({{"mark", bench.mark_id(1)}}));
  bench.type("direction", "045");
  CHECK(*bench.read("edge")["bearing_true_deg"].number() == doctest::Approx(45));
  bench.press_button("turn-edge-round");
  CHECK(bench.field("direction").text == "225");
  bench.done("draw-line");
  const Value leg = bench.leg(bench.count("legs") - 1);
  CHECK(*leg["from"].text() == bench.mark_id(1));
  CHECK(apart_deg(*leg["course_true_deg"].number(), 225) < 0.1);
}

TEST_CASE("an edge that is set turns about its rose by hand, a whole degree at a time; Esc throws that away") {
  Bench bench;
  bench.set("090", "magnetic");
  const Value before = bench.read("edge");
  const ScreenPoint grip = bench.middle("edge/end-b");
  bench.drag(grip, grip + ScreenPoint{-10, 55});
  const Value edge = bench.read("edge");
  CHECK(edge["settled_on"] == before["settled_on"]);
  const double magnetic_deg = *edge["bearing_magnetic_deg"].number();
  CHECK(magnetic_deg > 95);
  CHECK(std::abs(magnetic_deg - std::round(magnetic_deg)) < 1e-9);
  const ScreenPoint again = bench.middle("edge/end-b");
  bench.hold(again, again + ScreenPoint{-10, 55});
  CHECK_FALSE(bench.read("edge") == edge);
  bench.app.key({.key = "Escape"});
  CHECK(bench.read("edge") == edge);
}

TEST_CASE("laid on a line to be read, or let go, the slip reads again") {
  Bench bench;
  bench.set("095", "true");
  bench.done("lay-edge", Value::object({{"from", bench.mark_id(0)}, {"to", bench.mark_id(1)}}));
  CHECK_FALSE(bench.item<FieldItem>("direction"));
  bench.set("095", "true");
  CHECK(bench.item<FieldItem>("direction"));
  bench.done("lift-edge");
  CHECK_FALSE(bench.item<FieldItem>("direction"));
}

TEST_CASE("a line stays within the border however long the edge") {
  Bench bench;
  for (const double deg : {0.0, 37.0, 90.0, 181.0, 300.0}) {
    CAPTURE(deg);
    bench.done("turn-edge", Value::object({{"bearing_deg", deg}, {"reference", "true"}}));
    bench.done("slide-edge-to", Value::object({{"mark", bench.mark_id(2)}}));
    bench.done("draw-line");
    const Document drawn = decode_document(bench.app.link()).value();
    CHECK(lies_on_sheet(projection_of(drawn), drawn.marks.at(drawn.marks.size() - 1).at));
    CHECK(apart_deg(*bench.leg(bench.count("legs") - 1)["course_true_deg"].number(), deg) < 0.1);
    bench.done("undo");
    bench.done("lift-edge");
  }
}
