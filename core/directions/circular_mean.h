// The mean of several readings of one direction, and their spread: a mean of angles is not the mean of their numbers.
// Source: Mardia and Jupp, Directional Statistics (2000), section 2.2 (mean direction), for the spread the common sample
// standard deviation of the differences from it.
#pragma once

#include <optional>
#include <span>

namespace fogsheet {

struct CircularMean {
  double mean_deg = 0;            // [0, 360)
  double spread_deg = 0;          // one sigma of a single reading, from n - 1; nought for one reading
  double standard_error_deg = 0;  // one sigma of the mean: spread / sqrt n
  double resultant = 1;           // length of the mean of unit vectors, 1 where all agree
};

/// @param directions_deg finite, any range. Empty when there are none, or they cancel (resultant under 1e-6), so that no
/// direction is their mean.
std::optional<CircularMean> circular_mean(std::span<const double> directions_deg);

}  // namespace fogsheet
