// What the hand has read, written on the leg it was laid along.
#include <cmath>

#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

struct Bench : Tabletop {
  std::string rose = *(*app.read()["roses"].items())[0]["id"].text();
  void read_along(const std::string& from, const std::string& to) {
    done("lay-edge", Value::object({{"from", from}, {"to", to}}));
    done("slide-edge-to", Value::object({{"rose", rose}}));
  }
  Value written(std::size_t i) { return leg(i)["written"]; }
};

constexpr std::size_t k_middle_leg = 1;  // from the demo's first mark to its second

}  // namespace

TEST_CASE("the reading is kept on the leg as it was read, on the ring that was chosen, and undone") {
  Bench bench;
  bench.read_along(bench.mark_id(0), bench.mark_id(1));
  CHECK(bench.written(k_middle_leg).is_null());
  bench.press_button("write-on-leg");
  CHECK(*bench.written(k_middle_leg)["bearing_deg"].number() == 96);
  CHECK(*bench.written(k_middle_leg)["reference"].text() == "true");
  CHECK_FALSE(*bench.written(k_middle_leg)["stale"].flag());
  CHECK(bench.says("096°T"));
  bench.done("choose-write-ring", Value::object({{"reference", "magnetic"}}));
  bench.press_button("write-on-leg");
  CHECK(*bench.written(k_middle_leg)["bearing_deg"].number() == 105);
  CHECK(*bench.written(k_middle_leg)["reference"].text() == "magnetic");
  bench.done("undo");
  CHECK(*bench.written(k_middle_leg)["bearing_deg"].number() == 96);
  bench.done("undo");
  CHECK(bench.written(k_middle_leg).is_null());
  bench.done("redo");
  CHECK(*bench.written(k_middle_leg)["bearing_deg"].number() == 96);
}

TEST_CASE("laid the other way round it is still the leg's own direction that is written") {
  Bench bench;
  bench.read_along(bench.mark_id(1), bench.mark_id(0));
  CHECK(*bench.read("edge")["shown"]["true"].text() == "276°T");
  bench.press_button("write-on-leg");
  CHECK(*bench.written(k_middle_leg)["bearing_deg"].number() == 96);
}

TEST_CASE("of two legs between the same marks it is the one that goes the edge's way") {
  Bench bench;
  const std::string back = *bench.done("add-leg", Value::object({{"from", bench.mark_id(1)}, {"to", bench.mark_id(0)}}))["id"].text();
  bench.read_along(bench.mark_id(1), bench.mark_id(0));
  bench.press_button("write-on-leg");
  const std::size_t last = bench.app.read()["legs"].items()->size() - 1;
  CHECK(bench.leg_id(last) == back);
  CHECK(*bench.written(last)["bearing_deg"].number() == 276);
  CHECK(bench.written(k_middle_leg).is_null());
}

TEST_CASE("it goes stale when an end moves, and is warned of when it is over 2 degrees out") {
  Bench bench;
  const std::string leg = bench.leg_id(k_middle_leg);
  bench.done("write-on-leg", Value::object({{"leg", leg}, {"bearing_deg", 98}, {"reference", "true"}}));  // 1.6 out
  bench.done("select-leg", Value::object({{"id", leg}}));
  CHECK(bench.says("098°T"));
  CHECK_FALSE(bench.says("than is worked out"));
  bench.done("write-on-leg", Value::object({{"leg", leg}, {"bearing_deg", 99}, {"reference", "true"}}));
  CHECK(bench.says("2.6° more than is worked out"));
  const Value mark = bench.mark(0);
  bench.done("move-mark", Value::object({{"id", bench.mark_id(0)}, {"lat_deg", *mark["lat_deg"].number() + 0.01}, {"lon_deg", *mark["lon_deg"].number()}}));
  CHECK(*bench.written(k_middle_leg)["stale"].flag());
  CHECK(bench.says("An end has moved"));
  bench.press_button("rub-out-reading");
  CHECK(bench.written(k_middle_leg).is_null());
}

TEST_CASE("nothing is written before it is read, nor on a leg that the edge was not laid along") {
  Bench bench;
  CHECK(bench.ask("write-on-leg").has("error"));
  bench.done("lay-edge", Value::object({{"from", bench.mark_id(0)}, {"to", bench.mark_id(1)}}));
  CHECK_FALSE(bench.item<ButtonItem>("write-on-leg"));
  CHECK(bench.ask("write-on-leg").has("error"));
  bench.done("slide-edge-to", Value::object({{"rose", bench.rose}}));
  CHECK(bench.ask("write-on-leg", Value::object({{"leg", bench.leg_id(0)}})).has("error"));
  CHECK(bench.ask("write-on-leg", Value::object({{"leg", bench.leg_id(0)}, {"bearing_deg", 360}})).has("error"));
  CHECK(bench.ask("write-on-leg", Value::object({{"leg", bench.leg_id(0)}, {"bearing_deg", 60}, {"reference", "compass"}})).has("error"));
  CHECK(bench.ask("rub-out-reading", Value::object({{"leg", bench.leg_id(0)}})).has("error"));
}
