// Geodesics and rhumb lines on WGS84.
#include "core/base/units.h"
#include "core/earth/geodesy.h"
#include "core/earth/rhumb.h"
#include "tests/values/kinds.h"

namespace fogsheet::values {

namespace {

Position first(const Inputs& in) { return {.lat_deg = in.number("lat1_deg"), .lon_deg = in.number("lon1_deg")}; }
Position second(const Inputs& in) { return {.lat_deg = in.number("lat2_deg"), .lon_deg = in.number("lon2_deg")}; }

Outputs geodesic_between(const Inputs& in) {
  const GeodesicLeg leg = geodesic_inverse(first(in), second(in));
  return {{"azi1_deg", in_full(leg.departure.deg())}, {"azi2_deg", in_full(leg.arrival.deg())}, {"s12_m", in_full(leg.distance_m)}};
}

Outputs geodesic_onwards(const Inputs& in) {
  const GeodesicEnd end = geodesic_direct(first(in), TrueDirection(in.number("azi1_deg")), in.number("s12_m"));
  return {{"lat2_deg", in_full(end.position.lat_deg)}, {"lon2_deg", in_full(end.position.lon_deg)}, {"azi2_deg", in_full(end.arrival.deg())}};
}

Outputs rhumb_between(const Inputs& in) {
  const RhumbLeg leg = rhumb_inverse(first(in), second(in));
  return {{"course_deg", in_full(leg.course.deg())},
          {"distance_m", in_full(leg.distance_nm * k_metres_per_nm)},
          {"distance_nm", in_full(leg.distance_nm)}};
}

}  // namespace

KindTable earth_kinds() { return {{"geodesic-inverse", geodesic_between}, {"geodesic-direct", geodesic_onwards}, {"rhumb", rhumb_between}}; }

}  // namespace fogsheet::values
