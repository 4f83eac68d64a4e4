// Directions, corrections and distances as figures: what stands on screen, on the sheet and on paper. Signs and letters are
// added by who shows them.
#pragma once

#include <string>

#include "core/directions/rounding.h"

namespace fogsheet {

/// Three figures, "047", or with a tenth, "047.3", rounded by the rule. @param deg any finite angle.
std::string direction_figures(double deg, Rounding rounding);

/// The size of a correction, "9" or "9.4", rounded by the rule, without its sign.
std::string correction_figures(double deg, Rounding rounding);

/// "E", "W", or nothing for a correction that rounds to nought.
std::string east_west(double deg, Rounding rounding);

/// Degrees and whole minutes of a variation as charts print it: "9°25′W". 0 is "0°00′".
std::string degrees_minutes_text(double deg);

/// Nautical miles with one decimal, "3.7". @param distance_nm at least 0.
std::string distance_figures(double distance_nm);

}  // namespace fogsheet
