// Positions as ISO 6709 strings: +5030.0-00415.0/ . Source: ISO 6709:2008 and 2022, annex H.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/positions/position.h"

namespace fogsheet {

struct Iso6709 {
  Position position;  // latitude [-90, 90], longitude [-180, 180]
  std::optional<double> height_m;
  std::string system;  // the reference system as written after CRS; empty where none is

  bool is_wgs84() const { return system.empty() || system == "WGS_84"; }
};

/// Latitude DD, DDMM or DDMMSS, longitude DDD, DDDMM or DDDMMSS in the same form, each with decimals on its last part,
/// signs always; then, if wanted, a height, only together with a reference system as CRSWGS_84; then a solidus. Nothing else.
/// Faults: entry_empty, entry_unreadable, entry_part_missing ("reference system" for a height without one),
/// latitude_out_of_range, longitude_out_of_range, minutes_out_of_range, seconds_out_of_range.
Result<Iso6709> parse_iso6709(std::string_view text);

/// Degrees and minutes to 0.0001', which is how documents keep positions.
std::string print_iso6709(GridPosition position);

}  // namespace fogsheet
