// A store in memory that does its writes when told to, in their order, or fails or forgets them: what a browser's store,
// a full disk and a killed process do to a page.
#pragma once

#include <deque>
#include <map>
#include <tuple>

#include "shell/keeper/keeper.h"

namespace fogsheet {

class FakeStore {
 public:
  using Key = std::tuple<StorePart, std::uint64_t, std::uint64_t>;
  std::map<Key, StoreBytes> records;
  std::deque<StoreWrite> waiting;

  void ask(std::vector<StoreWrite> writes) {
    for (StoreWrite& write : writes) waiting.push_back(std::move(write));
  }

  std::vector<StoreRecord> all() const {
    std::vector<StoreRecord> list;
    for (const auto& [key, bytes] : records) list.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key), bytes});
    return list;
  }

  std::vector<StoreRecord> all_of(StoreDocument document) const {
    std::vector<StoreRecord> list = all();
    std::erase_if(list, [&](const StoreRecord& each) {
      const bool is_of_it = document.part == StorePart::desk ? each.part == StorePart::desk && each.sequence == 1 : each.part == StorePart::sheets || each.part == StorePart::journal;
      return each.sheet != document.key || !is_of_it;
    });
    return list;
  }

  /// Does the first write that waits, as a whole or not at all. Why not.
  StoreFault do_next(std::uint64_t& id) {
    const StoreWrite write = std::move(waiting.front());
    waiting.pop_front();
    id = write.id;
    for (const StoreAct& act : write.acts)
      if (act.kind == StoreAct::Kind::add && records.contains({act.part, act.sheet, act.sequence})) return StoreFault::taken;
    for (const StoreAct& act : write.acts) {
      const Key key{act.part, act.sheet, act.sequence};
      if (act.kind == StoreAct::Kind::erase) records.erase(records.lower_bound(key), records.upper_bound(Key{act.part, act.sheet, act.last}));
      else records[key] = act.bytes;
    }
    return StoreFault::none;
  }

  /// Takes the first write that waits away without doing it.
  std::uint64_t drop_next() {
    const std::uint64_t id = waiting.front().id;
    waiting.pop_front();
    return id;
  }
};

}  // namespace fogsheet
