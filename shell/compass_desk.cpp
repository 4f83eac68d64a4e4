#include "shell/compass_desk.h"

#include <utility>

#include "shell/session.h"

namespace fogsheet {

const KeptBoat* boat_in_hand(const Session& session) {
  const KeptBoat* boat = session.boats.find(session.compass_desk.boat);
  if (boat && !boat->removed) return boat;
  for (const std::unique_ptr<KeptBoat>& each : session.boats.all())
    if (!each->removed) return each.get();
  return nullptr;
}

KeptBoat* boat_in_hand(Session& session) { return const_cast<KeptBoat*>(boat_in_hand(std::as_const(session))); }

const Compass* compass_in_hand(const Session& session) {
  const KeptBoat* boat = boat_in_hand(session);
  if (!boat || boat->now().compasses.empty()) return nullptr;
  const Compass* compass = find(boat->now(), session.compass_desk.compass);
  return compass ? compass : &boat->now().compasses.front();
}

const LogEntry* entry_in_hand(const Session& session) {
  const KeptBoat* boat = boat_in_hand(session);
  return boat ? find(boat->now(), session.compass_desk.entry) : nullptr;
}

std::string typed_prefix(const CompassDesk& desk) { return std::to_string(desk.boat.value) + "/"; }
std::string typed_prefix(const CompassDesk& desk, EntryId entry) { return typed_prefix(desk) + std::to_string(entry.value) + "/"; }

bool undo_is_on_boat(const Session& session) {
  return session.compass_desk.last_step_here && (session.slip == SlipId::compass || session.slip == SlipId::log_entry) && boat_in_hand(session);
}

const Label* undo_label(const Session& session) { return undo_is_on_boat(session) ? boat_in_hand(session)->history.undo_label() : session.sheets.undo_label(); }
const Label* redo_label(const Session& session) { return undo_is_on_boat(session) ? boat_in_hand(session)->history.redo_label() : session.sheets.redo_label(); }

void settle_compass_desk(Session& session) {
  CompassDesk& desk = session.compass_desk;
  if (const KeptBoat* boat = boat_in_hand(session)) desk.boat = boat->key;
  if (const Compass* compass = compass_in_hand(session)) desk.compass = compass->id;
  if (!entry_in_hand(session)) {
    desk.entry = {};
    desk.row.reset();
    if (session.slip == SlipId::log_entry) session.slip = SlipId::compass;
  }
}

}  // namespace fogsheet
