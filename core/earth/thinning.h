// A line of many points by few of them. Source of the method: Douglas and Peucker (1973), Algorithms for the reduction of the
// number of points required to represent a digitized line, Cartographica 10(2), 112-122; here the worst point goes in first.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/positions/position.h"

namespace fogsheet {

struct Thinned {
  std::vector<std::uint32_t> kept;  // places in the line, ascending; its first and last among them
  double within_m = 0;              // no point of the line lies farther from what is left
};

/// Joined by rhumb lines, straight on Mercator's projection, across 180 deg where that is shorter. Takes at most `most` times
/// the number of points in steps, whatever their order.
/// @param points  none to UINT32_MAX. @param most  two or more: with that many points it stops, however far off the rest lie.
Thinned thinned(std::span<const GridPosition> points, double tolerance_m, std::size_t most);

}  // namespace fogsheet
