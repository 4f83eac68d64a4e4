// The keeper beside a store that fails or dies at every point: what was shown as kept is there after a restart, or
// something later; every document opens; a failed save is shown until it succeeds.
#include "shell/keeper/keeper.h"

#include "core/document/actions.h"
#include "doctest/doctest.h"
#include "tests/shell/fake_store.h"

using namespace fogsheet;

namespace {

constexpr std::int64_t k_start_ms = 1'795'600'000'000;

Document sheet_named(const std::string& name) {
  return made_sheet({.name = name, .mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 100'000, .date = {2026, 11, 25}}).value();
}

/// What a user would see of all sheets: documents, and what undo and redo lead to.
struct Seen {
  struct Sheet {
    Document now;
    std::size_t state = 0;
    std::optional<Label> undo, redo;
    bool removed = false;
    bool operator==(const Sheet&) const = default;
  };
  std::vector<Sheet> sheets;  // in the order they were laid down
  bool operator==(const Seen&) const = default;
};

/// A page with its store: what happens between them is told step by step.
struct Page {
  Sheets sheets{sheet_named("demo"), k_start_ms};
  Keeper keeper;
  std::int64_t now_ms = k_start_ms;

  explicit Page(FakeStore& store, std::int64_t at_ms = k_start_ms) : sheets(sheet_named("demo"), at_ms), now_ms(at_ms) {
    keeper.store_read(store.all(), sheets, now_ms);
    look(store);
  }

  void look(FakeStore& store, StoreBytes desk = {}) {
    now_ms += 10;
    keeper.look(sheets, std::move(desk), now_ms);
    store.ask(keeper.take_writes());
  }

  void mark(FakeStore& store, const std::string& name) {
    REQUIRE(add_mark(sheets.in_hand().history, {.name = name, .lat_deg = 44, .lon_deg = -31}));
    sheets.tidy();
    look(store);
  }

  void answer(FakeStore& store) {
    while (!store.waiting.empty()) answer_one(store);
  }

  void answer_one(FakeStore& store) {
    std::uint64_t id = 0;
    const StoreFault fault = store.do_next(id);
    if (fault == StoreFault::none) keeper.written(id, now_ms);
    else keeper.failed(id, fault, now_ms);
  }

  void fail_one(FakeStore& store, StoreFault why = StoreFault::full) { keeper.failed(store.drop_next(), why, now_ms); }

  /// Until nothing is to be done any more.
  void let_time_pass(FakeStore& store) {
    for (int tick = 0; keeper.wakes_at_ms() != 0; ++tick) {
      REQUIRE(tick < 50);
      now_ms = std::max(now_ms, keeper.wakes_at_ms());
      keeper.wake(sheets, now_ms);
      store.ask(keeper.take_writes());
      answer(store);
    }
  }

  Seen seen() const {
    Seen all;
    for (const std::unique_ptr<SheetInDrawer>& sheet : sheets.all()) {
      const Label* undo = sheet->history.undo_label();
      const Label* redo = sheet->history.redo_label();
      all.sheets.push_back({sheet->history.now(), sheet->history.state(), undo ? std::optional(*undo) : std::nullopt, redo ? std::optional(*redo) : std::nullopt, sheet->removed_ms != 0});
    }
    return all;
  }
};

/// The labels of undo and redo, all the way, of the sheet in hand and what it was laid over.
std::vector<std::string> way_back(Page& page) {
  std::vector<std::string> way;
  while (const Label* label = page.sheets.redo_label()) {
    way.push_back("redo " + label->subject);
    page.sheets.redo();
  }
  while (const Label* label = page.sheets.undo_label()) {
    way.push_back("undo " + label->subject);
    page.sheets.undo();
  }
  return way;
}

using Edit = void (*)(Page&);
const Edit k_script[] = {
    [](Page& page) { REQUIRE(add_mark(page.sheets.in_hand().history, {.name = "A", .lat_deg = 44, .lon_deg = -31})); },
    [](Page& page) { REQUIRE(add_mark(page.sheets.in_hand().history, {.name = "B", .lat_deg = 44.01, .lon_deg = -31})); },
    [](Page& page) { page.sheets.undo(); },
    [](Page& page) { page.sheets.redo(); },
    [](Page& page) { REQUIRE(add_leg(page.sheets.in_hand().history, page.sheets.in_hand().history.now().marks.at(0).id, page.sheets.in_hand().history.now().marks.at(1).id)); },
    [](Page& page) { page.sheets.undo(); },
    [](Page& page) { page.sheets.undo(); },
    [](Page& page) { REQUIRE(add_mark(page.sheets.in_hand().history, {.name = "C", .lat_deg = 44.02, .lon_deg = -31})); },  // B and the leg are gone
    [](Page& page) { page.sheets.lay_down(sheet_named("second"), {Act::new_sheet, "second"}, page.now_ms); },
    [](Page& page) { REQUIRE(add_mark(page.sheets.in_hand().history, {.name = "D", .lat_deg = 44, .lon_deg = -31})); },
    [](Page& page) { page.sheets.undo(); },
    [](Page& page) { page.sheets.undo(); },  // back on the first
    [](Page& page) { page.sheets.redo(); },
    [](Page& page) { page.sheets.redo(); },
    [](Page& page) { page.sheets.take(page.sheets.all().front()->key); page.sheets.remove(page.sheets.all().back()->key, page.now_ms); },
    [](Page& page) { page.sheets.put_back(page.sheets.all().back()->key); },
    [](Page& page) { page.sheets.in_hand().history.go_to(0); },
    [](Page& page) { REQUIRE(add_mark(page.sheets.in_hand().history, {.name = "E", .lat_deg = 44.03, .lon_deg = -31})); },
};

/// What each step of the script leaves, on a page that no store disturbs.
std::vector<Seen> expected_states() {
  FakeStore store;
  Page page(store);
  std::vector<Seen> states{page.seen()};
  for (const Edit& edit : k_script) {
    edit(page);
    page.sheets.tidy();
    page.look(store);
    page.answer(store);
    states.push_back(page.seen());
  }
  return states;
}

/// Whether a restarted page shows each sheet as the script left it after `promised` steps or later. Sheets are kept one by
/// one: one may be further on than another.
bool shows_at_least(const std::vector<Seen>& states, std::size_t promised, const Seen& seen) {
  if (promised == 0) return true;  // nothing was said to be kept
  if (seen.sheets.size() < states[promised].sheets.size()) return false;
  for (std::size_t sheet = 0; sheet < seen.sheets.size(); ++sheet) {
    const bool is_there = std::any_of(states.begin() + static_cast<std::ptrdiff_t>(promised), states.end(),
                                      [&](const Seen& state) { return sheet < state.sheets.size() && state.sheets[sheet] == seen.sheets[sheet]; });
    if (!is_there) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("nothing is written while the demo lies as it was, all of it from the first step on") {
  FakeStore store;
  Page page(store);
  CHECK(page.keeper.keeping() == Keeping::nothing);
  CHECK(store.waiting.empty());
  page.mark(store, "A");
  CHECK(page.keeper.keeping() == Keeping::writing);
  CHECK_FALSE(page.keeper.kept_state(page.sheets.in_hand().key));
  page.answer(store);
  CHECK(page.keeper.keeping() == Keeping::kept);
  CHECK(page.keeper.kept_state(page.sheets.in_hand().key) == 1);
  CHECK(page.keeper.kept_ms() == page.now_ms);
}

TEST_CASE("each step is a write of its own, asked for at once") {
  FakeStore store;
  Page page(store);
  page.mark(store, "A");
  page.answer(store);
  page.mark(store, "B");
  page.mark(store, "C");
  page.sheets.undo();
  page.look(store);
  REQUIRE(store.waiting.size() == 3);
  for (const StoreWrite& write : store.waiting) {
    REQUIRE(write.acts.size() == 1);
    CHECK(write.acts[0].kind == StoreAct::Kind::add);
    CHECK(write.acts[0].part == StorePart::journal);
    CHECK(write.acts[0].bytes.size() < 120);
  }
  page.answer_one(store);
  CHECK(page.keeper.keeping() == Keeping::writing);
  CHECK(page.keeper.kept_state(page.sheets.in_hand().key) == 2);
  page.answer(store);
  CHECK(page.keeper.keeping() == Keeping::kept);
  CHECK(page.keeper.kept_state(page.sheets.in_hand().key) == 2);
}

TEST_CASE("a restart brings back every sheet, its past and its future") {
  FakeStore store;
  Page page(store);
  for (const Edit& edit : k_script) {
    edit(page);
    page.sheets.tidy();
    page.look(store);
  }
  page.answer(store);
  Page again(store, k_start_ms + 60'000);
  CHECK(again.seen() == page.seen());
  CHECK(again.keeper.findings().empty());
  CHECK(again.keeper.keeping() == Keeping::kept);
  CHECK(store.waiting.empty());
  REQUIRE(again.sheets.take(page.sheets.in_hand().key));
  CHECK(way_back(again) == way_back(page));
}

TEST_CASE("undone new sheets can be redone after a restart, and go from the store when they can't any more") {
  FakeStore store;
  Page page(store);
  page.mark(store, "A");
  const SheetKey first = page.sheets.in_hand().key;
  const SheetKey second = page.sheets.lay_down(sheet_named("second"), {Act::new_sheet, "second"}, page.now_ms);
  page.look(store);
  page.sheets.undo();
  page.look(store);
  page.answer(store);
  Page again(store, k_start_ms + 60'000);
  REQUIRE(again.sheets.take(first));
  CHECK(again.sheets.redo_label()->subject == "second");
  CHECK(again.sheets.shown().size() == 1);
  again.mark(store, "B");
  again.answer(store);
  CHECK_FALSE(again.sheets.find(second));
  for (const StoreRecord& record : store.all()) CHECK(record.sheet == first.value);
}

TEST_CASE("killed after any number of writes, the restart shows what was kept or something later") {
  const std::vector<Seen> states = expected_states();
  // How far the page is ahead of the store when it is killed, in writes that were asked for and never done.
  for (const std::size_t behind : {std::size_t{0}, std::size_t{1}, std::size_t{3}, std::size_t{100}})
    for (std::size_t killed_after = 0; killed_after <= std::size(k_script); ++killed_after) {
      CAPTURE(behind);
      CAPTURE(killed_after);
      FakeStore store;
      Page page(store);
      std::size_t promised = 0;
      for (std::size_t step = 0; step < killed_after; ++step) {
        k_script[step](page);
        page.sheets.tidy();
        page.look(store);
        while (store.waiting.size() > behind) page.answer_one(store);
        if (page.keeper.keeping() == Keeping::kept) promised = step + 1;
      }
      store.waiting.clear();
      Page again(store, k_start_ms + 60'000);
      CHECK(again.keeper.findings().empty());
      CHECK(shows_at_least(states, promised, again.seen()));
    }
}

TEST_CASE("any one write fails, or all from one on, and the page is killed at any later point") {
  const std::vector<Seen> states = expected_states();
  for (const std::size_t failures : {std::size_t{1}, std::size_t{2}, std::size_t{1'000}})
    for (const std::size_t behind : {std::size_t{0}, std::size_t{2}})
      for (std::size_t fails_at = 0; fails_at < std::size(k_script) + 4; ++fails_at)
        for (std::size_t killed_after = 1; killed_after <= std::size(k_script); ++killed_after) {
          CAPTURE(failures);
          CAPTURE(behind);
          CAPTURE(fails_at);
          CAPTURE(killed_after);
          FakeStore store;
          Page page(store);
          std::size_t promised = 0, writes = 0;
          for (std::size_t step = 0; step < killed_after; ++step) {
            k_script[step](page);
            page.sheets.tidy();
            page.look(store);
            while (store.waiting.size() > behind) {
              const bool fails = writes >= fails_at && writes < fails_at + failures;
              ++writes;
              if (fails) {
                page.fail_one(store);
                CHECK(page.keeper.keeping() == Keeping::failed);
              } else {
                page.answer_one(store);
              }
            }
            if (page.keeper.keeping() == Keeping::kept) promised = step + 1;
            page.now_ms += 700;  // a person's pace: some retries come due
          }
          FakeStore killed = store;
          killed.waiting.clear();
          Page again(killed, k_start_ms + 600'000);
          CHECK(again.keeper.findings().empty());
          CHECK(shows_at_least(states, promised, again.seen()));
          // Where it lives on and the store comes to itself, everything is kept in the end.
          page.answer(store);
          page.let_time_pass(store);
          page.look(store);
          page.answer(store);
          CHECK(page.keeper.keeping() == Keeping::kept);
          Page later(store, k_start_ms + 900'000);
          CHECK(later.seen() == page.seen());
          CHECK(later.keeper.findings().empty());
        }
}

TEST_CASE("a failed save is shown until it succeeds, and tried again less and less often") {
  FakeStore store;
  Page page(store);
  page.mark(store, "A");
  page.answer(store);
  page.mark(store, "B");
  page.fail_one(store);
  CHECK(page.keeper.keeping() == Keeping::failed);
  CHECK(page.keeper.fault() == StoreFault::full);
  std::int64_t last_wait_ms = 0;
  for (int retry = 0; retry < 8; ++retry) {
    const std::int64_t wait_ms = page.keeper.wakes_at_ms() - page.now_ms;
    CHECK(wait_ms >= last_wait_ms);
    CHECK(wait_ms <= 60'000);
    last_wait_ms = wait_ms;
    page.now_ms = page.keeper.wakes_at_ms();
    page.keeper.wake(page.sheets, page.now_ms);
    store.ask(page.keeper.take_writes());
    REQUIRE(store.waiting.size() == 1);
    page.fail_one(store);
    CHECK(page.keeper.keeping() == Keeping::failed);
  }
  CHECK(last_wait_ms == 60'000);
  page.let_time_pass(store);
  CHECK(page.keeper.keeping() == Keeping::kept);
  CHECK(Page(store, k_start_ms + 600'000).seen() == page.seen());
}

TEST_CASE("a long journal is taken up at rest, in one write") {
  FakeStore store;
  Page page(store);
  for (int i = 0; i < 200; ++i) {
    page.mark(store, "M" + std::to_string(i));
    page.answer(store);
  }
  const auto journal = [&] { return std::count_if(store.records.begin(), store.records.end(), [](const auto& each) { return std::get<0>(each.first) == StorePart::journal; }); };
  CHECK(journal() == 199);
  page.let_time_pass(store);
  CHECK(journal() == 0);
  CHECK(Page(store, k_start_ms + 60'000).seen() == page.seen());
  page.mark(store, "one more");
  page.answer(store);
  CHECK(journal() == 1);
  CHECK(Page(store, k_start_ms + 60'000).seen() == page.seen());
  for (int i = 0; i < 10; ++i) page.mark(store, "N" + std::to_string(i));
  page.keeper.hide(page.sheets, page.now_ms);
  store.ask(page.keeper.take_writes());
  page.answer(store);
  CHECK(journal() == 0);
  CHECK(Page(store, k_start_ms + 60'000).seen() == page.seen());
}

TEST_CASE("a damaged record is named, the last good state opened, the damaged kept") {
  FakeStore store;
  Page page(store);
  for (const char* name : {"A", "B", "C", "D"}) page.mark(store, name);
  page.answer(store);
  const SheetKey key = page.sheets.in_hand().key;
  for (auto& [name, whole] : store.records) {
    FakeStore damaged = store;
    StoreBytes& bytes = damaged.records[name];
    bytes[bytes.size() - 7] ^= 0x40;
    const StoreBytes as_found = bytes;
    const bool in_journal = std::get<0>(name) == StorePart::journal;
    Page again(damaged, k_start_ms + 60'000);
    REQUIRE(again.keeper.findings().size() == 1);
    CHECK(again.keeper.findings()[0].sheet == key);
    CHECK(again.keeper.findings()[0].kind == (in_journal ? Finding::Kind::steps_lost : Finding::Kind::past_lost));
    REQUIRE(again.sheets.find(key));
    const std::size_t marks = again.sheets.find(key)->history.now().marks.size();
    CHECK(marks == (in_journal ? std::get<2>(name) : 1));
    again.answer(damaged);
    CHECK(again.keeper.keeping() == Keeping::kept);
    const bool is_kept = std::any_of(damaged.records.begin(), damaged.records.end(), [&](const auto& each) { return std::get<0>(each.first) == StorePart::damaged && each.second == as_found; });
    CHECK(is_kept);
    Page third(damaged, k_start_ms + 120'000);  // found once, not again
    CHECK(third.keeper.findings().empty());
    CHECK(third.seen() == again.seen());
  }
}

TEST_CASE("what can't be read at all, or is of a newer program, is left as it is") {
  FakeStore store;
  Page page(store);
  page.mark(store, "A");
  page.mark(store, "B");
  page.answer(store);
  const SheetKey key = page.sheets.in_hand().key;
  for (const bool newer : {false, true}) {
    FakeStore other = store;
    StoreBytes& bytes = other.records[{StorePart::sheets, key.value, 0}];
    if (newer) bytes[0] = 2;
    else std::fill(bytes.begin() + 3, bytes.end(), std::uint8_t{0});
    const auto as_found = other.records;
    Page again(other, k_start_ms + 60'000);
    REQUIRE(again.keeper.findings().size() == 1);
    CHECK(again.keeper.findings()[0].kind == (newer ? Finding::Kind::newer : Finding::Kind::unreadable));
    CHECK_FALSE(again.sheets.find(key));
    CHECK(again.sheets.untouched());
    again.mark(other, "elsewhere");
    again.answer(other);
    CHECK(again.keeper.keeping() == Keeping::kept);
    for (const auto& [name, whole] : as_found) CHECK(other.records[name] == whole);
  }
}

TEST_CASE("the desk is written when it has come to rest, or when the page is left, and comes back") {
  FakeStore store;
  Page page(store);
  page.look(store, {1});
  page.look(store, {1, 2});
  CHECK(store.waiting.empty());
  page.let_time_pass(store);
  CHECK(Page(store).keeper.kept_desk() == StoreBytes{1, 2});
  page.look(store, {1, 2, 3});
  page.keeper.hide(page.sheets, page.now_ms);
  store.ask(page.keeper.take_writes());
  page.answer(store);
  CHECK(Page(store).keeper.kept_desk() == StoreBytes{1, 2, 3});
}

TEST_CASE("a sheet that was removed is there to be put back for thirty days") {
  constexpr std::int64_t k_day_ms = 86'400'000;
  FakeStore store;
  Page page(store);
  page.mark(store, "A");
  const SheetKey first = page.sheets.in_hand().key;
  page.sheets.lay_down(sheet_named("second"), {Act::new_sheet, "second"}, page.now_ms);
  page.mark(store, "B");
  page.sheets.remove(first, page.now_ms);
  page.look(store);
  page.answer(store);
  Page soon(store, k_start_ms + 29 * k_day_ms);
  CHECK(soon.sheets.shown().size() == 1);
  REQUIRE(soon.sheets.removed().size() == 1);
  CHECK(soon.sheets.undo_label()->subject == "B");
  soon.sheets.undo();
  CHECK(soon.sheets.undo_label() == nullptr);  // what lies beneath is not in the drawer
  FakeStore late_store = store;
  Page late(late_store, k_start_ms + 31 * k_day_ms);
  CHECK(late.sheets.removed().empty());
  late.answer(late_store);
  for (const StoreRecord& record : late_store.all()) CHECK(record.sheet != first.value);
}

TEST_CASE("what is done before the store has answered is kept beside what is there") {
  FakeStore store;
  Page former(store);
  former.mark(store, "A");
  former.answer(store);

  Sheets sheets(sheet_named("demo"), k_start_ms + 50'000);
  Keeper keeper;
  CHECK(keeper.keeping() == Keeping::waiting);
  keeper.store_refused(StoreFault::silent);
  CHECK(keeper.keeping() == Keeping::off);
  REQUIRE(add_mark(sheets.in_hand().history, {.name = "early", .lat_deg = 44, .lon_deg = -31}));
  keeper.look(sheets, {}, k_start_ms + 50'010);
  CHECK(keeper.take_writes().empty());
  keeper.store_read(store.all(), sheets, k_start_ms + 60'000);
  keeper.look(sheets, {}, k_start_ms + 60'010);
  store.ask(keeper.take_writes());
  CHECK(sheets.in_hand().history.now().marks.at(0).name == "early");
  CHECK(sheets.shown().size() == 2);
  std::uint64_t id = 0;
  while (!store.waiting.empty()) {
    REQUIRE(store.do_next(id) == StoreFault::none);
    keeper.written(id, k_start_ms + 60'020);
  }
  CHECK(keeper.keeping() == Keeping::kept);
  CHECK(Page(store, k_start_ms + 90'000).sheets.shown().size() == 2);
}

TEST_CASE("another page that wrote the same journal is noticed, and nothing of it overwritten") {
  FakeStore store;
  Page one(store);
  one.mark(store, "A");
  one.answer(store);
  Page two(store, k_start_ms + 1'000);
  one.mark(store, "B");
  one.answer(store);
  two.mark(store, "C");
  two.answer(store);
  CHECK(two.keeper.keeping() == Keeping::off);
  CHECK(two.keeper.fault() == StoreFault::elsewhere);
  two.mark(store, "D");
  CHECK(store.waiting.empty());
  CHECK(Page(store, k_start_ms + 60'000).seen() == one.seen());

  // When the other page is gone, what was done here is kept beside what it kept.
  two.keeper.store_read(store.all(), two.sheets, two.now_ms);
  two.look(store);
  two.answer(store);
  CHECK(two.keeper.keeping() == Keeping::kept);
  CHECK(two.sheets.in_hand().history.now().marks.size() == 3);
  Page later(store, k_start_ms + 90'000);
  CHECK(later.sheets.shown().size() == 2);
  CHECK(later.seen() == two.seen());
}

TEST_CASE("a page that is refused the store keeps nothing and says why") {
  Sheets sheets(sheet_named("demo"), k_start_ms);
  Keeper keeper;
  keeper.store_refused(StoreFault::missing);
  REQUIRE(add_mark(sheets.in_hand().history, {.name = "A", .lat_deg = 44, .lon_deg = -31}));
  keeper.look(sheets, {1}, k_start_ms);
  keeper.hide(sheets, k_start_ms);
  CHECK(keeper.take_writes().empty());
  CHECK(keeper.keeping() == Keeping::off);
  CHECK(keeper.fault() == StoreFault::missing);
}
