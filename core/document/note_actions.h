// Changes of the words written on a sheet.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/document/history.h"

namespace fogsheet {

/// Faults: note_empty, note_too_long, latitude/longitude_out_of_range, place_off_sheet, table_full.
Result<NoteId> add_text_note(History& history, double lat_deg, double lon_deg, const std::string& text);

struct TextNoteChange {
  std::optional<Position> at;
  std::optional<std::string> text;
};

/// Faults: note_unknown, those of add_text_note.
Result<Done> change_text_note(History& history, NoteId note, const TextNoteChange& change);

/// Faults: note_unknown.
Result<Done> remove_text_note(History& history, NoteId note);

}  // namespace fogsheet
