// What the actions check alike before they commit. Each gives the value as documents keep it, or why it can't be kept.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/document/document.h"

namespace fogsheet::checks {

Problem out_of_range(std::string what, double given, double least, double most);

/// Faults: number_missing (not finite), number_out_of_range.
Result<double> number(std::string what, double given, double least, double most);

/// A day of the calendar from 1900 to 2100. Faults: date_unreadable, number_out_of_range ("year").
Result<Date> date(Date date);

/// Trimmed, with broken UTF-8 repaired. Faults: name_too_long.
Result<std::string> name_or_none(std::string_view typed);
/// Faults: name_empty too.
Result<std::string> name(std::string_view typed);
/// Words of several lines. Faults: note_too_long.
Result<std::string> note_or_none(std::string_view typed);

/// A place inside the sheet's neat line. Faults: latitude/longitude_out_of_range, number_missing, place_off_sheet with `name`.
Result<GridPosition> place(const Document& document, const std::string& name, double lat_deg, double lon_deg);

/// Ids are never reused, so that a document could in the end have no new one although its tables have room.
bool has_room(const Document& document, std::size_t rows, std::size_t most);
Problem table_full(std::string what, std::size_t most);

}  // namespace fogsheet::checks
