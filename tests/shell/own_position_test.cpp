// Where the device says it is: asked for, shown, marked, refused, let go; and never kept by itself.
#include <cmath>
#include <limits>

#include "core/positions/position.h"
#include "doctest/doctest.h"
#include "tests/shell/fake_store.h"
#include "tests/shell/visit.h"

namespace fogsheet {
namespace {

constexpr Position k_on_sheet{44.0, -31.0};
constexpr Position k_off_sheet{45.5, -31.0};

/// A page with a sheet about 44 N 31 W in hand and the slip open.
struct Asked {
  FakeStore store;
  Visit visit{store};

  Asked() {
    visit.done("new-sheet", Value::object({{"mid_lat_deg", 44.0}, {"mid_lon_deg", -31.0}, {"scale", 100000}, {"paper", "A4-across"}}));
    visit.done("open-slip", Value::object({{"slip", "own-position"}}));
    visit.done("ask-own-position");
  }

  std::string said() {
    std::string all;
    const Panel* slip = visit.panel("own-position");
    REQUIRE(slip);
    for (const PanelItem& item : slip->items) {
      if (const auto* line = std::get_if<LineItem>(&item)) all += line->text + "\n";
      if (const auto* caution = std::get_if<CautionItem>(&item)) all += caution->text + "\n";
      if (const auto* button = std::get_if<ButtonItem>(&item)) all += "[" + button->label + "]\n";
    }
    return all;
  }
  bool says(const std::string& part) { return said().find(part) != std::string::npos; }
};

}  // namespace

TEST_CASE("the device is asked by a press alone, and let go by one") {
  FakeStore store;
  Visit visit(store);
  CHECK_FALSE(visit.platform.position_followed);
  visit.app.set_own_position(k_on_sheet, 5, visit.platform.time_ms);  // nobody asked
  CHECK(visit.app.command("mark-own-position", Value::object()).has("error"));

  Asked asked;
  CHECK(asked.visit.platform.position_followed);
  CHECK(asked.says("The device is asked"));
  asked.visit.app.set_own_position(k_on_sheet, 12.4, asked.visit.platform.time_ms);
  CHECK(asked.says("44°00.000′N 031°00.000′W"));
  CHECK(asked.says("within 12 m, 19 times in 20"));
  CHECK(asked.says("[Mark here]"));
  asked.visit.done("let-own-position-go");
  CHECK_FALSE(asked.visit.platform.position_followed);
  CHECK(asked.says("[Ask the device]"));
  asked.visit.app.set_own_position(k_on_sheet, 5, asked.visit.platform.time_ms);  // it came too late
  CHECK_FALSE(asked.says("[Mark here]"));
}

TEST_CASE("it is kept nowhere unless it is marked, and then as any other mark") {
  Asked asked;
  Visit& visit = asked.visit;
  const std::string link = visit.app.link();
  visit.leave();
  std::size_t records = asked.store.all().size();
  visit.app.set_own_position(k_on_sheet, 12, visit.platform.time_ms);
  visit.leave();
  CHECK(visit.app.link() == link);
  CHECK(asked.store.all().size() == records);

  const Value made = visit.done("mark-own-position");
  CHECK(made.has("id"));
  CHECK(visit.app.link() != link);
  CHECK(visit.panel("mark"));
  visit.done("undo");
  CHECK(visit.app.link() == link);
}

TEST_CASE("off the sheet it says where, and can't be marked") {
  Asked asked;
  asked.visit.app.set_own_position(k_off_sheet, 12, asked.visit.platform.time_ms);
  CHECK(asked.says("off this sheet: 000°T, 90.0 nm"));  // a degree and a half of latitude there is 166.67 km (WGS 84)
  CHECK_FALSE(asked.says("[Mark here]"));
  CHECK(asked.visit.app.command("mark-own-position", Value::object()).has("error"));
  CHECK(asked.visit.app.command("show-own-position", Value::object()).has("error"));
}

TEST_CASE("what does not come has its reason; what has come stands and says how old it is") {
  Asked asked;
  App& app = asked.visit.app;
  for (const auto& [why, words] : {std::pair{"refused", "may not ask"}, {"absent", "gives no position"}, {"unknown", "can't tell"}, {"late", "Nothing came"}}) {
    asked.visit.done("ask-own-position");
    app.no_own_position(why);
    CHECK(asked.says(words));
    CHECK(asked.says(std::string(why) == "refused" || std::string(why) == "absent" ? "[Ask the device]" : "[Let it go]"));
  }
  asked.visit.done("ask-own-position");
  app.set_own_position(k_on_sheet, 12, asked.visit.platform.time_ms);
  app.no_own_position("late");
  asked.visit.platform.time_ms += 200'000;
  app.minute_passed();
  CHECK(asked.says("3 minutes old"));
  app.no_own_position("refused");  // taken back
  CHECK_FALSE(asked.says("[Mark here]"));
}

TEST_CASE("a coarse one is told from a good one, a broken one is none") {
  Asked asked;
  App& app = asked.visit.app;
  app.set_own_position(k_on_sheet, 3'000, asked.visit.platform.time_ms);
  CHECK(asked.says("within 1.6 nm"));
  CHECK(asked.says("A coarse position"));
  app.set_own_position(k_on_sheet, 30, asked.visit.platform.time_ms);
  CHECK_FALSE(asked.says("A coarse position"));
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const auto& [at, accuracy_m] : {std::pair<Position, double>{{nan, 0}, 5}, {{95, 0}, 5}, {{44, nan}, 5}, {k_on_sheet, -1}, {k_on_sheet, nan}}) {
    asked.visit.done("ask-own-position");
    app.set_own_position(at, accuracy_m, asked.visit.platform.time_ms);
    CHECK(asked.says("can't tell"));
  }
}

}  // namespace fogsheet
