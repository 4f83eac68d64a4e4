// What stands inside each section of a document text of format 1: its fields in their order, and the bounds of each.
// A section that has once been released never changes; what comes later gets a section of its own.
#pragma once

#include <optional>
#include <span>

#include "core/base/result.h"
#include "core/document/document.h"
#include "core/formats/bytes.h"

namespace fogsheet {

/// In the order in which they stand in a text. Their numbers are part of the format.
enum class Section : std::uint32_t {
  sheet = 1, marks = 2, legs = 3, roses = 4, chart_note = 5, next_id = 6, mark_details = 7, readings = 8, own_places = 9, sheet_details = 10, text_notes = 11, compass = 12, passages = 13, packed = 14
};
inline constexpr Section k_sections[] = {Section::sheet,        Section::marks,    Section::legs,       Section::roses,         Section::chart_note, Section::next_id,
                                         Section::mark_details, Section::readings, Section::own_places, Section::sheet_details, Section::text_notes,
                                         Section::compass,      Section::passages, Section::packed};

std::string_view section_name(Section section);

/// Whether every text must have it, by itself or inside `packed`, which holds a whole document (packed_document.h). Texts
/// written before that have a section each for what there is.
bool is_required(Section section);

/// The section's bytes; none when the document has nothing for it, or it is one that is packed field by field.
std::optional<ByteWriter> write_section(const Document& document, Section section);

/// Puts what the bytes say into `document`, which already holds the sections before it. Faults: text_section.
Result<Done> read_section(Section section, std::span<const std::uint8_t> bytes, Document& document);

}  // namespace fogsheet
