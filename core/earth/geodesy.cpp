#include "core/earth/geodesy.h"

#include <GeographicLib/Geocentric.hpp>
#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/Rhumb.hpp>
#include <GeographicLib/SphericalHarmonic.hpp>
#include <GeographicLib/SphericalHarmonic1.hpp>
#include <cmath>

namespace fogsheet {

namespace {

// Calls of the library that may throw go through here. None of them does for what core passes; if one does, that is our
// mistake. What is documented never to throw is called as it is: a try costs as much as the sum of harmonics.
template <class Call>
auto call_library(const Call& call) {
  try {
    return call();
  } catch (const std::exception& thrown) {
    check_failed("no exception from GeographicLib", thrown.what(), __FILE__, __LINE__);
  }
}

void check_position(Position position) {
  SHEET_CHECK(std::abs(position.lat_deg) <= 90, "a latitude beyond the poles");
  SHEET_CHECK(std::isfinite(position.lon_deg), "a longitude that is not a number");
}

LocalFrame frame_at(Position position) {
  constexpr double k_radians = 3.14159265358979323846 / 180;
  const double sin_lat = std::sin(position.lat_deg * k_radians), cos_lat = std::cos(position.lat_deg * k_radians);
  const double sin_lon = std::sin(position.lon_deg * k_radians), cos_lon = std::cos(position.lon_deg * k_radians);
  return {.place_m = {},
          .east = {-sin_lon, cos_lon, 0},
          .north = {-sin_lat * cos_lon, -sin_lat * sin_lon, cos_lat},
          .up = {cos_lat * cos_lon, cos_lat * sin_lon, sin_lat}};
}

}  // namespace

GeodesicLeg geodesic_inverse(Position from, Position to) {
  check_position(from);
  check_position(to);
  return call_library([&] {
    double distance_m = 0, departure_deg = 0, arrival_deg = 0;
    GeographicLib::Geodesic::WGS84().Inverse(from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg, distance_m, departure_deg, arrival_deg);
    SHEET_CHECK(std::isfinite(distance_m + departure_deg + arrival_deg), "a geodesic that is not a number");
    return GeodesicLeg{.departure = TrueDirection(departure_deg), .arrival = TrueDirection(arrival_deg), .distance_m = distance_m};
  });
}

GeodesicEnd geodesic_direct(Position from, TrueDirection departure, double distance_m) {
  check_position(from);
  SHEET_CHECK(std::isfinite(distance_m), "a distance that is not a number");
  return call_library([&] {
    Position end;
    double arrival_deg = 0;
    GeographicLib::Geodesic::WGS84().Direct(from.lat_deg, from.lon_deg, departure.deg(), distance_m, end.lat_deg, end.lon_deg, arrival_deg);
    SHEET_CHECK(std::isfinite(end.lat_deg + end.lon_deg + arrival_deg), "a geodesic that is not a number");
    end.lon_deg = reduce_longitude_deg(end.lon_deg);
    return GeodesicEnd{.position = end, .arrival = TrueDirection(arrival_deg)};
  });
}

RhumbCourse rhumb_course(double lat1_deg, double lat2_deg, double dlon_deg) {
  check_position({.lat_deg = lat1_deg});
  check_position({.lat_deg = lat2_deg});
  SHEET_CHECK(std::abs(dlon_deg) <= 180, "a difference of longitude over half the circle");
  return call_library([&] {
    double distance_m = 0, course_deg = 0;
    GeographicLib::Rhumb::WGS84().Inverse(lat1_deg, 0, lat2_deg, dlon_deg, distance_m, course_deg);
    SHEET_CHECK(std::isfinite(distance_m + course_deg), "a rhumb line that is not a number");
    return RhumbCourse{.course_deg = reduce_direction_deg(course_deg), .distance_m = distance_m};
  });
}

std::optional<Position> rhumb_end(Position from, double course_deg, double distance_m) {
  check_position(from);
  SHEET_CHECK(std::isfinite(course_deg) && std::isfinite(distance_m), "a course or distance that is not a number");
  return call_library([&]() -> std::optional<Position> {
    Position end;
    GeographicLib::Rhumb::WGS84().Direct(from.lat_deg, from.lon_deg, course_deg, distance_m, end.lat_deg, end.lon_deg);
    // Past a pole the library gives no longitude.
    if (!std::isfinite(end.lat_deg + end.lon_deg)) return std::nullopt;
    end.lon_deg = reduce_longitude_deg(end.lon_deg);
    return end;
  });
}

HarmonicTable::HarmonicTable(int highest_degree)
    : degree(highest_degree),
      cosines(static_cast<std::size_t>((degree + 1) * (degree + 2) / 2)),
      sines(cosines.size() - static_cast<std::size_t>(degree + 1)) {}

double& HarmonicTable::cosine_at(int n, int m) {
  SHEET_CHECK(m >= 0 && m <= n && n <= degree, "a coefficient that the table does not have");
  return cosines[static_cast<std::size_t>(m * degree - m * (m - 1) / 2 + n)];
}

double& HarmonicTable::sine_at(int n, int m) {
  SHEET_CHECK(m >= 1 && m <= n && n <= degree, "a coefficient that the table does not have");
  return sines[static_cast<std::size_t>(m * degree - m * (m - 1) / 2 + n - (degree + 1))];
}

LocalFrame geodetic_frame(Position position, double height_m) {
  check_position(position);
  SHEET_CHECK(std::isfinite(height_m), "a height that is not a number");
  LocalFrame frame = frame_at(position);
  GeographicLib::Geocentric::WGS84().Forward(position.lat_deg, position.lon_deg, height_m, frame.place_m[0], frame.place_m[1], frame.place_m[2]);
  return frame;
}

LocalFrame spherical_frame(Position position, double radius_m) {
  check_position(position);
  SHEET_CHECK(std::isfinite(radius_m), "a radius that is not a number");
  LocalFrame frame = frame_at(position);
  for (std::size_t axis = 0; axis < 3; ++axis) frame.place_m[axis] = radius_m * frame.up[axis];
  return frame;
}

EarthVector harmonic_gradient(const HarmonicTable& table, const EarthVector& place_m, double radius_m) {
  const GeographicLib::SphericalHarmonic sum(table.cosines, table.sines, table.degree, radius_m, GeographicLib::SphericalHarmonic::SCHMIDT);
  EarthVector gradient = {};
  sum(place_m[0], place_m[1], place_m[2], gradient[0], gradient[1], gradient[2]);
  return gradient;
}

EarthVector harmonic_gradient(const HarmonicTable& table, const HarmonicTable& change, double times, const EarthVector& place_m, double radius_m) {
  SHEET_CHECK(change.degree <= table.degree, "a change of a higher degree than its table");
  const GeographicLib::SphericalHarmonic1 sum(table.cosines, table.sines, table.degree, change.cosines, change.sines, change.degree, radius_m,
                                              GeographicLib::SphericalHarmonic1::SCHMIDT);
  EarthVector gradient = {};
  sum(times, place_m[0], place_m[1], place_m[2], gradient[0], gradient[1], gradient[2]);
  return gradient;
}

}  // namespace fogsheet
