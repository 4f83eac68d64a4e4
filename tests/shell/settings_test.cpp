// What is set for this device: kept there, in force again at the next start; and what the page is asked to do with it.
#include "doctest/doctest.h"
#include "shell/words.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

Value set(const char* name, const char* word) { return Value::object({{name, word}}); }

/// Another page on the same device.
FakePlatform next_start(const FakePlatform& before) {
  FakePlatform next;
  next.settings = before.settings;
  return next;
}

}  // namespace

TEST_CASE("the dimmer goes by single presses, up and down, and is kept") {
  Tabletop desk;
  desk.done("open-slip", set("slip", "settings"));
  CHECK_FALSE(desk.item<ButtonItem>("darker"));  // by day there is nothing to take away
  desk.done("set-palette", set("palette", "night"));
  for (int step = 0; step < k_dimmest; ++step) {
    CHECK(desk.app.dim_step() == step);
    CHECK(desk.item<ButtonItem>("darker")->enabled);
    desk.press_button("darker");
  }
  CHECK(desk.app.dim_step() == k_dimmest);
  CHECK_FALSE(desk.item<ButtonItem>("darker")->enabled);
  CHECK(desk.item<ButtonItem>("darker")->reason.find("own brightness") != std::string::npos);

  FakePlatform next = next_start(desk.platform);
  CHECK(App(next).dim_step() == k_dimmest);

  desk.press_button("lighter");
  CHECK(desk.app.dim_step() == k_dimmest - 1);
  desk.done("set-palette", set("palette", "day"));
  CHECK(desk.app.dim_step() == 0);
  desk.done("set-palette", set("palette", "dusk"));
  CHECK(desk.app.dim_step() == k_dimmest - 1);
  CHECK_FALSE(desk.item<ButtonItem>("darker")->reason.empty());
  for (const char* bad : {"4", "-1", "", "1.0", "x"}) CHECK(desk.ask("set-dimmer", set("step", bad)).has("error"));
  CHECK(desk.app.dim_step() == k_dimmest - 1);
}

TEST_CASE("the screen is kept awake when that was set, also at the next start, and how it stands is said") {
  Tabletop desk;
  desk.done("open-slip", set("slip", "settings"));
  CHECK_FALSE(desk.platform.kept_awake);
  desk.done("set-screen", set("screen", "awake"));
  CHECK(desk.platform.kept_awake);
  struct Told { const char* state; const char* words; };
  for (const Told& told : {Told{"held", "screen stays on"}, Told{"refused", "would not"}, Told{"absent", "can't keep the screen"}}) {
    CAPTURE(told.state);
    CHECK_FALSE(desk.says(told.words));
    desk.app.set_awake_state(told.state);
    CHECK(desk.says(told.words));
  }
  FakePlatform next = next_start(desk.platform);
  App app(next);
  app.start("", false);
  CHECK(next.kept_awake);

  desk.done("set-screen", set("screen", "device"));
  CHECK_FALSE(desk.platform.kept_awake);
  CHECK_FALSE(desk.says("can't keep the screen"));
}

TEST_CASE("a newer version is named in the margin, offered under More, and comes once all is kept") {
  Tabletop desk;
  desk.done("close-slip");
  desk.app.set_offline_state("waiting");
  CHECK(desk.says(words::newer_version_waits()));
  desk.done("open-slip", set("slip", "more"));
  CHECK(desk.item<ButtonItem>("use-new-version")->enabled);

  desk.app.store_read();
  desk.done("add-mark", Value::object({{"name", "Gull Rock"}, {"lat_deg", 44.13}, {"lon_deg", -31.3}}));
  REQUIRE_FALSE(desk.platform.store_writes.empty());
  desk.done("use-new-version");
  CHECK_FALSE(desk.platform.new_version_used);  // the mark is on its way to the store
  std::size_t answered = 0;
  while (answered < desk.platform.store_writes.size()) desk.app.store_written(desk.platform.store_writes[answered++].id);
  CHECK(desk.platform.new_version_used);
}

TEST_CASE("while something is not kept the newer version is not to be had, and the button says why") {
  Tabletop desk;
  desk.app.store_refused(StoreFault::missing);
  desk.app.set_offline_state("waiting");
  desk.done("open-slip", set("slip", "more"));
  CHECK(desk.item<ButtonItem>("use-new-version")->enabled);  // the sheet to try is as it was
  desk.done("add-mark", Value::object({{"name", "Gull Rock"}, {"lat_deg", 44.13}, {"lon_deg", -31.3}}));
  const ButtonItem button = *desk.item<ButtonItem>("use-new-version");
  CHECK_FALSE(button.enabled);
  CHECK(button.reason.find("not kept") != std::string::npos);
  CHECK(desk.ask("use-new-version")["error"] == Value(button.reason));
  CHECK_FALSE(desk.platform.new_version_used);
}

TEST_CASE("the wish for the newer version is dropped, and that is said, when what was done can't be kept") {
  Tabletop desk;
  desk.app.set_offline_state("waiting");
  desk.app.store_read();
  desk.done("add-mark", Value::object({{"name", "Gull Rock"}, {"lat_deg", 44.13}, {"lon_deg", -31.3}}));
  desk.done("use-new-version");
  REQUIRE_FALSE(desk.platform.store_writes.empty());
  for (const StoreWrite& write : desk.platform.store_writes) desk.app.store_failed(write.id, StoreFault::full);
  CHECK(desk.says(words::not_while_unkept()));
  desk.platform.store_writes.clear();
  desk.platform.time_ms += 3'600'000;
  desk.app.woken();
  REQUIRE_FALSE(desk.platform.store_writes.empty());  // it is tried again
  for (std::size_t i = 0; i < desk.platform.store_writes.size(); ++i) desk.app.store_written(desk.platform.store_writes[i].id);
  CHECK(desk.read("history")["kept"]["state"] == Value("kept"));
  CHECK_FALSE(desk.platform.new_version_used);  // hours later the page does not go from under the user
  desk.done("use-new-version");
  CHECK(desk.platform.new_version_used);
}

TEST_CASE("the newer version waits for a store that has not answered yet") {
  Tabletop desk;
  desk.done("add-mark", Value::object({{"name", "Gull Rock"}, {"lat_deg", 44.13}, {"lon_deg", -31.3}}));
  desk.done("use-new-version");
  CHECK_FALSE(desk.platform.new_version_used);
  desk.app.store_read();
  for (std::size_t i = 0; i < desk.platform.store_writes.size(); ++i) desk.app.store_written(desk.platform.store_writes[i].id);
  CHECK(desk.platform.new_version_used);
}
