// Several pages at once: one writes a sheet, the others take up what it has written; it goes from hand to hand, and nothing
// that was shown as kept is lost, in whatever order things happen.
#include <algorithm>
#include <set>

#include "core/boat/boat_actions.h"
#include "doctest/doctest.h"
#include "tests/shell/harbour.h"

using namespace fogsheet;

namespace {

using Tab = std::shared_ptr<Harbour::Tab>;

void mark(Harbour& harbour, const Tab& tab, const std::string& name, double lat_deg = 44) {
  REQUIRE(add_mark(tab->sheets.in_hand().history, {.name = name, .lat_deg = lat_deg, .lon_deg = -31}));
  tab->sheets.tidy();
  harbour.look(tab);
}

std::vector<std::string> names_on(const Sheets& sheets, SheetKey key) {
  std::vector<std::string> names;
  for (const Mark& each : sheets.find(key)->history.now().marks) names.push_back(each.name);
  return names;
}

std::set<std::string> names_on_all(const Sheets& sheets) {
  std::set<std::string> names;
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets.all())
    for (const std::string& name : names_on(sheets, sheet->key)) names.insert(name);
  return names;
}

/// All sheets with their documents, and where their pasts stand.
std::map<SheetKey, std::tuple<Document, std::size_t, std::size_t, bool>> all_of(const Sheets& sheets) {
  std::map<SheetKey, std::tuple<Document, std::size_t, std::size_t, bool>> all;
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets.all()) all[sheet->key] = {sheet->history.now(), sheet->history.state(), sheet->history.last_state(), sheet->removed_ms != 0};
  return all;
}

/// One sheet, kept, that two pages have in hand.
struct TwoTabs {
  Random random{7};
  Harbour harbour;
  Tab one = harbour.open(), two;
  SheetKey key;

  TwoTabs() {
    mark(harbour, one, "A");
    harbour.settle(random);
    two = harbour.open();
    harbour.settle(random);
    key = one->sheets.in_hand().key;
    REQUIRE(two->sheets.in_hand().key == key);
  }
};

}  // namespace

TEST_CASE("a second page follows what the first does, step by step, and undo and redo with it") {
  TwoTabs at;
  CHECK(at.two->keeper.follows(at.key));
  CHECK_FALSE(at.one->keeper.follows(at.key));
  mark(at.harbour, at.one, "B");
  mark(at.harbour, at.one, "C");
  at.harbour.settle(at.random);
  CHECK(names_on(at.two->sheets, at.key) == std::vector<std::string>{"A", "B", "C"});
  at.one->sheets.undo();
  at.harbour.look(at.one);
  at.harbour.settle(at.random);
  CHECK(names_on(at.two->sheets, at.key) == std::vector<std::string>{"A", "B"});
  CHECK(at.two->sheets.redo_label()->subject == "C");
  CHECK(at.two->keeper.keeping() == Keeping::kept);
  CHECK(at.two->keeper.kept_state(at.key) == at.one->keeper.kept_state(at.key));
}

TEST_CASE("a change in the page that follows is written there: the other lets go, and follows in turn") {
  TwoTabs at;
  mark(at.harbour, at.two, "B");
  CHECK(at.two->keeper.keeping() == Keeping::writing);  // not shown as kept before it is
  at.harbour.settle(at.random);
  CHECK(at.two->keeper.keeping() == Keeping::kept);
  CHECK(at.harbour.holder({StorePart::sheets, at.key.value}) == at.two.get());
  CHECK(at.one->keeper.follows(at.key));
  CHECK(names_on(at.one->sheets, at.key) == std::vector<std::string>{"A", "B"});
  CHECK(at.one->sheets.all().size() == 1);
  mark(at.harbour, at.one, "C");
  at.harbour.settle(at.random);
  CHECK(names_on(at.two->sheets, at.key) == std::vector<std::string>{"A", "B", "C"});
  CHECK(at.harbour.handed_over == 2);
}

TEST_CASE("what both did at the same moment stays, each as a sheet of its own") {
  TwoTabs at;
  mark(at.harbour, at.one, "B");
  mark(at.harbour, at.two, "C");
  at.harbour.settle(at.random);
  REQUIRE(at.two->sheets.all().size() == 2);
  CHECK(names_on(at.two->sheets, at.key) == std::vector<std::string>{"A", "B"});
  CHECK(names_on(at.two->sheets, at.two->sheets.in_hand().key) == std::vector<std::string>{"A", "C"});
  CHECK(at.two->keeper.findings() == std::vector<Finding>{{Finding::Kind::parted, at.key}});
  CHECK(all_of(at.one->sheets) == all_of(at.two->sheets));
}

TEST_CASE("a page that writes its sheet whole as it goes leaves no second one to the page that changes it meanwhile") {
  for (int seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    TwoTabs at;
    at.random = Random(static_cast<std::uint64_t>(seed));
    mark(at.harbour, at.one, "B");
    at.harbour.settle(at.random);
    at.one->keeper.hide(at.one->sheets, at.harbour.now_ms);
    at.harbour.look(at.one);
    for (int i = static_cast<int>(at.random.whole(0, 4)); i > 0; --i) at.harbour.step(at.random);
    mark(at.harbour, at.two, "C");
    at.harbour.settle(at.random);
    CHECK(at.two->sheets.all().size() == 1);
    CHECK(names_on(at.two->sheets, at.key) == std::vector<std::string>{"A", "B", "C"});
    CHECK(at.two->keeper.findings().empty());
    CHECK(all_of(at.harbour.open()->sheets) == all_of(at.two->sheets));
  }
}

TEST_CASE("a page that is killed leaves its sheets to the one that follows") {
  TwoTabs at;
  mark(at.harbour, at.one, "B");
  at.harbour.kill(at.one);  // B was on its way and never shown as kept
  at.harbour.settle(at.random);
  CHECK_FALSE(at.two->keeper.follows(at.key));
  mark(at.harbour, at.two, "C");
  at.harbour.settle(at.random);
  CHECK(at.two->keeper.keeping() == Keeping::kept);
  CHECK(names_on(at.harbour.open()->sheets, at.key) == std::vector<std::string>{"A", "C"});
}

TEST_CASE("a page that does not let go is told of in time, and what was done is kept when it has gone") {
  TwoTabs at;
  mark(at.harbour, at.two, "B");
  at.one->heard.clear();  // it stands still
  for (int second = 0; second < 3; ++second) {
    CHECK(at.two->keeper.keeping() == (second < 2 ? Keeping::writing : Keeping::failed));
    at.harbour.let_time_pass(1'000);
    at.one->heard.clear();
  }
  CHECK(at.two->keeper.fault() == StoreFault::elsewhere);
  at.harbour.kill(at.one);
  at.harbour.settle(at.random);
  CHECK(at.two->keeper.keeping() == Keeping::kept);
  CHECK(names_on(at.harbour.open()->sheets, at.key) == std::vector<std::string>{"A", "B"});
}

TEST_CASE("a sheet is not given away while something of it can't be kept") {
  TwoTabs at;
  at.harbour.fails = 1;
  mark(at.harbour, at.one, "B");
  while (at.harbour.step(at.random)) {}
  CHECK(at.one->keeper.keeping() == Keeping::failed);
  mark(at.harbour, at.two, "C");
  while (at.harbour.step(at.random)) {}
  CHECK(at.harbour.holder({StorePart::sheets, at.key.value}) == at.one.get());
  at.harbour.settle(at.random);
  CHECK(names_on_all(at.harbour.open()->sheets) == std::set<std::string>{"A", "B", "C"});
}

TEST_CASE("a sheet that was taken out of the drawer elsewhere is no longer in hand here") {
  TwoTabs at;
  const SheetKey other = at.one->sheets.lay_down(sheet_named("other"), {Act::new_sheet, "other"}, at.harbour.now_ms);
  at.harbour.look(at.one);
  at.harbour.settle(at.random);
  at.one->sheets.remove(at.key, at.harbour.now_ms);
  at.harbour.look(at.one);
  at.harbour.settle(at.random);
  CHECK(at.two->sheets.in_hand().key == other);
  CHECK(at.two->sheets.shown().size() == 1);
}

TEST_CASE("a page that others were heard beside puts its own desk in the store whenever it is hidden: they may have gone without a word") {
  const auto puts_desk = [](const Tab& tab, std::int64_t now_ms) {
    tab->keeper.hide(tab->sheets, now_ms);
    const std::vector<StoreWrite> writes = tab->keeper.take_writes();
    return std::any_of(writes.begin(), writes.end(), [](const StoreWrite& write) { return write.acts.at(0).part == StorePart::desk; });
  };
  TwoTabs at;
  mark(at.harbour, at.two, "B", 44.01);
  at.harbour.settle(at.random);
  CHECK(puts_desk(at.one, at.harbour.now_ms));
  CHECK(puts_desk(at.one, at.harbour.now_ms));
  CHECK(puts_desk(at.two, at.harbour.now_ms));
  Random random{7};
  Harbour alone;
  const Tab only = alone.open();
  alone.settle(random);
  CHECK_FALSE(puts_desk(only, alone.now_ms));
}

TEST_CASE("boats go from page to page as sheets do") {
  TwoTabs at;
  const BoatKey boat = at.one->boats.add(made_boat("Small Hours", "main").value(), at.harbour.now_ms);
  at.harbour.look(at.one);
  at.harbour.settle(at.random);
  REQUIRE(at.two->boats.find(boat));
  REQUIRE(name_boat(at.two->boats.find(boat)->history, "Long Hours"));
  at.harbour.look(at.two);
  at.harbour.settle(at.random);
  CHECK(at.one->boats.find(boat)->now().name == "Long Hours");
  CHECK(at.harbour.holder({StorePart::desk, boat.value}) == at.two.get());
  REQUIRE(name_boat(at.one->boats.find(boat)->history, "First"));
  REQUIRE(name_boat(at.two->boats.find(boat)->history, "Second"));
  at.harbour.look(at.one);
  at.harbour.look(at.two);
  at.harbour.settle(at.random);
  std::set<std::string> names;
  for (const auto& each : at.harbour.open()->boats.all()) names.insert(each->now().name);
  CHECK(names == std::set<std::string>{"First", "Second"});
}

TEST_CASE("without locks, a page that wrote in another's place is noticed, and both stay") {
  FakeStore store;
  Page one(store, k_start_ms, 1);
  one.mark(store, "A");
  one.answer(store);
  Page two(store, k_start_ms + 1'000, 2);
  one.mark(store, "B");
  one.answer(store);
  two.mark(store, "C");
  two.answer(store);
  CHECK(two.keeper.keeping() == Keeping::failed);
  CHECK(two.keeper.fault() == StoreFault::elsewhere);
  two.look(store);
  two.answer(store);
  CHECK(two.keeper.keeping() == Keeping::kept);
  CHECK(names_on_all(two.sheets) == std::set<std::string>{"A", "B", "C"});
  CHECK(two.sheets.all().size() == 2);
  CHECK(all_of(Page(store, k_start_ms + 60'000).sheets) == all_of(two.sheets));
}

TEST_CASE("three pages edit and are killed in any order: all that was shown as kept is there, and all come to agree") {
  constexpr int k_rounds = 150, k_events = 120;
  std::size_t promised_in_all = 0;
  int handed_over = 0, parted = 0;
  for (int round = 0; round < k_rounds; ++round) {
    CAPTURE(round);
    Random random(static_cast<std::uint64_t>(9'000 + round));
    const auto below = [&](std::size_t count) { return static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(count) - 1)); };
    Harbour harbour;
    std::set<std::string> promised;
    std::map<Harbour::Tab*, std::set<std::string>> done;
    int marks = 0;
    for (int tab = 0; tab < 3; ++tab) harbour.open();
    for (int event = 0; event < k_events; ++event) {
      const Tab tab = harbour.tabs[below(harbour.tabs.size())];
      Sheets& sheets = tab->sheets;
      const std::int64_t what = random.whole(0, 99);
      if (what < 60) {
        for (std::int64_t steps = random.whole(1, 12); steps > 0; --steps) harbour.step(random);
      } else if (what < 78) {
        const std::string name = "M" + std::to_string(++marks);
        mark(harbour, tab, name, 43.95 + 0.0001 * marks);
        done[tab.get()].insert(name);
      } else if (what < 82) {
        sheets.lay_down(sheet_named("S" + std::to_string(++marks)), {Act::new_sheet, "S"}, harbour.now_ms);
        mark(harbour, tab, "M" + std::to_string(marks));
        done[tab.get()].insert("M" + std::to_string(marks));
      } else if (what < 88) {
        sheets.take(sheets.shown()[below(sheets.shown().size())]->key);
        harbour.look(tab);
      } else if (what < 91) {
        if (sheets.in_hand().history.undo()) sheets.in_hand().history.redo();
        harbour.look(tab);
      } else if (what < 93) {
        const SheetKey key = sheets.shown()[below(sheets.shown().size())]->key;
        if (key != sheets.in_hand().key) sheets.remove(key, harbour.now_ms);
        harbour.look(tab);
      } else if (what < 95) {
        tab->keeper.hide(sheets, harbour.now_ms);
        harbour.look(tab);
      } else if (what < 97) {
        harbour.let_time_pass(random.whole(100, 3'000));
      } else if (what < 98) {
        harbour.fails = static_cast<int>(random.whole(1, 3));
      } else {
        parted += static_cast<int>(tab->keeper.findings().size());
        done.erase(tab.get());
        harbour.kill(tab);
        harbour.open();
      }
      for (const Tab& each : harbour.tabs)
        if (each->keeper.keeping() == Keeping::kept) promised.merge(done[each.get()]), done[each.get()].clear();
    }
    harbour.settle(random);
    const Tab later = harbour.open();
    const std::set<std::string> found = names_on_all(later->sheets);
    for (const std::string& name : promised) CHECK_MESSAGE(found.contains(name), name);
    for (const Finding& finding : later->keeper.findings()) CHECK(finding.kind == Finding::Kind::parted);
    for (const Tab& each : harbour.tabs) {
      CHECK((each->keeper.keeping() == Keeping::kept || each->keeper.keeping() == Keeping::nothing));
      if (each == later || each->keeper.keeping() == Keeping::nothing) continue;
      CHECK(all_of(each->sheets) == all_of(later->sheets));
      parted += static_cast<int>(each->keeper.findings().size());
    }
    promised_in_all += promised.size();
    handed_over += harbour.handed_over;
  }
  MESSAGE(promised_in_all << " marks shown as kept, " << handed_over << " times handed over, " << parted << " times parted");
  CHECK(promised_in_all > 1'000);
  CHECK(handed_over > 100);
  CHECK(parted > 10);
}
