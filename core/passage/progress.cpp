#include "core/passage/progress.h"

#include <algorithm>

#include "core/passage/reckoning.h"

namespace fogsheet {
namespace {

/// The last log reading since that time; null for none.
const DeckEntry* last_log_reading(const Passage& passage, double since_s) {
  const DeckEntry* read = nullptr;
  for (const DeckEntry& entry : passage.deck_log)
    if (entry.kind == DeckEntryKind::reading && entry.log_nm && static_cast<double>(instant_of(passage, entry).seconds) >= since_s) read = &entry;
  return read;
}

}  // namespace

Progress progress_on(const Document& document, const Passage& passage, const PlannedLeg& leg, double now_s) {
  const double length_nm = leg.rhumb.distance_nm;
  const DeckEntry* begun = turn_entry(passage, leg.place);
  const DeckEntry* read = last_log_reading(passage, leg.run.departure_s);
  if (read && begun && begun->log_nm) {
    const Position start = place_of(document, leg.from);
    const double logged_nm = std::max(0.0, *read->log_nm - *begun->log_nm);
    const Result<Reckoned> reckoned = reckoned_by_log(start, leg.plan, leg.run, static_cast<double>(instant_of(passage, *read).seconds), logged_nm);
    if (reckoned) return {.run_nm = std::clamp(reckoned->along_nm, 0.0, length_nm), .log_read = read->time};
  }
  const double taken_s = leg.run.arrival_s - leg.run.departure_s;
  const double share = taken_s > 0 ? (now_s - leg.run.departure_s) / taken_s : 0;
  return {.run_nm = std::clamp(share, 0.0, 1.0) * length_nm};
}

}  // namespace fogsheet
