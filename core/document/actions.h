// The named changes of a sheet. Each checks what it was given, makes the next document and commits it as one labelled
// step; on a problem nothing changes.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/document/history.h"

namespace fogsheet {

struct NewSheet {
  std::string name;  // may be empty: named after its middle by shell
  double mid_lat_deg = 0;
  double mid_lon_deg = 0;
  double scale = 100'000;
  Paper paper = Paper::a4_across;
  Date date;
};

/// A sheet with one rose in its lower right corner and nothing else. Faults: latitude_out_of_range,
/// longitude_out_of_range, name_too_long, date_unreadable, number_out_of_range ("scale"; "year"; or "sheet" when an edge of
/// it would pass 75 deg: given is that edge's latitude).
Result<Document> made_sheet(const NewSheet& wanted);

/// Makes it the sheet in hand; undo goes back to the one before. Undo label: "New sheet".
Result<Done> new_sheet(History& history, const NewSheet& wanted);

/// Opens a document that was read from a text. Undo goes back to the one before.
void open_sheet(History& history, Document document);

struct NewMark {
  std::string name;  // kept as typed but for white space at its ends and broken UTF-8
  double lat_deg = 0;
  double lon_deg = 0;
  MarkKind kind = MarkKind::landmark;
  double radius_nm = 0;  // dangers only
};

/// Faults: name_empty, name_too_long, latitude/longitude_out_of_range, place_off_sheet, radius_missing,
/// number_out_of_range ("radius": dangers only, others have none), table_full.
Result<MarkId> add_mark(History& history, const NewMark& wanted);

/// Faults: mark_unknown, latitude/longitude_out_of_range, place_off_sheet, leg_of_no_length (onto the other end of a leg).
Result<Done> move_mark(History& history, MarkId mark, double lat_deg, double lon_deg);

/// Legs that end at the mark go with it. Faults: mark_unknown.
Result<Done> remove_mark(History& history, MarkId mark);

/// Faults: mark_unknown, leg_of_no_length, leg_already_there (from and to in that order), table_full.
Result<LegId> add_leg(History& history, MarkId from, MarkId to);

/// One step for a turning point pressed where nothing is and the leg to it. `turn` becomes a mark of kind turn.
/// Faults: those of add_mark and add_leg.
Result<LegId> add_leg_to_new_turn(History& history, MarkId from, const NewMark& turn);

/// A date outside the models is allowed: the sheet then shows no variation and says why.
/// Faults: date_unreadable (not a day of the calendar), number_out_of_range ("year" [1900, 2100]).
Result<Done> set_date(History& history, Date date);

/// A note is kept with the middle that the sheet has now; none clears it.
/// Faults: number_missing, number_out_of_range ("variation" [-180, 180], "year" [1900, 2100], "annual change" [-120, 120] minutes).
Result<Done> set_chart_note(History& history, const std::optional<PrintedVariation>& printed);

}  // namespace fogsheet
