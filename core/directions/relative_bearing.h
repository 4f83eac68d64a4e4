// Bearings from the ship's own head.
#pragma once

#include "core/directions/directions.h"

namespace fogsheet {

/// A bearing counted clockwise from the heading, [0, 360): 090 is abeam to starboard. Both by the same north.
template <Reference reference>
double relative_bearing_deg(Direction<reference> bearing, Direction<reference> heading) {
  return reduce_direction_deg(bearing.deg() - heading.deg());
}

/// The bearing of what lies that far clockwise of the heading. @param relative_deg any finite angle.
template <Reference reference>
Direction<reference> bearing_from_relative(Direction<reference> heading, double relative_deg) {
  return Direction<reference>(heading.deg() + relative_deg);
}

/// The same as an angle on the bow, [-180, 180): positive to starboard, negative to port, -180 right astern.
template <Reference reference>
double angle_on_bow_deg(Direction<reference> bearing, Direction<reference> heading) {
  return reduce_difference_deg(bearing.deg() - heading.deg());
}

}  // namespace fogsheet
