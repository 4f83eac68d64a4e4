// What is in hand of the boats: whose compass the slips show, which entry of its log, and what is typed there.
#pragma once

#include <optional>
#include <string>

#include "shell/boats.h"
#include "shell/form.h"

namespace fogsheet {

struct Session;

struct CompassDesk {
  BoatKey boat;
  CompassId compass;
  EntryId entry;                   // that its slip shows
  std::optional<std::size_t> row;  // of the entry, that is opened
  int card_step_deg = 15;          // of the card as it is shown
  bool last_step_here = false;     // the last thing done was done to a boat, not to a sheet: undo takes that back
  Form typed;                      // into fields, and not taken: "BOAT/ENTRY/row/3/read", "BOAT/name"
};

/// Null, or the one in hand; the first when none was chosen.
KeptBoat* boat_in_hand(Session& session);
const KeptBoat* boat_in_hand(const Session& session);
const Compass* compass_in_hand(const Session& session);
const LogEntry* entry_in_hand(const Session& session);

/// Where what is typed into an entry's fields is kept, before the field's name; and what is typed of the boat itself.
std::string typed_prefix(const CompassDesk& desk, EntryId entry);
std::string typed_prefix(const CompassDesk& desk);

/// Whether undo and redo take back what was done to the boat in hand: her slips are open, and it was done last.
bool undo_is_on_boat(const Session& session);
const Label* undo_label(const Session& session);
const Label* redo_label(const Session& session);

/// After a step of a boat's past: lets go of what is no longer there.
void settle_compass_desk(Session& session);

}  // namespace fogsheet
