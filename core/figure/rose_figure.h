// A compass rose: the true ring outside, the magnetic ring inside turned by the variation as used, a star at true north, a
// half arrow at magnetic north, and the note in the middle.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/directions/directions.h"
#include "core/figure/figure.h"
#include "core/figure/legibility.h"

namespace fogsheet {

// Radii of the two circles, parts of the rose's own radius; the edge is read where it cuts them.
inline constexpr double k_true_ring = 0.885;
inline constexpr double k_magnetic_ring = 0.665;

/// @param radius_mm to the outer figures; used: none where the sheet has no variation, the magnetic ring is then left out.
void add_rose(Figure& figure, SheetPoint centre, double radius_mm, std::optional<Variation> used, const std::vector<std::string>& note,
              const Legibility& legibility);

}  // namespace fogsheet
