// The names of fields, agreed between the panels that show them and the commands that take what was typed there.
#pragma once

#include <string>
#include <string_view>

#include "core/document/ids.h"

namespace fogsheet {

/// Where the entries of a mark's fields are kept: "mark/12/", before the field's name.
inline std::string entry_prefix(MarkId mark) { return "mark/" + std::to_string(mark.value) + "/"; }

inline std::string entry_prefix(RoseId rose) { return "rose/" + std::to_string(rose.value) + "/"; }
inline std::string entry_prefix(NoteId note) { return "note/" + std::to_string(note.value) + "/"; }

inline constexpr std::string_view k_new_mark_fields[] = {"kind", "name", "how", "position", "from", "bearing", "distance", "second", "second-bearing", "radius", "height", "note"};
inline constexpr std::string_view k_new_sheet_fields[] = {"how", "middle", "corner-a", "corner-b", "scale", "other-scale", "paper", "name", "date", "variation-by", "variation", "variation-year", "annual-change", "datum", "other-datum", "note"};

template <std::size_t count>
bool is_field(const std::string_view (&fields)[count], std::string_view name) {
  for (const std::string_view field : fields)
    if (field == name) return true;
  return false;
}

}  // namespace fogsheet
