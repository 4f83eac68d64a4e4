// Several pages on one store, as a browser has them: one lock for each sheet and boat, a channel on which each hears what
// the others have written, and everything on its way in queues that are emptied in whatever order the test chooses.
#pragma once

#include <deque>
#include <functional>
#include <map>
#include <memory>

#include "core/base/random.h"
#include "core/document/actions.h"
#include "doctest/doctest.h"
#include "tests/shell/kept_page.h"

namespace fogsheet {

class Harbour {
 public:
  struct Tab {
    Sheets sheets;
    Boats boats;
    Keeper keeper;
    std::deque<std::function<void()>> store;    // asked of the store, done in order
    std::deque<std::function<void()>> answers;  // of the store, in order
    std::deque<std::function<void()>> heard;    // from other pages
    std::deque<std::function<void()>> locks;    // news of them

    Tab(std::int64_t now_ms, std::uint64_t lane) : sheets(sheet_named("demo"), now_ms, lane), boats(lane) {}

    /// What is on its way holds the page that it is for: without this neither would ever go.
    void drop_all() {
      for (auto* queue : {&store, &answers, &heard, &locks}) queue->clear();
    }
  };

  ~Harbour() {
    for (const std::shared_ptr<Tab>& tab : tabs) tab->drop_all();
  }

  FakeStore store;
  std::int64_t now_ms = k_start_ms;
  std::vector<std::shared_ptr<Tab>> tabs;
  int fails = 0;  // so many writes to come find no room
  int handed_over = 0;

  std::shared_ptr<Tab> open() {
    auto tab = std::make_shared<Tab>(now_ms += 5'000, ++lanes_);
    tab->keeper.store_read(store.all(), tab->sheets, now_ms);
    tab->keeper.read_boats(store.all(), tab->boats);
    tabs.push_back(tab);
    look(tab);
    return tab;
  }

  /// As when the process ends: what was asked of the store and is not done never is; its locks are free.
  void kill(const std::shared_ptr<Tab>& tab) {
    tab->drop_all();
    std::erase(tabs, tab);
    for (auto& [document, queue] : queues_) {
      const bool had = !queue.empty() && queue.front() == tab;
      std::erase(queue, tab);
      if (had) grant(document);
    }
  }

  void look(const std::shared_ptr<Tab>& tab) {
    tab->keeper.look(tab->sheets, {}, now_ms);
    tab->keeper.look(tab->boats, now_ms);
    for (StoreWrite& write : tab->keeper.take_writes()) ask_write(tab, std::move(write));
    for (const StoreAsk& ask : tab->keeper.take_asks()) take_ask(tab, ask);
  }

  /// Does one thing that waits, of a kind that is chosen by chance. False when nothing does.
  bool step(Random& random) {
    std::vector<std::pair<std::shared_ptr<Tab>, std::deque<std::function<void()>>*>> waiting;
    for (const std::shared_ptr<Tab>& tab : tabs)
      for (auto* queue : {&tab->store, &tab->answers, &tab->heard, &tab->locks})
        if (!queue->empty()) waiting.push_back({tab, queue});
    if (waiting.empty()) return false;
    const auto [tab, queue] = waiting[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(waiting.size()) - 1))];
    const auto act = std::move(queue->front());
    queue->pop_front();
    act();
    look(tab);
    return true;
  }

  void let_time_pass(std::int64_t ms) {
    now_ms += ms;
    for (const std::shared_ptr<Tab>& tab : tabs)
      if (tab->keeper.wakes_at_ms() != 0 && tab->keeper.wakes_at_ms() <= now_ms) {
        tab->keeper.wake(tab->sheets, now_ms);
        look(tab);
      }
  }

  /// Until nothing is on its way and nobody waits for anything.
  void settle(Random& random) {
    for (int round = 0; round < 12; ++round) {
      while (step(random)) {}
      let_time_pass(70'000);
    }
    while (step(random)) {}
  }

  /// Who may write it now; null for nobody.
  Tab* holder(StoreDocument document) {
    const std::deque<std::shared_ptr<Tab>>& queue = queues_[document];
    return queue.empty() ? nullptr : queue.front().get();
  }

 private:
  void ask_write(const std::shared_ptr<Tab>& tab, StoreWrite write) {
    tab->store.push_back([this, tab, write = std::move(write)]() mutable {
      for (const StoreAct& act : write.acts) {
        const bool is_document = act.part != StorePart::damaged && !(act.part == StorePart::desk && act.sequence == 0);
        if (is_document) CHECK(holder({act.part == StorePart::desk ? StorePart::desk : StorePart::sheets, act.sheet}) == tab.get());
      }
      const StoreWrite as_asked = write;
      store.waiting.push_back(std::move(write));
      std::uint64_t id = 0;
      const bool is_full = fails > 0 && fails-- > 0;
      if (is_full) id = store.drop_next();
      const StoreFault fault = is_full ? StoreFault::full : store.do_next(id);
      CHECK(fault != StoreFault::taken);
      if (fault == StoreFault::none) tell_others(tab, as_asked);
      tab->answers.push_back([this, tab, id, fault] {
        if (fault == StoreFault::none) tab->keeper.written(id, now_ms);
        else tab->keeper.failed(id, fault, now_ms);
      });
    });
  }

  void tell_others(const std::shared_ptr<Tab>& teller, const StoreWrite& write) {
    for (const StoreAct& act : write.acts) {
      const bool is_step = act.part == StorePart::journal && act.kind == StoreAct::Kind::add;
      if (act.part == StorePart::damaged || (act.part == StorePart::journal && !is_step)) continue;
      std::vector<StoreRecord> records;
      if (is_step) records.push_back({act.part, act.sheet, act.sequence, act.bytes});
      for (const std::shared_ptr<Tab>& tab : tabs)
        if (tab != teller) hear(tab, StoreNews::heard, {act.part == StorePart::desk ? act.part : StorePart::sheets, act.sheet}, records);
    }
  }

  void hear(const std::shared_ptr<Tab>& tab, StoreNews what, StoreDocument document, std::vector<StoreRecord> records) {
    tab->heard.push_back([this, tab, what, document, records = std::move(records)] { tab->keeper.told(what, document, records, tab->sheets, tab->boats, now_ms); });
  }

  void take_ask(const std::shared_ptr<Tab>& tab, const StoreAsk& ask) {
    const StoreDocument document = ask.document;
    std::deque<std::shared_ptr<Tab>>& queue = queues_[document];
    const bool is_queued = std::find(queue.begin(), queue.end(), tab) != queue.end();
    if (ask.kind == StoreAsk::Kind::read) return read(tab, StoreNews::read, document);
    if (ask.kind == StoreAsk::Kind::let_go) {
      const bool had = !queue.empty() && queue.front() == tab;
      std::erase(queue, tab);
      if (had) ++handed_over, grant(document);
      return;
    }
    if (!is_queued) {
      queue.push_back(tab);
      if (queue.size() == 1) grant(document);
      else tab->locks.push_back([this, tab, document] { tab->keeper.told(StoreNews::elsewhere, document, {}, tab->sheets, tab->boats, now_ms); });
    }
    if (ask.kind == StoreAsk::Kind::claim_now)
      for (const std::shared_ptr<Tab>& other : tabs)
        if (other != tab) hear(other, StoreNews::wanted, document, {});
  }

  void grant(StoreDocument document) {
    if (queues_[document].empty()) return;
    const std::shared_ptr<Tab> tab = queues_[document].front();
    tab->locks.push_back([this, tab, document] { read(tab, StoreNews::granted, document); });
  }

  void read(const std::shared_ptr<Tab>& tab, StoreNews what, StoreDocument document) {
    tab->store.push_back([this, tab, what, document] {
      // What was read is told before anybody can write it: the transaction ends with that.
      for (; !tab->answers.empty(); tab->answers.pop_front()) tab->answers.front()();
      tab->keeper.told(what, document, store.all_of(document), tab->sheets, tab->boats, now_ms);
    });
  }

  std::map<StoreDocument, std::deque<std::shared_ptr<Tab>>> queues_;  // who holds the lock first, then who waits
  std::uint64_t lanes_ = 0;
};

}  // namespace fogsheet
