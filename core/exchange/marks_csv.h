// Marks as comma-separated values. Source: RFC 4180; read with semicolons or tabs between the fields too, as programs of
// countries with a decimal comma write it (common practice, no source).
#pragma once

#include <string>
#include <string_view>

#include "core/exchange/collector.h"

namespace fogsheet {

/// The first line names the columns, in any order and any letters, small or capital: name; latitude and longitude (lat, lon,
/// lng, long), or position; kind (type); radius_nm; height_m; note (description, comment). Other columns are not looked at.
/// Places in any form that is typed (positions/position_text.h). @param bytes at most k_most_file_bytes.
/// Faults: file_without_columns, file_broken (a quote that is never closed).
Result<MarksAndLines> read_marks_csv(std::string_view bytes);

/// The marks alone; decimal degrees. Names and notes that a program might compute get an apostrophe before them.
std::string marks_csv(const MarksAndLines& all);

}  // namespace fogsheet
