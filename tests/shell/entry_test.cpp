// Figures entered by keypad, and that nothing typed is lost when the page is loaded again.
#include "doctest/doctest.h"
#include "tests/shell/fake_store.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

/// A tabletop that keeps; what it kept is brought out on another by `load`.
struct KeptTabletop : Tabletop {
  void load(FakeStore& store) {
    for (StoreRecord& record : store.all()) app.store_record(std::move(record));
    app.store_read();
  }
  void leave(FakeStore& store) {
    app.hidden();
    store.ask(std::exchange(platform.store_writes, {}));
    while (!store.waiting.empty()) {
      std::uint64_t id = 0;
      REQUIRE(store.do_next(id) == StoreFault::none);
      app.store_written(id);
      store.ask(std::exchange(platform.store_writes, {}));
    }
  }
  Value open(const char* slip) { return done("open-slip", Value::object({{"slip", slip}})); }
};

std::vector<std::string> labels(const Value& keys) {
  std::vector<std::string> all;
  for (const Value& key : *keys.items()) all.push_back(key.text() ? *key.text() : *key["label"].text());
  return all;
}

}  // namespace

TEST_CASE("each field of figures has the pad for what belongs in it, words have none") {
  Tabletop table;
  table.done("open-slip", Value::object({{"slip", "new-mark"}}));
  CHECK(table.field("name").pad == Pad::none);
  CHECK(table.field("note").pad == Pad::none);
  CHECK(table.field("position").pad == Pad::position);
  CHECK(table.field("height").pad == Pad::quantity);
  table.done("fill-new-mark", Value::object({{"field", "how"}, {"text", "bearing"}}));
  CHECK(table.field("bearing").pad == Pad::direction);
  CHECK(table.field("bearing").completes_at == 3);
  CHECK(table.field("distance").pad == Pad::quantity);
  table.done("open-slip", Value::object({{"slip", "sheet"}}));
  table.done("type-variation", Value::object({{"field", "variation-by"}, {"text", "printed"}}));
  CHECK(table.field("variation").pad == Pad::variation);
  CHECK(table.field("date").pad == Pad::date);
  CHECK(table.field("scale").pad == Pad::quantity);
}

TEST_CASE("a pad has the figures at the left and what ends an entry in a column") {
  const Value direction = to_value(Pad::direction);
  CHECK(labels(direction["keys"]) == std::vector<std::string>{"1", "2", "3", "T", "4", "5", "6", "M", "7", "8", "9", "C", ".", "0", "del", "recip."});
  CHECK(labels(direction["more"]) == std::vector<std::string>{"−1°", "+1°", "paste", "clear"});
  const Value& magnetic = (*direction["keys"].items())[7];
  CHECK(*magnetic["act"].text() == "letter");
  CHECK(*magnetic["says"].text() == "magnetic");
  CHECK(*(*direction["keys"].items())[15]["value"].number() == 180);
  CHECK(labels(to_value(Pad::position)["keys"]) == std::vector<std::string>{"1", "2", "3", "N", "4", "5", "6", "S", "7", "8", "9", "E", ".", "0", "del", "W"});
  CHECK(labels(to_value(Pad::variation)["keys"]) == std::vector<std::string>{"1", "2", "3", "E", "4", "5", "6", "W", "7", "8", "9", "°", ".", "0", "del", "′"});
  CHECK(to_value(Pad::none).is_null());
  for (const Pad pad : {Pad::direction, Pad::position, Pad::variation, Pad::quantity, Pad::date}) {
    const Value value = to_value(pad);
    CHECK(value["keys"].items()->size() == static_cast<std::size_t>(4 * *value["columns"].number()));  // four full rows
  }
}

TEST_CASE("what the position pad types is read as the position meant") {
  Tabletop table;
  table.done("open-slip", Value::object({{"slip", "new-mark"}}));
  table.type("name", "By pad");
  table.type("position", "44°10.5′N 031°20W");
  table.press_button("make-new-mark");
  const Value mark = (*table.app.read()["marks"].items()).back();
  CHECK(*mark["name"].text() == "By pad");
  CHECK(*mark["lat_deg"].number() == doctest::Approx(44.175).epsilon(1e-9));
  CHECK(*mark["lon_deg"].number() == doctest::Approx(-31 - 20 / 60.0).epsilon(1e-9));
}

TEST_CASE("half-filled forms and wrong entries come back when the page is loaded again") {
  FakeStore store;
  KeptTabletop before;
  before.load(store);
  const std::string mark = before.mark_id(0);
  before.done("select-mark", Value::object({{"id", mark}}));
  before.type("height", "ten or so");
  const std::string reason = before.field("height").error;
  REQUIRE_FALSE(reason.empty());
  before.open("new-sheet");
  before.type("name", "Half made");
  before.open("dividers");
  before.type("distance", "3.7 furlongs");
  before.open("rough-method");
  before.type("rough-reading", "40q");
  before.open("straight-edge");
  before.done("begin-direction");
  before.type("direction", "37x");
  before.open("new-mark");
  before.type("name", "Ó Dubhthaigh 日本");
  before.type("position", "44 1");
  before.leave(store);

  KeptTabletop after;
  after.load(store);
  CHECK(after.field("name").text == "Ó Dubhthaigh 日本");  // the slip that was open is open
  CHECK(after.field("position").text == "44 1");
  after.open("new-sheet");
  CHECK(after.field("name").text == "Half made");
  after.open("dividers");
  CHECK(after.field("distance").text == "3.7 furlongs");
  CHECK_FALSE(after.field("distance").error.empty());
  after.open("rough-method");
  CHECK(after.field("rough-reading").text == "40q");
  CHECK_FALSE(after.field("rough-reading").error.empty());
  after.open("straight-edge");
  CHECK(after.field("direction").text == "37x");
  CHECK_FALSE(after.field("direction").error.empty());
  after.done("select-mark", Value::object({{"id", mark}}));
  CHECK(after.field("height").text == "ten or so");
  CHECK(after.field("height").error == reason);
}

TEST_CASE("of what is typed a bounded part is kept, and the rest of the desk with it") {
  FakeStore store;
  KeptTabletop before;
  before.load(store);
  before.open("new-mark");
  before.type("name", "Short");
  before.type("note", std::string(5'000, 'n'));
  before.leave(store);
  std::size_t largest = 0;
  for (const StoreRecord& record : store.all()) largest = std::max(largest, record.bytes.size());
  CHECK(largest < 5'000);
  KeptTabletop after;
  after.load(store);
  CHECK(after.field("name").text == "Short");
  CHECK(after.field("note").text == "");
}

TEST_CASE("what is half typed changes nothing; it is kept with the desk and handed back once") {
  FakeStore store;
  KeptTabletop before;
  before.load(store);
  before.open("new-mark");
  const Value sheet = before.read("marks");
  before.app.set_half_typed({"new-mark name", "Gull R"});
  before.leave(store);
  CHECK(before.read("marks") == sheet);
  CHECK(before.field("name").text == "");
  {
    KeptTabletop after;
    after.load(store);
    const HalfTyped half = after.app.take_half_typed();
    CHECK(half.field == "new-mark name");
    CHECK(half.text == "Gull R");
    CHECK(after.app.take_half_typed().field == "");
  }
  // Back in sight, the field has it.
  before.app.set_half_typed({});
  before.leave(store);
  KeptTabletop after;
  after.load(store);
  CHECK(after.app.take_half_typed().text == "");
}

TEST_CASE("the sheet gives way when a slip comes to lie over the edge, and stays where the hand has put it") {
  Tabletop table;
  table.app.set_viewport({.width_px = 820, .height_px = 1100});
  table.done("tool", Value::object({{"tool", "straight-edge"}}));
  table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}}));
  // As low on the screen as it can be dragged, then a slip rises over it.
  const ScreenPoint start = table.middle("edge/reading");
  table.drag({20, 60}, {20, 60 + 1060 - start.y_px});
  CHECK(table.middle("edge/reading").y_px > 1000);
  table.app.set_viewport({.width_px = 820, .height_px = 1100, .covered_bottom_px = 500});
  const ScreenPoint clear = table.middle("edge/reading");
  CHECK(clear.y_px < 600);
  table.drag({20, 60}, {20, 160});
  const ScreenPoint moved = table.middle("edge/reading");
  CHECK(moved.y_px == doctest::Approx(clear.y_px + 100));
  table.app.set_viewport({.width_px = 820, .height_px = 1100, .covered_bottom_px = 480});  // less is covered: nothing moves
  CHECK(table.middle("edge/reading").y_px == doctest::Approx(moved.y_px));
}
