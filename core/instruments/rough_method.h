// The rough method, for when there is nothing to hand: a line's direction read several times by eye, quickly, with the mean
// taken; how far the readings lie apart says how far to trust it.
#pragma once

#include <optional>
#include <span>

#include "core/directions/circular_mean.h"

namespace fogsheet {

/// Fewer readings have no spread to speak of.
inline constexpr int k_least_rough_readings = 3;

/// How far to one side a boat comes out that has run a distance with its direction that far out: the distance times the sine.
/// @param run_nm at least 0; off_deg in [0, 90], more counts as 90: further than the run itself it can't be.
double to_one_side_nm(double run_nm, double off_deg);

struct RoughMean {
  CircularMean mean;
  /// One standard deviation of a single reading, over the run: readings by one hand share their faults, so that the mean's
  /// own smaller error would promise too much. None with too few readings or no run.
  std::optional<double> to_either_side_nm;
};

/// @param readings_deg finite, any range; run_nm  at least 0. Empty where there is no mean (circular_mean.h).
std::optional<RoughMean> rough_mean(std::span<const double> readings_deg, std::optional<double> run_nm);

}  // namespace fogsheet
