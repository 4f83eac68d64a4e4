// What both rings of a rose say where a settled edge cuts them, in the direction of travel.
#pragma once

#include <optional>

#include "core/directions/chain.h"
#include "core/instruments/straight_edge.h"

namespace fogsheet {

struct RoseReading {
  TrueDirection on_true_ring;               // unrounded, as the edge lies
  std::optional<MagneticDirection> on_magnetic_ring;  // none where the sheet has no variation
  Chain chain;                              // true to magnetic or compass, as far as they are known
};

/// @param exact  the variation unrounded; the magnetic ring is turned by it as rounding makes it.
/// @param card  the boat's: the chain goes on to the compass then, with the edge's direction as the ship's head.
RoseReading read_rose(const StraightEdge& edge, std::optional<Variation> exact, Rounding rounding, const DeviationCard* card = nullptr);

}  // namespace fogsheet
