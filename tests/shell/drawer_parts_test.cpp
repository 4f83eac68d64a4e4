// The drawer of many sheets: what is found, how much is shown, the pictures of sheets; what is damaged, saved and put away; the
// room there is, and when the browser is asked to promise.
#include <cstdlib>

#include "core/base/random.h"
#include "shell/panels/sheet_picture.h"
#include "shell/session.h"
#include "shell/words.h"
#include "tests/core/random_acts.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

Value sheet_of_name(const std::string& name) { return Value::object({{"mid_lat_deg", 44}, {"mid_lon_deg", -31}, {"scale", 100'000}, {"paper", "A4-across"}, {"name", name}}); }

void search(Visit& visit, const std::string& text) { visit.done("search-drawer", Value::object({{"text", text}})); }

std::vector<std::string> found(Visit& visit, const std::string& text) {
  search(visit, text);
  std::vector<std::string> names;
  for (const std::vector<std::string>& row : visit.table("drawer", "sheets")->rows) names.push_back(row[0]);
  return names;
}

const ButtonItem* button(Visit& visit, const std::string& slip, const std::string& name) {
  const Panel* panel = visit.panel(slip);
  REQUIRE(panel);
  for (const PanelItem& item : panel->items)
    if (const auto* each = std::get_if<ButtonItem>(&item); each && each->name == name) return each;
  return nullptr;
}

std::string words_in(Visit& visit, const std::string& name) {
  std::string all;
  for (const PanelItem& item : visit.panel(name)->items) {
    if (const auto* line = std::get_if<LineItem>(&item)) all += line->text + "\n";
    if (const auto* caution = std::get_if<CautionItem>(&item)) all += "! " + caution->text + ": " + caution->advice + "\n";
  }
  return all;
}

void open_drawer(Visit& visit) { visit.done("open-slip", Value::object({{"slip", "drawer"}})); }

}  // namespace

TEST_CASE("a sheet is found by anything that is written on it") {
  FakeStore store;
  Visit visit(store);
  for (const char* name : {"Gull Sound", "Tern Reach", "Ørsted"}) visit.done("new-sheet", sheet_of_name(name));
  visit.done("add-mark", Value::object({{"name", "Zwin Rock"}, {"lat_deg", 44.01}, {"lon_deg", -31}}));
  visit.done("add-note", Value::object({{"text", "rips on the ebb"}, {"lat_deg", 44.02}, {"lon_deg", -31}}));
  visit.done("set-date", Value::object({{"date", "2027-05-01"}}));
  open_drawer(visit);
  CHECK(found(visit, "").size() >= 3);
  CHECK(found(visit, "GULL") == std::vector<std::string>{"Gull Sound"});
  CHECK(found(visit, "reach te") == std::vector<std::string>{"Tern Reach"});
  CHECK(found(visit, "zwin") == std::vector<std::string>{"Ørsted"});
  CHECK(found(visit, "ebb ørst") == std::vector<std::string>{"Ørsted"});
  CHECK(found(visit, "2027-05") == std::vector<std::string>{"Ørsted"});
  CHECK(found(visit, "nowhere").empty());
  CHECK_FALSE(visit.table("drawer", "sheets")->when_empty.empty());
  const std::string caption = visit.table("drawer", "sheets")->caption;
  CHECK(caption.starts_with("0 of "));
  visit.done("close-slip");
  open_drawer(visit);  // all of them again
  CHECK(visit.table("drawer", "sheets")->rows.size() >= 3);
}

TEST_CASE("of a thousand sheets so many are shown, the rest by asking for more") {
  FakeStore store;
  Visit visit(store);
  for (int i = 0; i < 100; ++i) visit.app.command("new-sheet", sheet_of_name("Sheet " + std::to_string(i)));
  visit.settle();
  open_drawer(visit);
  CHECK(visit.table("drawer", "sheets")->rows.size() == DrawerView::k_rows);
  const ButtonItem* more = button(visit, "drawer", "more-sheets");
  REQUIRE(more);
  const Press press = more->on_press;
  visit.done(press.command);
  CHECK(visit.table("drawer", "sheets")->rows.size() == 2 * DrawerView::k_rows);
  visit.done(press.command);
  CHECK(visit.table("drawer", "sheets")->rows.size() >= 100);
  CHECK_FALSE(button(visit, "drawer", "more-sheets"));
  CHECK(found(visit, "sheet 77") == std::vector<std::string>{"Sheet 77"});
}

TEST_CASE("a sheet's picture shows its marks and legs on its paper, and is small whatever the sheet holds") {
  Random random(11);
  for (int round = 0; round < 30; ++round) {
    const std::string svg = sheet_picture(random_document(random, 300));
    CHECK(svg.starts_with("<svg "));
    CHECK(svg.ends_with("</svg>"));
    CHECK(svg.size() < 4'000);
    CHECK(svg.find_first_of("&") == std::string::npos);
  }
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", sheet_of_name("Gull"));
  open_drawer(visit);
  const std::string blank = visit.table("drawer", "sheets")->row_pictures[0];
  CHECK(blank.find("viewBox=\"0 0 297 210\"") != std::string::npos);
  CHECK(blank.find("stroke-ink") == std::string::npos);
  visit.done("add-mark", Value::object({{"name", "middle"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  const std::string marked = visit.table("drawer", "sheets")->row_pictures[0];
  // The sheet's middle, to the whole millimetre below: a sheet's margins are not the same all round.
  const std::size_t at = marked.find("d=\"M", marked.find("stroke-ink"));
  REQUIRE(at != std::string::npos);
  CHECK(std::abs(std::atoi(marked.c_str() + at + 4) - 297 / 2) <= 12);
}

TEST_CASE("what is damaged can be saved as a file, and put away after that") {
  for (const bool in_key : {true, false}) {  // nothing can be made of it then; or its past is lost
    CAPTURE(in_key);
    FakeStore store;
    Visit first(store);
    first.done("new-sheet", sheet_of_name("Gull"));
    first.done("new-sheet", sheet_of_name("Tern"));
    const auto record = std::find_if(store.records.begin(), store.records.end(), [](const auto& each) { return std::get<0>(each.first) == StorePart::sheets; });
    StoreBytes& bytes = record->second;
    bytes[in_key ? 3 : bytes.size() - 40] ^= 0x55;
    const StoreBytes damaged = bytes;

    Visit visit(store);
    open_drawer(visit);
    CHECK(words_in(visit, "drawer").find("damaged") != std::string::npos);
    REQUIRE(button(visit, "drawer", "save-damaged"));
    CHECK_FALSE(button(visit, "drawer", "put-damaged-away")->enabled);
    visit.done("save-damaged");
    REQUIRE(visit.platform.saved_files.size() == 1);
    const auto& [name, file] = *visit.platform.saved_files.begin();
    CHECK(name == "Fogsheet damaged 2026-11-25.fogsheets");
    CHECK(file.find(std::string(damaged.begin(), damaged.end())) != std::string::npos);  // as it is
    REQUIRE(button(visit, "drawer", "put-damaged-away")->enabled);
    visit.done("put-damaged-away");
    CHECK_FALSE(button(visit, "drawer", "save-damaged"));
    CHECK(visit.app.command("put-damaged-away", Value::object()).has("error"));
    CHECK(std::none_of(store.records.begin(), store.records.end(), [&](const auto& each) { return each.second == damaged; }));
    Visit again(store);
    CHECK(again.margin().find("damaged") == std::string::npos);
    open_drawer(again);
    CHECK_FALSE(button(again, "drawer", "save-damaged"));
    CHECK(found(again, "tern") == std::vector<std::string>{"Tern"});
  }
}

TEST_CASE("what a newer program wrote can be saved, and is never put away") {
  FakeStore store;
  Visit first(store);
  first.done("new-sheet", sheet_of_name("Gull"));
  const auto record = std::find_if(store.records.begin(), store.records.end(), [](const auto& each) { return std::get<0>(each.first) == StorePart::sheets; });
  record->second[0] = 2;
  const auto kept = *record;
  Visit visit(store);
  open_drawer(visit);
  REQUIRE(button(visit, "drawer", "save-damaged"));
  CHECK_FALSE(button(visit, "drawer", "put-damaged-away"));
  visit.done("put-damaged-away");
  CHECK(store.records.at(kept.first) == kept.second);
}

TEST_CASE("what was found is called by its name") {
  using Kind = Finding::Kind;
  const auto title = [](std::vector<Kind> kinds) {
    std::vector<Finding> found;
    for (const Kind kind : kinds) found.push_back({kind, {1}});
    return words::findings_title(found);
  };
  CHECK(title({Kind::steps_lost}) == "Found damaged");
  CHECK(title({Kind::parted}) == "Changed in two tabs at once");
  CHECK(title({Kind::part_newer, Kind::newer}) == "Of a newer version");
  CHECK(title({Kind::parted, Kind::boat_newer, Kind::unreadable}) == "Found damaged, or of a newer version; changed in two tabs");
}

TEST_CASE("the browser is asked to promise once, when there is something to lose and the user is at it") {
  FakeStore store;
  Visit first(store);
  CHECK(first.platform.times_looked == 1);  // at the start
  first.app.store_room(2e6, 900e6, Promise::none);
  open_drawer(first);
  CHECK(first.platform.times_asked == 0);  // nothing of the user's own yet
  first.done("close-slip");
  first.done("new-sheet", sheet_of_name("Gull"));
  first.done("closer");
  CHECK(first.platform.times_asked == 0);
  open_drawer(first);
  CHECK(first.platform.times_asked == 1);
  first.app.store_room(2e6, 900e6, Promise::none);  // it did not
  CHECK(words_in(first, "drawer").find("may also clear them") != std::string::npos);
  first.done("close-slip");
  open_drawer(first);
  first.done("add-mark", Value::object({{"name", "A"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  CHECK(first.platform.times_asked == 1);
  REQUIRE(button(first, "drawer", "ask-promise"));
  first.done("ask-promise");
  CHECK(first.platform.times_asked == 2);
  first.app.store_room(2e6, 900e6, Promise::given);
  CHECK(first.margin().find("promises to clear nothing") != std::string::npos);
  CHECK_FALSE(button(first, "drawer", "ask-promise"));
  CHECK(words_in(first, "drawer").find("has promised") != std::string::npos);
}

TEST_CASE("who comes back and draws on is asked for without the drawer; a browser without the word never") {
  FakeStore store;
  Visit first(store);
  first.done("new-sheet", sheet_of_name("Gull"));
  Visit second(store);
  second.app.store_room(2e6, 900e6, Promise::none);
  second.done("closer");
  CHECK(second.platform.times_asked == 0);  // only looked at so far
  second.done("add-mark", Value::object({{"name", "A"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  second.done("wider");
  CHECK(second.platform.times_asked == 1);
  Visit third(store);
  third.app.store_room(0, 0, Promise::unknown);
  third.done("add-mark", Value::object({{"name", "B"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  open_drawer(third);
  CHECK(third.platform.times_asked == 0);
  CHECK_FALSE(button(third, "drawer", "ask-promise"));
  CHECK(third.margin().find("short") == std::string::npos);
}

TEST_CASE("before the room is full it is said, with what to do; a small room is said too") {
  FakeStore store;
  Visit visit(store);
  visit.app.store_room(85e6, 100e6, Promise::none);
  CHECK(visit.margin().empty());  // nothing is kept yet
  visit.done("new-sheet", sheet_of_name("Gull"));
  CHECK(visit.margin().find("! Room for keeping grows short: 85 of 100 MB are used") != std::string::npos);
  CHECK(button(visit, "margin", "save-all"));
  open_drawer(visit);
  CHECK(words_in(visit, "drawer").find("85 of 100 MB") != std::string::npos);
  visit.app.store_room(20e6, 900e6, Promise::none);
  CHECK(visit.margin().find("short") == std::string::npos);
  visit.done("close-slip");
  visit.app.store_room(2e6, 40e6, Promise::none);
  CHECK(visit.margin().find("private windows") != std::string::npos);
  const int looked = visit.platform.times_looked;
  for (int i = 0; i < 50; ++i) visit.done("add-mark", Value::object({{"name", std::to_string(i)}, {"lat_deg", 44}, {"lon_deg", -31}}));
  CHECK(visit.platform.times_looked == looked + 1);  // as much is written it is looked at again
}
