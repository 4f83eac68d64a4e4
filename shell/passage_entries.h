// The fields of a passage as they are typed and shown: by name, "speed", "stream/set", "leg/2/look-for", "tide/0/time".
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/document/document.h"

namespace fogsheet {

/// The passage with a field as it was typed. An empty text clears what need not be there; a tide or an hour that is not there
/// yet is added. @param document  whose marks are named in "leg/2/leave" by their ids.
/// Faults: those of the entry's parsers and of as_kept, entry_unreadable ("field") for a name that there is not, wind_missing,
/// mark_unknown.
Result<Passage> with_field(const Document& document, Passage passage, const std::string& field, const std::string& text);

/// What stands in it; empty when nothing does, or there is no such field.
std::string field_text(const Passage& passage, const std::string& field);

std::string leg_field_name(std::size_t leg, const std::string& name);
std::string tide_field_name(std::size_t tide, const char* name);
/// "stream/hour/-3": set and drift, "352/0.7".
std::string stream_hour_field_name(int hour);

}  // namespace fogsheet
