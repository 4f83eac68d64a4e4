// GeoJSON: marks from points, lines from lines, whatever holds them. Source: RFC 7946; where the file departs from it is told,
// and it is read all the same. Areas can't be used and are listed.
#pragma once

#include <optional>
#include <string_view>

#include "core/exchange/collector.h"

namespace fogsheet {

/// Names, kinds, radii, heights and notes come from the properties of those names. The pieces of a line that was cut at 180 deg
/// become one again. @param bytes at most k_most_file_bytes.
/// Faults: file_broken, file_too_deep, file_too_full, file_of_other_kind, datum_unknown (a reference system of the format of 2008).
Result<MarksAndLines> read_geojson(std::string_view bytes);

/// A position as it stands in the file, unrounded.
struct GeoJsonPosition {
  double lat_deg = 0, lon_deg = 0;
  std::optional<double> height_m;  // above the ellipsoid; no use on a sheet
};
/// @param first  the first point's, where there is one
Result<MarksAndLines> read_geojson(std::string_view bytes, std::optional<GeoJsonPosition>& first);

}  // namespace fogsheet
