// Files of other programs, read and written: which of the formats a file is in shows in its bytes, whatever its name.
#pragma once

#include <string>
#include <string_view>

#include "core/formats/marks_and_lines.h"

namespace fogsheet {

/// Faults: file_too_long, file_unknown, those of read_gpx, read_geojson and read_marks_csv.
Result<MarksAndLines> read_file(std::string_view bytes);

/// @param format "gpx", "geojson" or "csv"; empty for any other.
std::string file_of(const MarksAndLines& all, std::string_view format);

}  // namespace fogsheet
