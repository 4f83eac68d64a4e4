// The named changes of a boat. Each checks what it was given, makes the next boat and commits it as one labelled step; on a
// problem nothing changes.
#pragma once

#include "core/base/result.h"
#include "core/document/history.h"

namespace fogsheet {

/// A boat with one steering compass. Faults: name_empty, name_too_long (of either).
Result<Boat> made_boat(std::string name, std::string compass_name);

/// Faults: name_empty, name_too_long.
Result<Done> name_boat(BoatHistory& history, std::string name);

/// Faults: name_empty, name_too_long, table_full.
Result<CompassId> add_compass(BoatHistory& history, std::string name, CompassKind kind);
/// Faults: name_empty, name_too_long, compass_unknown.
Result<Done> change_compass(BoatHistory& history, CompassId id, std::string name, CompassKind kind);
/// With its log. Faults: compass_unknown; last_compass, since a boat has one.
Result<Done> remove_compass(BoatHistory& history, CompassId id);

/// Faults: compass_unknown, table_full, those of as_kept (formats/boat_fields.h).
Result<EntryId> add_log_entry(BoatHistory& history, CompassId compass, Date date, LogEntryKind what);
/// @param entry  in place of the one of its id. Faults: log_entry_unknown, those of as_kept.
Result<Done> change_log_entry(BoatHistory& history, LogEntry entry);
/// Faults: log_entry_unknown.
Result<Done> remove_log_entry(BoatHistory& history, EntryId id);

}  // namespace fogsheet
