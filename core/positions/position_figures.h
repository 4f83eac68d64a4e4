// Positions as figures: degrees and decimal minutes, latitude first, as a chart's user writes them.
#pragma once

#include <string>

#include "core/positions/position.h"

namespace fogsheet {

/// "44°08.9′N" for one decimal; "031°18.6′W". Rounded to the decimals first, so that 59.97′ becomes the next degree.
/// @param decimals  of the minutes, 0 to 4.
std::string latitude_figures(double lat_deg, int decimals);
std::string longitude_figures(double lon_deg, int decimals);

/// Both, parted by a blank.
std::string position_figures(Position position, int decimals);

}  // namespace fogsheet
