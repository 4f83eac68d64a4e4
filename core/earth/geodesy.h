// The one door to GeographicLib: nothing else in the product includes it. What it throws, or gives as not a number, ends
// here as a failed check: callers pass only what they have checked. Method and accuracy are the library's (Karney), on the
// WGS84 ellipsoid.
#pragma once

#include <optional>

#include "core/directions/directions.h"
#include "core/positions/position.h"

namespace fogsheet {

/// The shortest line between two positions: its direction at both ends, both onwards, and its length.
struct GeodesicLeg {
  TrueDirection departure;
  TrueDirection arrival;
  double distance_m = 0;
};

/// Where a geodesic ends, and its direction there.
struct GeodesicEnd {
  Position position;
  TrueDirection arrival;
};

/// @param from, to  latitude in [-90, 90] deg, longitude any. Distance to 15 nm (nanometres).
/// Source: Karney (2013), Algorithms for geodesics, J. Geodesy 87, 43-55.
GeodesicLeg geodesic_inverse(Position from, Position to);

/// @param distance_m any finite length, negative ones backwards. Longitude of the end in [-180, 180).
GeodesicEnd geodesic_direct(Position from, TrueDirection departure, double distance_m);

/// By the library's series to the sixth order, which keeps 0.001 mm beside quadrature (tests/core/rhumb_test.cpp).
/// A rhumb line between two latitudes over that difference of longitude, [-180, 180] deg, east positive.
struct RhumbCourse {
  double course_deg = 0;  // [0, 360)
  double distance_m = 0;
};
RhumbCourse rhumb_course(double lat1_deg, double lat2_deg, double dlon_deg);

/// The end of a rhumb line; empty where it would pass a pole.
std::optional<Position> rhumb_end(Position from, double course_deg, double distance_m);

}  // namespace fogsheet
