// GeoJSON: marks as points, lines as lines, with their names and what else is known in their properties. Source: RFC 7946.
#pragma once

#include <string>

#include "core/formats/marks_and_lines.h"

namespace fogsheet {

/// A straight line of GeoJSON is straight in longitude and latitude (section 3.1.1), so that a long leg gets points in between
/// until it lies within this of the rhumb line. One over 180 deg is cut there (section 3.1.9).
inline constexpr double k_geojson_tolerance_m = 5;

std::string geojson_text(const MarksAndLines& all);

}  // namespace fogsheet
