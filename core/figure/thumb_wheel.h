// A wheel's rim seen from above, graduated: by it an edge is turned by tenths of a degree. What is nought is where it began.
#pragma once

#include "core/figure/figure.h"

namespace fogsheet {

/// Its own size. Units are CSS pixels at text scale 1, not paper: a panel stretches it to its width.
inline constexpr double k_wheel_width = 266;
inline constexpr double k_wheel_height = 50;
inline constexpr double k_wheel_tenth = 12;  // between two graduations

/// @param turned_deg  how far it has been turned: clockwise, positive, has moved the rim to the right
Figure thumb_wheel(double turned_deg);

}  // namespace fogsheet
