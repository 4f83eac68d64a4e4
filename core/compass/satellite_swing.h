// A swing by satellite track and speed: on eight headings or more, in no wind and at one speed through the water, what the
// receiver says of the way over the ground. The stream is the same for all and is found along with the coefficients;
// averaging opposite headings would cancel B and C. Gauss-Newton on track and speed together.
// Source of the method: common practice of fitting a circle to ground velocities, no source; Björck (1996), 9.2 (Gauss-Newton).
#pragma once

#include <span>

#include "core/base/result.h"
#include "core/compass/swing_fit.h"

namespace fogsheet {

struct SatelliteReading {
  CompassDirection heading;
  TrueDirection track;
  double speed_kn = 0;  // over the ground, over 0
};

struct SatelliteAssumptions {
  double track_sd_deg = 1;    // of one reading; over 0
  double speed_sd_kn = 0.1;   // over 0
  double variation_sd_deg = 0;  // goes into A; at least 0
};

inline constexpr int k_least_satellite_readings = 8;

struct SatelliteSwing {
  SwingFit fit;                          // misses in degrees of heading
  std::vector<Deviation> deviations;     // as each reading has it once the stream is taken off, in the same order
  double speed_through_water_kn = 0;
  TrueDirection set;
  double drift_kn = 0;
};

/// Faults: too_few_readings; headings_too_close when they do not support all five coefficients beside the stream, or the
/// readings are of no boat that moves (no convergence).
/// @param variation unrounded
Result<SatelliteSwing> fit_satellite_swing(std::span<const SatelliteReading> readings, Variation variation, const SatelliteAssumptions& assumptions);

}  // namespace fogsheet
