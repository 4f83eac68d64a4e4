// Positions typed or pasted by people, in any usual form, and printed in five forms that read back as the same position.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/positions/position.h"

namespace fogsheet {

/// Degrees and decimal minutes, degrees-minutes-seconds, decimal degrees, each with letters N S E W before or after or with
/// signs, symbols typographic, plain or missing, decimal comma or point; ISO 6709 strings; `geo:` links. Latitude comes
/// first unless letters say otherwise. Without letters and signs only decimal degrees are read (as north and east).
/// @return latitude in [-90, 90], longitude in [-180, 180); not rounded.
/// Faults: entry_*, latitude_out_of_range, longitude_out_of_range, minutes_out_of_range, seconds_out_of_range,
/// datum_unknown; with the place in the text, and a suggestion where there is just one likely reading.
Result<Position> parse_position(std::string_view text);

/// One of the two alone, in the same forms but for ISO 6709 and `geo:`.
Result<double> parse_latitude_deg(std::string_view text);
Result<double> parse_longitude_deg(std::string_view text);

enum class PositionForm { degrees_minutes, degrees_minutes_seconds, decimal_degrees, iso6709, geo_uri };

/// To the full 0.0001', so that parse_position gives the same GridPosition.
std::string print_position(GridPosition position, PositionForm form);

}  // namespace fogsheet
