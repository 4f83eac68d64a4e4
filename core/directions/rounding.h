// The rounding rule of everything shown: round each term first, then add, so that the arithmetic on screen adds up.
// Halves go up for directions and away from zero for corrections (variation, deviation, stream, leeway). A value within
// 1e-9 deg of a half counts as that half, since sums of decimals miss it by their last bits.
#pragma once

namespace fogsheet {

enum class Rounding { whole_degrees, tenths };

/// A direction rounded by the rule, in [0, 360): 359.5 becomes 0, and by tenths 359.95 becomes 0.
double round_direction_deg(double deg, Rounding rounding);

/// A correction rounded by the rule: -9.5 becomes -10, never -0.
double round_correction_deg(double deg, Rounding rounding);

/// From this much on, the value by tenths is shown beside a whole-degree result.
inline constexpr double k_tenths_shown_from_deg = 0.75;

/// Whether rounding has moved a direction that far: the values are compared on the circle, and 0.75 counts.
bool rounding_moved_far(double shown_deg, double exact_deg);

}  // namespace fogsheet
