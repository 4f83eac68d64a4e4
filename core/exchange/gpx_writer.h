// GPX 1.1, in the order and the ranges of its schema: marks as `wpt`, lines as `rte`. What GPX has no element for (the radius
// of a danger, the height of a mark) stands in extensions.
#pragma once

#include <string>

#include "core/formats/marks_and_lines.h"

namespace fogsheet {

std::string gpx_text(const MarksAndLines& all);

}  // namespace fogsheet
