// Rhumb lines on the WGS84 ellipsoid: what a straight line on a Mercator sheet is.
#pragma once

#include "core/base/units.h"
#include "core/directions/directions.h"
#include "core/positions/position.h"

namespace fogsheet {

struct RhumbLeg {
  TrueDirection course;
  double distance_nm = 0;
};

/// Course and distance along the rhumb line between two positions on the WGS84 ellipsoid.
/// @param from, to  latitude in (-90, 90) deg; longitude any, reduced.
/// @return course in [0, 360) deg true; distance in nautical miles of 1852 m, to better than 1 mm.
/// Sheets end at 75 deg either side; beyond, this holds on to the poles, which no rhumb line but a meridian reaches.
/// The shorter way round is taken; from opposite meridians, the eastward one. Same position: distance 0, course 0.
/// Source: Karney (2024), The area of rhumb polygons, Stud. Geophys. Geod. 68, 99-120, by way of GeographicLib.
RhumbLeg rhumb_inverse(Position from, Position to);

/// Where a rhumb line of that course and length (nm, any sign) ends. Lines that would pass a pole stop short: Fault
/// latitude_out_of_range.
Result<Position> rhumb_direct(Position from, TrueDirection course, double distance_nm);

}  // namespace fogsheet
