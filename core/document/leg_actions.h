// Changes of the legs on a sheet.
#pragma once

#include "core/base/result.h"
#include "core/document/mark_actions.h"

namespace fogsheet {

/// Faults: mark_unknown, leg_of_no_length, leg_already_there (from and to in that order), table_full.
Result<LegId> add_leg(History& history, MarkId from, MarkId to);

/// One step for a turning point pressed where nothing is and the leg to it. `turn` becomes a mark of kind turn.
/// Faults: those of add_mark and add_leg.
Result<LegId> add_leg_to_new_turn(History& history, MarkId from, const NewMark& turn);

/// A new mark in a leg: the leg ends there, and a new one goes on from there, right after it in the list. A reading written
/// on the leg goes with it and is stale. Faults: leg_unknown, leg_of_no_length (at one of its ends), leg_already_there, table_full, those of add_mark.
Result<MarkId> insert_mark(History& history, LegId leg, const NewMark& wanted);

/// Sets a leg at a place of the list, in [0, legs); a place past the end is the last. Faults: leg_unknown.
Result<Done> reorder_leg(History& history, LegId leg, std::size_t place);

/// The leg the other way round; a reading written on it is taken off. Faults: leg_unknown, leg_already_there.
Result<Done> reverse_leg(History& history, LegId leg);

/// Its marks stay. Faults: leg_unknown.
Result<Done> remove_leg(History& history, LegId leg);

/// Keeps what was read by hand with the leg, to the tenth of a degree, in the direction from its start to its end.
/// Faults: leg_unknown, direction_out_of_range.
Result<Done> write_on_leg(History& history, LegId leg, double bearing_deg, Reference reference);

/// Faults: leg_unknown, nothing_written.
Result<Done> rub_out_reading(History& history, LegId leg);

}  // namespace fogsheet
