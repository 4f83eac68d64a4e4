// The one door to GeographicLib: nothing else in the product includes it. What it throws, or gives as not a number, ends
// here as a failed check: callers pass only what they have checked. Method and accuracy are the library's (Karney), on the
// WGS84 ellipsoid.
#pragma once

#include <array>
#include <optional>
#include <vector>

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

/// Coefficients of a sum of spherical harmonics up to `degree`, Schmidt semi-normalised; all nought at first.
struct HarmonicTable {
  explicit HarmonicTable(int highest_degree);
  double& cosine_at(int n, int m);
  double& sine_at(int n, int m);  // m >= 1

  int degree;
  std::vector<double> cosines;  // by order, then degree, as the library reads them
  std::vector<double> sines;    // the same without order 0
};

/// Earth-centred, earth-fixed: x to 0 deg N 0 deg E, y to 90 deg E, z to the north pole.
using EarthVector = std::array<double, 3>;

/// A place in metres, with the local east, north and up as unit vectors.
struct LocalFrame {
  EarthVector place_m;
  EarthVector east, north, up;
};

/// @param position latitude in [-90, 90]; height above the ellipsoid. Up is normal to the ellipsoid.
LocalFrame geodetic_frame(Position position, double height_m);

/// The same on a sphere. @param lat_deg geocentric latitude, [-90, 90]; radius from the earth's centre.
LocalFrame spherical_frame(Position position, double radius_m);

/// The gradient of the sum of (radius / r)^(n + 1) x harmonic, per metre.
EarthVector harmonic_gradient(const HarmonicTable& table, const EarthVector& place_m, double radius_m);

/// The same of table + times x change in one sum, at little more cost. @param change of no higher degree than the table.
EarthVector harmonic_gradient(const HarmonicTable& table, const HarmonicTable& change, double times, const EarthVector& place_m, double radius_m);

}  // namespace fogsheet
