// Changes of the sheet itself: made anew, shaped, described, dated, its variation.
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

/// Where a sheet lies and how large its water is drawn.
struct SheetShape {
  double mid_lat_deg = 0;
  double mid_lon_deg = 0;
  double scale = 100'000;
  Paper paper = Paper::a4_across;
};

/// Changes the sheet under what is on it. Nothing is lost: with a mark or a note that would lie off it, it is refused; a rose
/// that would is set in the lower right corner, smaller where need be.
/// Faults: those of made_sheet; things_off_sheet (texts: names of those that would lie off, three at most; numbers: how many).
Result<Done> reshape_sheet(History& history, const SheetShape& wanted);

/// Where a sheet of that paper lies, and at what scale, to hold a document's marks with 15 mm to spare.
/// Faults: no_marks_to_fit, sheet_too_wide.
Result<SheetShape> shape_around_marks(const Document& document, Paper paper);

/// What is written on a sheet. Each is left as it is when not given.
struct SheetDetails {
  std::optional<std::string> name;   // may be empty
  std::optional<std::string> note;   // may be empty
  std::optional<std::string> datum;  // not empty
  std::optional<SignSet> signs;
};

/// Faults: name_empty (the datum), name_too_long, note_too_long.
Result<Done> describe_sheet(History& history, const SheetDetails& wanted);

/// A date outside the models is allowed: the sheet then shows no variation and says why.
/// Faults: date_unreadable (not a day of the calendar), number_out_of_range ("year" [1900, 2100]).
Result<Done> set_date(History& history, Date date);

/// A note is kept with the middle that the sheet has now; none clears it.
/// Faults: number_missing, number_out_of_range ("variation" [-180, 180], "year" [1900, 2100], "annual change" [-120, 120] minutes).
Result<Done> set_chart_note(History& history, const std::optional<PrintedVariation>& printed);

/// The sheet is steered by this card from now on. Faults: those of as_kept (formats/boat_fields.h).
Result<Done> use_card(History& history, KeptCard card);
/// Deviation is not entered any more.
Result<Done> drop_card(History& history);

}  // namespace fogsheet
