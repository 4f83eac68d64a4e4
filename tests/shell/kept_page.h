// A page with its keeper and a store, without a browser: what happens between them is told step by step.
#pragma once

#include "core/document/actions.h"
#include "doctest/doctest.h"
#include "shell/keeper/keeper.h"
#include "tests/shell/fake_store.h"

namespace fogsheet {

constexpr std::int64_t k_start_ms = 1'795'600'000'000;

inline Document sheet_named(const std::string& name) {
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

  Boats boats;
  StoreBytes last_desk;

  explicit Page(FakeStore& store, std::int64_t at_ms = k_start_ms, std::uint64_t lane = 0) : sheets(sheet_named("demo"), at_ms, lane), now_ms(at_ms), boats(lane) {
    keeper.store_read(store.all(), sheets, now_ms);
    look(store);
  }

  void look(FakeStore& store, StoreBytes desk = {}) {
    now_ms += 10;
    keeper.look(sheets, desk, now_ms);
    if (grant(store)) keeper.look(sheets, desk, now_ms);
    last_desk = std::move(desk);
    store.ask(keeper.take_writes());
  }

  /// As the only page there is: what it asks of the store it gets.
  bool grant(FakeStore& store) {
    const std::vector<StoreAsk> asks = keeper.take_asks();
    for (const StoreAsk& ask : asks)
      if (ask.kind != StoreAsk::Kind::let_go) keeper.told(ask.kind == StoreAsk::Kind::read ? StoreNews::read : StoreNews::granted, ask.document, store.all_of(ask.document), sheets, boats, now_ms);
    return !asks.empty();
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
      if (grant(store)) keeper.look(sheets, last_desk, now_ms);
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
inline std::vector<std::string> way_back(Page& page) {
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

}  // namespace fogsheet
