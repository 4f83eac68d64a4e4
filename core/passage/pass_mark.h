// A mark seen ahead, and the course that leaves it to one side at a distance.
// Source: deck officer question banks, terrestrial navigation; Pythagoras.
#pragma once

#include "core/base/result.h"
#include "core/directions/directions.h"

namespace fogsheet {

enum class Side { port, starboard };

struct Passing {
  TrueDirection course;  // over the ground
  double run_nm = 0;     // until the mark is abeam
};

/// @param side on which the mark is left; abeam_nm how far off, from 0. Flat: for what lies in sight.
/// Faults: mark_too_near when it is nearer than that already; number_out_of_range for distances below 0.
Result<Passing> pass_at_distance(TrueDirection bearing, double distance_nm, double abeam_nm, Side side);

}  // namespace fogsheet
