// The reading strip: both rings of a rose unrolled back to back about a reading, the true ring above, the magnetic ring
// below, each with its north sign; one hairline between the two dots that the edge makes on the rings.
#pragma once

#include <optional>

#include "core/directions/directions.h"
#include "core/figure/figure.h"

namespace fogsheet {

/// The strip's own size. Units are CSS pixels at text scale 1, not paper: a panel stretches it to its width.
inline constexpr double k_strip_width = 266;
inline constexpr double k_strip_height = 102;

/// @param true_deg the reading, unrounded; used: none leaves the magnetic half out.
Figure reading_strip(double true_deg, std::optional<Variation> used);

}  // namespace fogsheet
