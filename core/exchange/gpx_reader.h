// GPX as it is met in the wild: waypoints, routes and tracks, in GPX 1.1, 1.0 or no namespace, in any order, with whatever
// other programs put beside them. Where the file departs from GPX 1.1 is told, and it is read all the same.
#pragma once

#include <string_view>

#include "core/exchange/collector.h"

namespace fogsheet {

/// Marks from `wpt`, lines from `rte` (by its points) and from each `trkseg` (thinned). A description goes into the note; a type
/// that is one of our kinds becomes the kind. @param bytes at most k_most_file_bytes.
/// Faults: those of read_xml; file_of_other_kind.
Result<MarksAndLines> read_gpx(std::string_view bytes);

/// How many of each there are, used or not.
struct GpxCounts {
  std::size_t wpt = 0, rte = 0, rtept = 0, trk = 0, trkpt = 0;
};
Result<MarksAndLines> read_gpx(std::string_view bytes, GpxCounts& counts);

}  // namespace fogsheet
