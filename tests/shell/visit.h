// A page on a machine with a store, from its start on.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "shell/app.h"
#include "tests/shell/fake_platform.h"
#include "tests/shell/fake_store.h"

namespace fogsheet {

/// A page on a machine with a store.
struct Visit {
  FakePlatform platform;
  App app{platform};
  FakeStore& store;

  explicit Visit(FakeStore& the_store, const std::string& fragment = "", bool loaded_anew = false) : store(the_store) {
    app.set_viewport({.width_px = 1180, .height_px = 742, .pixel_ratio = 1});
    for (StoreRecord& record : store.all()) app.store_record(std::move(record));
    app.store_read();
    app.start(fragment, loaded_anew);
    settle();
  }

  /// The store does all that was asked for.
  void settle() {
    while (!platform.store_writes.empty() || !platform.store_asks.empty()) {
      for (const StoreAsk& ask : std::exchange(platform.store_asks, {})) {
        if (ask.kind == StoreAsk::Kind::let_go) continue;
        for (StoreRecord& record : store.all_of(ask.document)) app.store_record(std::move(record));
        app.store_told(ask.kind == StoreAsk::Kind::read ? StoreNews::read : StoreNews::granted, ask.document);
      }
      store.ask(std::exchange(platform.store_writes, {}));
      while (!store.waiting.empty()) {
        std::uint64_t id = 0;
        const StoreFault fault = store.do_next(id);
        if (fault == StoreFault::none) app.store_written(id);
        else app.store_failed(id, fault);
      }
    }
  }

  Value done(const std::string& name, const Value& arguments = Value::object()) {
    platform.time_ms += 1'000;
    Value answer = app.command(name, arguments);
    REQUIRE(answer.has("ok"));
    settle();
    return answer;
  }

  void leave() {
    app.hidden();
    settle();
  }

  const Panel* panel(const std::string& name) {
    shown = app.panels();
    const auto found = std::find_if(shown.begin(), shown.end(), [&](const Panel& each) { return each.name == name; });
    return found == shown.end() ? nullptr : &*found;
  }
  std::vector<Panel> shown;

  const TableItem* table(const std::string& slip, const std::string& name) {
    const Panel* found = panel(slip);
    if (!found) return nullptr;
    for (const PanelItem& item : found->items)
      if (const TableItem* each = std::get_if<TableItem>(&item); each && each->name == name) return each;
    return nullptr;
  }

  /// The margin's lines and cautions.
  std::string margin() {
    std::string text;
    for (const PanelItem& item : panel("margin")->items) {
      if (const LineItem* line = std::get_if<LineItem>(&item)) text += line->text + "\n";
      if (const CautionItem* caution = std::get_if<CautionItem>(&item)) text += "! " + caution->text + "\n";
    }
    return text;
  }
};

}  // namespace fogsheet
