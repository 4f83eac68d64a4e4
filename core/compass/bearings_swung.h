// From what was read on board to deviations where that takes more than a difference (deviation_between, for a bearing by the
// compass itself): an object's bearing relative to the bow, a reading the wrong way round; and how far off the object must be, since a boat swings round a circle and not on a point.
#pragma once

#include <optional>

#include "core/directions/directions.h"

namespace fogsheet {

/// Deviation on a heading from the object's angle clockwise from the bow: the magnetic heading is the bearing less that.
Deviation deviation_of_relative(MagneticDirection bearing, CompassDirection heading, double relative_deg);

/// Larger than this is taken for a slip (the reciprocal read, or a wrong figure) until the user says otherwise.
/// A chosen number: cards beyond 60 degrees are not steered by.
inline constexpr double k_largest_plain_deviation_deg = 60;

/// What a reading may be instead, when its deviation is too large to be one: 180 degrees round, where that makes it plain.
std::optional<Deviation> as_reciprocal(Deviation deviation);

/// Parallax on a swing stays under this.
inline constexpr double k_largest_parallax_deg = 0.5;

/// The radius of the largest circle to swing on so that an object at that distance keeps its bearing to
/// k_largest_parallax_deg to either side of the one from its middle. @param distance_m at least 0
double largest_swinging_radius_m(double distance_m);

/// What swinging on such a circle adds to the object's bearing at most, deg: it looks like B and C. From inside the
/// circle's reach every bearing is possible: 180. @param radius_m, distance_m at least 0; distance 0 gives 180.
double swinging_parallax_deg(double radius_m, double distance_m);

}  // namespace fogsheet
