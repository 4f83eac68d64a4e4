#include "core/earth/geodesy.h"

#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/Rhumb.hpp>
#include <cmath>

namespace fogsheet {

namespace {

// Calls of the library that may throw go through here. None of them does for what core passes; if one does, that is our
// mistake.
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

}  // namespace fogsheet
