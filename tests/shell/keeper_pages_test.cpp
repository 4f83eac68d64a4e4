// The keeper beside a store that works: what is written at rest, what a later day and another page find there.
#include "doctest/doctest.h"
#include "tests/shell/kept_page.h"

using namespace fogsheet;

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
