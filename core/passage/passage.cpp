#include "core/passage/passage.h"

#include <algorithm>

namespace fogsheet {

const Passage* find(const Passages& passages, PassageId id) {
  const auto found = std::find_if(passages.all.begin(), passages.all.end(), [&](const Passage& each) { return each.id == id; });
  return found == passages.all.end() ? nullptr : &*found;
}

UnderWay under_way(const Passage& passage) {
  UnderWay state;
  for (const DeckEntry& entry : passage.deck_log) {
    if (entry.kind == DeckEntryKind::departed) state = {.departed = true, .leg = 0};
    else if (entry.kind != DeckEntryKind::reading && state.leg < passage.legs.size()) ++state.leg;
  }
  return state;
}

const DeckEntry* turn_entry(const Passage& passage, std::size_t leg) {
  const DeckEntry* found = nullptr;
  std::size_t at = 0;
  for (const DeckEntry& entry : passage.deck_log) {
    if (entry.kind == DeckEntryKind::reading) continue;
    at = entry.kind == DeckEntryKind::departed ? 0 : at + 1;
    if (at == leg) found = &entry;
    else if (at == 0) found = nullptr;
  }
  return found;
}

}  // namespace fogsheet
