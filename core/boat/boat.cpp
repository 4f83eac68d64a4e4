#include "core/boat/boat.h"

#include <algorithm>

namespace fogsheet {
namespace {

template <class Row, class RowId>
const Row* found(const std::vector<Row>& rows, RowId id) {
  const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& each) { return each.id == id; });
  return row == rows.end() ? nullptr : &*row;
}

}  // namespace

const Compass* find(const Boat& boat, CompassId id) { return found(boat.compasses, id); }

const LogEntry* find(const Boat& boat, EntryId id) {
  const Compass* owner = owner_of(boat, id);
  return owner ? found(owner->log, id) : nullptr;
}

const Compass* owner_of(const Boat& boat, EntryId id) {
  for (const Compass& compass : boat.compasses)
    if (found(compass.log, id)) return &compass;
  return nullptr;
}

}  // namespace fogsheet
