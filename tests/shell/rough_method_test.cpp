// The rough method's slip: readings typed one after another, taken out, their mean, and what their spread means.
#include <cmath>

#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

struct Bench : Tabletop {
  Bench() { done("open-slip", Value::object({{"slip", "rough-method"}})); }
  void readings(std::initializer_list<const char*> texts) {
    for (const char* text : texts) type("rough-reading", text);
  }
};

}  // namespace

TEST_CASE("readings about north have their mean there, each can be taken out") {
  Bench bench;
  bench.readings({"358", "002", "006"});
  CHECK(bench.field("rough-reading").text.empty());
  CHECK(bench.field("rough-reading").completes_at == 3);
  const auto mean = [&] {
    for (const Panel& panel : bench.app.panels())
      for (const PanelItem& item : panel.items)
        if (const auto* line = std::get_if<LineItem>(&item); line && !line->readings.empty()) return line->readings[0].figures + line->readings[0].unit;
    return std::string();
  };
  CHECK(mean() == "002°T");  // (-2 + 2 + 6) / 3
  bench.press_button("rough-reading/2");
  CHECK(mean() == "000°T");
  CHECK_FALSE(bench.item<ButtonItem>("rough-reading/2"));
  bench.press_button("clear-rough");
  CHECK(mean().empty());
}

TEST_CASE("what the spread means stands over the distance to run, typed or of the leg selected") {
  Bench bench;
  bench.readings({"056", "060", "064"});
  CHECK(bench.says("distance to run"));
  bench.type("rough-run", "4.1");
  CHECK(bench.says("4.0°"));  // sqrt((16 + 0 + 16) / 2)
  CHECK(bench.says("Over 4.1 nm that is 0.3 nm to either side"));  // 4.1 sin 4 = 0.286
  bench.type("rough-run", "");
  bench.done("select-leg", Value::object({{"id", bench.leg_id(0)}}));
  bench.done("open-slip", Value::object({{"slip", "rough-method"}}));
  CHECK(bench.says("Over " + *bench.leg(0)["shown"]["distance"].text()));
}

TEST_CASE("wrong readings stay as typed, with the reason, and nothing entered before is lost") {
  Bench bench;
  bench.readings({"060", "062"});
  for (const char* text : {"360", "400", "abc", "-5", "062M", "062C"}) {
    CAPTURE(text);
    bench.type("rough-reading", text);
    CHECK(bench.field("rough-reading").text == text);
    CHECK(bench.field("rough-reading").error.size() > 10);
    CHECK(bench.item<ButtonItem>("rough-reading/1"));
    CHECK_FALSE(bench.item<ButtonItem>("rough-reading/2"));
  }
  bench.type("rough-run", "far");
  CHECK(bench.field("rough-run").text == "far");
  CHECK(bench.field("rough-run").error.size() > 10);
  CHECK(bench.ask("remove-rough-reading", Value::object({{"index", 7}})).has("error"));
}

TEST_CASE("the mean is written on the leg selected, and undone") {
  Bench bench;
  bench.readings({"095", "099", "096"});
  CHECK_FALSE(bench.item<ButtonItem>("write-mean"));
  bench.done("select-leg", Value::object({{"id", bench.leg_id(1)}}));
  bench.done("open-slip", Value::object({{"slip", "rough-method"}}));
  bench.press_button("write-mean");
  CHECK(*bench.leg(1)["written"]["bearing_deg"].number() == 97);  // (95 + 99 + 96) / 3 = 96.7
  bench.done("undo");
  CHECK(bench.leg(1)["written"].is_null());
}

TEST_CASE("readings off the magnetic ring are brought to true by the sum") {
  Bench bench;
  bench.type("rough-reading", "105M");
  const std::optional<ColumnSumItem> sum = bench.item<ColumnSumItem>("chain");
  REQUIRE(sum);
  REQUIRE(sum->rows.size() >= 3);
  CHECK(sum->rows[0].word == "magnetic");
  CHECK(sum->rows[2].figures == "096");  // 9 W: common practice, no source: true is magnetic less west
}
