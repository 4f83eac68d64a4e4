// A chart's natural scale typed by people: "1:100 000", "1 : 50000", "75.000".
#pragma once

#include <string_view>

#include "core/base/result.h"

namespace fogsheet {

/// The number after "1:", which may be left out; figures in groups of three parted by blanks, points, commas or apostrophes.
/// No bounds but nine figures: those of a sheet are its own. Faults: entry_empty, entry_unreadable ("scale" and the part without meaning).
Result<double> parse_scale(std::string_view text);

}  // namespace fogsheet
