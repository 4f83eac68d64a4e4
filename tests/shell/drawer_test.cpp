// The application with a store: what a start brings back, the drawer's commands and panels, and what is said of keeping.
#include <algorithm>

#include "doctest/doctest.h"
#include "shell/app.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

const Value k_sheet = Value::object({{"mid_lat_deg", 44}, {"mid_lon_deg", -31}, {"scale", 100'000}, {"paper", "A4-across"}, {"name", "Gull"}});

void fill(Visit& visit) {
  visit.done("new-sheet", k_sheet);
  const Value a = visit.done("add-mark", Value::object({{"name", "Gull Rock"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  const Value b = visit.done("add-mark", Value::object({{"name", "Off Sarn"}, {"lat_deg", 44.05}, {"lon_deg", -31.1}}));
  visit.done("add-leg", Value::object({{"from", a["id"]}, {"to", b["id"]}}));
  visit.done("undo");
  visit.done("lay-edge", Value::object({{"from", a["id"]}, {"to", b["id"]}}));
  visit.done("closer");
}

}  // namespace

TEST_CASE("a second visit goes on where the first was left, desk and past and all") {
  FakeStore store;
  Visit first(store);
  fill(first);
  first.done("open-slip", Value::object({{"slip", "lists"}}));
  first.leave();
  Visit second(store);
  const Value left = first.app.read(), found = second.app.read();
  for (const auto& member : *left.members()) {
    CAPTURE(member.first);
    CHECK(found[member.first] == member.second);
  }
  CHECK(second.panel("lists") != nullptr);
  CHECK(second.panel("first-run") == nullptr);
  CHECK(second.app.where("rose/centre") == first.app.where("rose/centre"));
  second.done("redo");
  CHECK(second.app.read()["legs"].items()->size() == 1);
}

TEST_CASE("the demo is not kept before something is done on it, nor what lay on it") {
  FakeStore store;
  Visit first(store);
  CHECK(first.app.read()["history"]["kept"]["state"] == Value("nothing"));
  first.done("take-edge");
  first.leave();
  Visit second(store);
  CHECK(second.panel("first-run") != nullptr);
  CHECK(second.app.read()["edge"].is_null());
}

TEST_CASE("damaged desks change nothing") {
  FakeStore store;
  Visit first(store);
  fill(first);
  first.leave();
  const auto desk = std::find_if(store.records.begin(), store.records.end(), [](const auto& each) { return std::get<0>(each.first) == StorePart::desk; });
  REQUIRE(desk != store.records.end());
  const FakeStore::Key name = desk->first;
  const StoreBytes whole = desk->second;
  const std::span<const std::uint8_t> body = unframed(whole).value();
  for (std::size_t at = 0; at < body.size(); ++at) {
    StoreBytes damaged(body.begin(), body.end());
    damaged[at] ^= 0x55;
    store.records[name] = framed(damaged);  // as an older program might have written it: what it says is not believed
    Visit again(store);
    CHECK(again.app.read()["marks"] == first.app.read()["marks"]);
    damaged.resize(at);
    store.records[name] = framed(damaged);
    Visit cut(store);
    CHECK(cut.app.read()["marks"] == first.app.read()["marks"]);
  }
}

TEST_CASE("a link in the address opens beside what is kept, unless the page is only loaded anew") {
  FakeStore store;
  Visit first(store);
  fill(first);
  const std::string link = first.app.link();
  first.done("add-mark", Value::object({{"name", "later"}, {"lat_deg", 44.01}, {"lon_deg", -31}}));
  first.leave();
  FakeStore by_link = store;
  Visit second(by_link, link.substr(link.find('#') + 1));
  CHECK(second.app.read()["marks"].items()->size() == 3);  // work is in hand: it asks first
  second.done("open-arrived");
  CHECK(second.app.read()["marks"].items()->size() == 2);
  CHECK(second.app.read()["history"]["drawer"].items()->size() == 3);
  CHECK(second.app.read()["history"]["undo_label"] == Value("open a sheet"));
  Visit anew(store, link.substr(link.find('#') + 1), true);
  CHECK(anew.app.read()["marks"].items()->size() == 3);
  CHECK(anew.app.read()["history"]["drawer"].items()->size() == 2);
  FakeStore nothing;
  Visit without(nothing, link.substr(link.find('#') + 1), true);  // loaded anew where nothing could be kept
  CHECK(without.app.read()["marks"].items()->size() == 2);
}

TEST_CASE("the drawer shows all sheets by name and day, the one in hand marked; each can be taken") {
  FakeStore store;
  Visit visit(store);
  fill(visit);
  visit.platform.day = {2026, 11, 26};
  visit.platform.time_ms += 86'400'000;
  visit.done("new-sheet", Value::object({{"mid_lat_deg", 10}, {"mid_lon_deg", 20}, {"scale", 50'000}, {"paper", "A4-across"}, {"name", "Tern"}}));
  visit.done("open-slip", Value::object({{"slip", "drawer"}}));
  const TableItem* table = visit.table("drawer", "sheets");
  REQUIRE(table);
  REQUIRE(table->rows.size() == 3);
  CHECK(table->rows[0] == std::vector<std::string>{"Tern", "in hand"});
  CHECK(table->rows[1] == std::vector<std::string>{"Gull", "2026-11-25"});
  const Press press = table->row_presses[1];
  visit.done(press.command, press.arguments);
  CHECK(visit.app.read()["sheet"]["name"] == Value("Gull"));
  CHECK_FALSE(visit.app.read()["edge"].is_null());  // as it lay
  CHECK(visit.app.read()["history"]["undo_label"] == Value("add Off Sarn"));
  CHECK(visit.app.command("open-sheet", Value::object({{"key", "123"}})).has("error"));
  CHECK(visit.app.command("open-sheet", Value::object({{"key", ""}})).has("error"));
}

TEST_CASE("a sheet that is taken out makes room for the last changed, and can be put back") {
  FakeStore store;
  Visit visit(store);
  fill(visit);
  const Value gull = visit.app.read()["history"]["drawer"].items()->at(0)["key"];
  visit.done("copy-sheet");
  CHECK(visit.app.read()["sheet"]["name"] == Value("Gull (copy)"));
  visit.done("delete-sheet");
  CHECK(visit.app.read()["sheet"]["name"] == Value("Gull"));
  visit.done("delete-sheet");
  visit.done("delete-sheet");  // the demo: the last there was
  CHECK(visit.app.read()["marks"].items()->size() > 2);
  visit.done("open-slip", Value::object({{"slip", "drawer"}}));
  REQUIRE(visit.table("drawer", "removed"));
  CHECK(visit.table("drawer", "removed")->rows.size() == 3);
  visit.done("put-back-sheet", Value::object({{"key", gull}}));
  visit.done("open-sheet", Value::object({{"key", gull}}));
  CHECK(visit.app.read()["marks"].items()->size() == 2);
  visit.leave();
  Visit again(store);
  CHECK(again.app.read() == visit.app.read());
}

TEST_CASE("a sheet is saved as one line of text under its name, and its file opens it again") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", Value::object({{"mid_lat_deg", 44}, {"mid_lon_deg", -31}, {"scale", 100'000}, {"paper", "A4-across"}, {"name", "a/b: \"c\"\n"}}));
  visit.done("save-sheet");
  REQUIRE(visit.platform.saved_files.size() == 1);
  const auto& [name, text] = *visit.platform.saved_files.begin();
  CHECK(name == "a-b- -c-.fogsheet");
  CHECK(text == visit.app.link().substr(visit.app.link().find('#') + 1) + "\n");
  const Value saved = visit.app.read()["sheet"];
  visit.done("open-demo");
  visit.done("open-file");
  CHECK(visit.platform.file_asked_for);
  visit.app.file_opened("no sheet");
  CHECK(visit.panel("file") != nullptr);  // it says why
  visit.app.file_opened(text);
  CHECK(visit.panel("file") == nullptr);
  CHECK(visit.app.read()["sheet"] == saved);
}

TEST_CASE("the steps of a sheet stand in a list, the last first, and each can be gone to") {
  FakeStore store;
  Visit visit(store);
  fill(visit);
  visit.done("open-slip", Value::object({{"slip", "history"}}));
  const TableItem* steps = visit.table("history", "steps");
  REQUIRE(steps);
  REQUIRE(steps->rows.size() == 4);
  CHECK(steps->rows[0] == std::vector<std::string>{"leg to Off Sarn", "3"});
  CHECK(steps->rows[1] == std::vector<std::string>{"add Off Sarn", "now"});
  CHECK(steps->rows[3] == std::vector<std::string>{"laid down", "0"});
  const Press press = steps->row_presses[0];
  visit.done(press.command, press.arguments);
  CHECK(visit.app.read()["legs"].items()->size() == 1);
  CHECK(visit.app.command("go-to-step", Value::object({{"step", 4}})).has("error"));
  CHECK(visit.app.command("go-to-step", Value::object({{"step", 0.5}})).has("error"));
}

TEST_CASE("only so many steps of a long past are listed, and when the oldest have gone it is said") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  const auto set_day = [&](int day) { return visit.app.command("set-date", Value::object({{"date", "2026-11-" + std::to_string(10 + day % 20)}})); };
  for (int day = 0; day < static_cast<int>(History::k_most_steps); ++day) set_day(day);
  visit.settle();
  CHECK(visit.margin().find("oldest") == std::string::npos);
  set_day(1);
  CHECK(visit.margin().find("oldest") != std::string::npos);
  set_day(2);
  CHECK(visit.margin().find("oldest") == std::string::npos);  // said once
  visit.done("open-slip", Value::object({{"slip", "history"}}));
  CHECK(visit.table("history", "steps")->rows.size() == 101);
  std::string said;
  for (const PanelItem& item : visit.panel("history")->items)
    if (const LineItem* line = std::get_if<LineItem>(&item)) said += line->text;
  CHECK(said.find("oldest have gone") != std::string::npos);
  visit.leave();
  Visit again(store);
  CHECK(again.app.read()["history"]["first_step"] == Value(2));
  CHECK(again.app.read()["history"]["last_step"] == Value(10'002));
}

TEST_CASE("what is kept, and what keeps it from being kept, stands in the margin") {
  FakeStore store;
  Visit visit(store);
  CHECK(visit.margin().empty());
  visit.platform.time_ms = 1'795'590'720'000;  // 2026-11-25 0712 UTC
  visit.app.command("new-sheet", k_sheet);
  CHECK(visit.margin() == "keeping\n");
  visit.settle();
  CHECK(visit.margin() == "kept 0812\n");  // the fake machine's own time is an hour ahead
  visit.app.command("add-mark", Value::object({{"name", "A"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  REQUIRE(visit.platform.store_writes.size() == 1);
  visit.app.store_failed(visit.platform.store_writes[0].id, StoreFault::full);
  visit.platform.store_writes.clear();
  CHECK(visit.margin().find("! Not kept: the device has no room") != std::string::npos);
  CHECK(visit.app.read()["history"]["kept"]["state"] == Value("failed"));
  CHECK(visit.platform.wakes_after_ms > 0);
  visit.platform.time_ms += visit.platform.wakes_after_ms;
  visit.app.woken();
  visit.settle();
  CHECK(visit.margin().find("kept 08") == 0);

  FakePlatform machine;
  App off(machine);
  off.store_refused(StoreFault::missing);
  off.start("", false);
  CHECK(off.read()["history"]["kept"]["state"] == Value("off"));
}

TEST_CASE("what arrows are moving when the store answers is put down on its own sheet") {
  FakeStore store;
  Visit first(store);
  first.done("add-note", Value::object({{"text", "rips"}, {"lat_deg", 44.12}, {"lon_deg", -31.3}}));
  FakePlatform platform;
  App app(platform);
  app.set_viewport({.width_px = 1180, .height_px = 742, .pixel_ratio = 1});
  const Value mark = (*app.read()["marks"].items())[2];
  app.command("focus-thing", Value::object({{"thing", "mark/" + *mark["id"].text()}}));
  app.key({.key = "ArrowRight", .shift = true});
  for (StoreRecord& record : store.all()) app.store_record(std::move(record));
  app.store_read();
  app.keys_at_rest();
  CHECK(app.read()["notes"].items()->empty());  // what was begun is gone on with
  CHECK_FALSE((*app.read()["marks"].items())[2]["lon_deg"] == mark["lon_deg"]);
  Visit second(store);
  CHECK(second.app.read()["notes"].items()->size() == 1);
  CHECK((*second.app.read()["marks"].items())[2] == mark);
}
