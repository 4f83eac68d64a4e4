// The sailings, meridional parts and the length of a degree.
#include "core/base/number_text.h"
#include "core/base/units.h"
#include "core/earth/mercator.h"
#include "core/earth/sailings.h"
#include "tests/values/kinds.h"

namespace fogsheet::values {

namespace {

CourseDistance leg(const Inputs& in) { return {.course = TrueDirection(in.number("course_true_deg")), .distance_nm = in.number("distance_nm")}; }

Position place(const Inputs& in, const char* number) {
  return {.lat_deg = in.number(std::string("lat") + number + "_deg"), .lon_deg = in.number(std::string("lon") + number + "_deg")};
}

Outputs course_outputs(CourseDistance found) {
  return {{"course_true_deg", in_full(found.course.deg())}, {"distance_nm", in_full(found.distance_nm)}};
}

Outputs run_outputs(PlaneRun run) { return {{"dlat_arcmin", in_full(run.dlat_arcmin)}, {"departure_nm", in_full(run.departure_nm)}}; }

Outputs position_outputs(const Result<Position>& found) {
  if (!found.ok()) return {{"lat2_deg", "none"}, {"lon2_deg", "none"}};
  return {{"lat2_deg", in_full(found->lat_deg)}, {"lon2_deg", in_full(found->lon_deg)}};
}

std::string or_none(const Result<double>& found) { return found.ok() ? in_full(*found) : "none"; }

Outputs plane_dlat_departure(const Inputs& in) { return run_outputs(plane_run(leg(in))); }

Outputs plane_course_distance(const Inputs& in) {
  return course_outputs(plane_course({.dlat_arcmin = in.number("dlat_arcmin"), .departure_nm = in.number("departure_nm")}));
}

Outputs plane_distance_from_latitudes(const Inputs& in) {
  const TrueDirection course(in.number("course_true_deg"));
  return {{"distance_nm", or_none(plane_distance_nm(in.number("lat1_deg"), in.number("lat2_deg"), course))}};
}

// Legs are course/distance, parted by blanks.
Outputs traverse_of_legs(const Inputs& in) {
  const std::string& text = in.text("legs_course_true_deg_distance_nm");
  std::vector<CourseDistance> legs;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::size_t slash = text.find('/', at);
    if (end > at) {
      const auto course = slash < end ? parse_number(text.substr(at, slash - at)) : std::nullopt;
      const auto distance = slash < end ? parse_number(text.substr(slash + 1, end - slash - 1)) : std::nullopt;
      if (!course || !distance) throw RowError{"a leg that is not course/distance"};
      legs.push_back({.course = TrueDirection(*course), .distance_nm = *distance});
    }
    at = end + 1;
  }
  const PlaneRun run = traverse(legs);
  Outputs outputs = run_outputs(run);
  outputs.merge(course_outputs(plane_course(run)));
  return outputs;
}

Outputs parallel_departure(const Inputs& in) {
  return {{"departure_nm", in_full(parallel_departure_nm(in.number("lat_deg"), in.number("dlon_arcmin")))}};
}

Outputs parallel_latitude(const Inputs& in) {
  return {{"lat_deg", or_none(parallel_latitude_deg(in.number("departure_nm"), in.number("dlon_arcmin")))}};
}

Outputs parallel_departure_between(const Inputs& in) {
  const double dlon = dlon_arcmin(in.number("lon1_deg"), in.number("lon2_deg"));
  return {{"dlon_arcmin", in_full(dlon)}, {"departure_nm", in_full(parallel_departure_nm(in.number("lat_deg"), dlon))}};
}

Outputs parallel_dlon(const Inputs& in) { return {{"dlon_arcmin", in_full(parallel_dlon_arcmin(in.number("lat_deg"), in.number("departure_nm")))}}; }

Outputs parallel_longitude(const Inputs& in) {
  return {{"lon2_deg", in_full(parallel_longitude_deg(in.number("lat_deg"), in.number("lon1_deg"), in.number("departure_nm")))}};
}

Outputs mid_latitude_end(const Inputs& in) { return position_outputs(mid_latitude_position(place(in, "1"), leg(in))); }

Outputs mid_latitude_course_distance(const Inputs& in) { return course_outputs(mid_latitude_course(place(in, "1"), place(in, "2"))); }

Outputs mercator_course_distance(const Inputs& in) { return course_outputs(mercator_course(place(in, "1"), place(in, "2"))); }

Outputs mercator_end(const Inputs& in) { return position_outputs(mercator_position(place(in, "1"), leg(in))); }

Outputs meridional_parts(const Inputs& in) { return {{"meridional_parts_arcmin", in_full(meridional_parts_arcmin(in.number("lat_deg")))}}; }

Outputs degree_length(const Inputs& in) {
  const double lat_deg = in.number("lat_deg");
  const double latitude_m = meridian_arc_m(lat_deg - 0.5, lat_deg + 0.5);
  const double longitude_m = 60 * longitude_minute_m(lat_deg);
  return {{"latitude_degree_m", in_full(latitude_m)},
          {"longitude_degree_m", in_full(longitude_m)},
          {"latitude_degree_nm", in_full(latitude_m / k_metres_per_nm)},
          {"longitude_degree_nm", in_full(longitude_m / k_metres_per_nm)}};
}

}  // namespace

KindTable sailing_kinds() {
  return {{"plane-dlat-departure", plane_dlat_departure},
          {"plane-course-distance", plane_course_distance},
          {"plane-distance-from-latitudes", plane_distance_from_latitudes},
          {"traverse", traverse_of_legs},
          {"parallel-departure", parallel_departure},
          {"parallel-latitude", parallel_latitude},
          {"parallel-departure-between", parallel_departure_between},
          {"parallel-dlon", parallel_dlon},
          {"parallel-longitude", parallel_longitude},
          {"mid-latitude-position", mid_latitude_end},
          {"mid-latitude-course-distance", mid_latitude_course_distance},
          {"mercator-course-distance", mercator_course_distance},
          {"mercator-longitude", mercator_end},
          {"mercator-position", mercator_end},
          {"meridional-parts-printed", meridional_parts},
          {"meridional-parts", meridional_parts},
          {"degree-length", degree_length},
          {"degree-length-printed", degree_length}};
}

}  // namespace fogsheet::values
