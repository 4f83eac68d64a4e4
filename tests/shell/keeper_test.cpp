// The keeper beside a store that fails or dies at every point: what was shown as kept is there after a restart, or
// something later; every document opens; a failed save is shown until it succeeds.
#include "shell/keeper/keeper.h"

#include "doctest/doctest.h"
#include "tests/shell/kept_page.h"

using namespace fogsheet;

namespace {

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
