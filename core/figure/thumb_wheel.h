// A wheel's rim seen from above: by it an edge is turned by tenths of a degree. What is nought is where it began. Its edges
// are chequered by half degrees, as a chart's border is by minutes. It stands alone, or under a reading strip whose
// hairline goes on in it.
#pragma once

#include "core/figure/figure.h"

namespace fogsheet {

/// Its own size. Units are CSS pixels at text scale 1, not paper: a panel stretches it to its width.
inline constexpr double k_wheel_width = 266;
inline constexpr double k_wheel_height = 61;
inline constexpr double k_wheel_words = 16;  // of its height, at the top right: a strip's last line shares it
inline constexpr double k_wheel_left = 28;   // where the rim begins; left of it stands its sign, as those of the strip
inline constexpr double k_wheel_tenth = 12;  // between two graduations

/// @param top  where it begins; turned_deg: how far it has been turned: clockwise, positive, has moved the rim to the right
void add_thumb_wheel(Figure& figure, double top, double turned_deg);

}  // namespace fogsheet
