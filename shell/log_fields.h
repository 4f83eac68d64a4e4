// The fields of a log entry as they are typed and shown: by name, "date", "object", "row/3/read".
#pragma once

#include <optional>
#include <string>

#include "core/boat/boat.h"
#include "core/directions/rounding.h"

namespace fogsheet {

/// The entry with a field as it was typed. An empty text clears what need not be there. A row one past the last is added.
/// Faults: those of the entry's parsers, entry_unreadable ("field") for a name that it has not, those of row_problem
/// (core/boat/swing_record.h) for a reading that can't be.
Result<LogEntry> with_field(LogEntry entry, const std::string& field, const std::string& text);

/// What stands in it; empty when nothing does, or it has no such field.
std::string field_text(const LogEntry& entry, const std::string& field);

/// "3" of "row/3/read", and "read".
struct RowField {
  std::size_t row = 0;
  std::string name;
};
std::optional<RowField> row_field(const std::string& field);
std::string row_field_name(std::size_t row, const char* name);

std::size_t row_count(const LogEntry& entry);
/// Without that row, which is there.
LogEntry without_row(LogEntry entry, std::size_t row);

const char* method_name(SwingMethod method);
std::optional<SwingMethod> method_named(const std::string& name);

}  // namespace fogsheet
