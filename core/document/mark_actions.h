// Changes of the marks on a sheet.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/document/history.h"

namespace fogsheet {

struct NewMark {
  std::string name;  // kept as typed but for white space at its ends and broken UTF-8
  double lat_deg = 0;
  double lon_deg = 0;
  MarkKind kind = MarkKind::landmark;
  double radius_nm = 0;  // dangers only
  double height_m = 0;   // 0: not known
  std::string note = {};  // may be empty
};

/// Faults: name_empty, name_too_long, note_too_long, latitude/longitude_out_of_range, place_off_sheet, radius_missing,
/// number_out_of_range ("radius": dangers only, others have none; "height"), mark_already_there (same name, same place), table_full.
Result<MarkId> add_mark(History& history, const NewMark& wanted);

/// The same, for actions that do more in one step: puts it into `document`, which is left as it was on a problem.
Result<Mark> with_new_mark(Document& document, const NewMark& wanted);

/// A mark by true bearing and distance from another, along the rhumb line; its latitude and longitude are not looked at.
/// Faults: mark_unknown, number_out_of_range ("distance": over 0, at most 1 000 nm), those of add_mark.
Result<MarkId> add_mark_by_bearing(History& history, MarkId from, TrueDirection bearing, double distance_nm, const NewMark& wanted);

/// A line on the sheet through a mark.
struct LineThrough {
  MarkId mark;
  TrueDirection bearing;  // either way along the line
};

/// A mark where two lines cross. Faults: mark_unknown, lines_do_not_cross (parallel to within 1 deg; texts: both marks' names;
/// numbers: the angle between them), those of add_mark.
Result<MarkId> add_mark_by_crossing(History& history, LineThrough first, LineThrough second, const NewMark& wanted);

/// A copy with a name of its own, 6 mm to the right of it, or to the left where that is off the sheet.
/// @param name of the copy. Faults: mark_unknown, those of add_mark.
Result<MarkId> duplicate_mark(History& history, MarkId mark, const std::string& name);

/// What a mark is made of. Each is left as it is when not given. A mark that becomes a danger needs a radius.
struct MarkChange {
  std::optional<std::string> name;
  std::optional<MarkKind> kind;
  std::optional<Position> at;
  std::optional<double> radius_nm;
  std::optional<double> height_m;  // 0: not known
  std::optional<std::string> note;
};

/// Faults: mark_unknown, leg_of_no_length (onto the other end of a leg), those of add_mark.
Result<Done> change_mark(History& history, MarkId mark, const MarkChange& change);

/// Faults: mark_unknown, latitude/longitude_out_of_range, place_off_sheet, leg_of_no_length (onto the other end of a leg).
Result<Done> move_mark(History& history, MarkId mark, double lat_deg, double lon_deg);

/// Sets a mark at a place of the list, in [0, marks); a place past the end is the last.
/// Faults: mark_unknown.
Result<Done> reorder_mark(History& history, MarkId mark, std::size_t place);

/// Legs that end at the mark go with it. Faults: mark_unknown.
Result<Done> remove_mark(History& history, MarkId mark);

}  // namespace fogsheet
