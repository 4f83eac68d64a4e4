#include "core/earth/sailings.h"

#include <cmath>

#include "core/base/units.h"
#include "core/earth/mercator.h"

namespace fogsheet {

namespace {

constexpr double k_arcmin_per_degree = 60;
constexpr double k_nearly_nought = 1e-9;  // of a cosine: within 1e-7 deg of east or west

double cos_deg(double deg) { return std::cos(deg * k_degree_rad); }
double sin_deg(double deg) { return std::sin(deg * k_degree_rad); }

Result<double> latitude_after(Position from, PlaneRun run) {
  const double lat_deg = from.lat_deg + run.dlat_arcmin / k_arcmin_per_degree;
  if (!(std::abs(lat_deg) < 90)) return Problem{.fault = Fault::latitude_out_of_range, .numbers = {lat_deg, 90}};
  return lat_deg;
}

}  // namespace

PlaneRun plane_run(CourseDistance leg) {
  return {.dlat_arcmin = leg.distance_nm * cos_deg(leg.course.deg()), .departure_nm = leg.distance_nm * sin_deg(leg.course.deg())};
}

CourseDistance plane_course(PlaneRun run) {
  return {.course = TrueDirection(std::atan2(run.departure_nm, run.dlat_arcmin) / k_degree_rad),
          .distance_nm = std::hypot(run.dlat_arcmin, run.departure_nm)};
}

Result<double> plane_distance_nm(double lat1_deg, double lat2_deg, TrueDirection course) {
  const double dlat_arcmin = (lat2_deg - lat1_deg) * k_arcmin_per_degree;
  const double along_meridian = cos_deg(course.deg());
  if (std::abs(along_meridian) < k_nearly_nought || dlat_arcmin * along_meridian < 0)
    return Problem{.fault = Fault::course_never_there, .numbers = {course.deg(), lat2_deg}};
  return dlat_arcmin / along_meridian;
}

PlaneRun traverse(std::span<const CourseDistance> legs) {
  PlaneRun sum;
  for (const CourseDistance& leg : legs) {
    const PlaneRun run = plane_run(leg);
    sum.dlat_arcmin += run.dlat_arcmin;
    sum.departure_nm += run.departure_nm;
  }
  return sum;
}

double parallel_departure_nm(double lat_deg, double dlon_arcmin) { return dlon_arcmin * cos_deg(lat_deg); }

double parallel_dlon_arcmin(double lat_deg, double departure_nm) { return departure_nm / cos_deg(lat_deg); }

Result<double> parallel_latitude_deg(double departure_nm, double dlon_arcmin) {
  const double ratio = departure_nm / dlon_arcmin;
  if (!(ratio >= 0 && ratio <= 1))
    return Problem{.fault = Fault::number_out_of_range, .texts = {"departure"}, .numbers = {departure_nm, 0, dlon_arcmin}};
  return std::acos(ratio) / k_degree_rad;
}

double dlon_arcmin(double lon1_deg, double lon2_deg) {
  const double dlon_deg = reduce_difference_deg(lon2_deg - lon1_deg);
  return (dlon_deg == -180 ? 180 : dlon_deg) * k_arcmin_per_degree;
}

double parallel_longitude_deg(double lat_deg, double lon1_deg, double departure_nm) {
  return reduce_longitude_deg(lon1_deg + parallel_dlon_arcmin(lat_deg, departure_nm) / k_arcmin_per_degree);
}

Result<Position> mid_latitude_position(Position from, CourseDistance leg) {
  const PlaneRun run = plane_run(leg);
  const Result<double> lat_deg = latitude_after(from, run);
  if (!lat_deg.ok()) return lat_deg.problem();
  const double middle_deg = (from.lat_deg + *lat_deg) / 2;
  return Position{.lat_deg = *lat_deg, .lon_deg = parallel_longitude_deg(middle_deg, from.lon_deg, run.departure_nm)};
}

CourseDistance mid_latitude_course(Position from, Position to) {
  const double middle_deg = (from.lat_deg + to.lat_deg) / 2;
  return plane_course({.dlat_arcmin = (to.lat_deg - from.lat_deg) * k_arcmin_per_degree,
                       .departure_nm = parallel_departure_nm(middle_deg, dlon_arcmin(from.lon_deg, to.lon_deg))});
}

CourseDistance mercator_course(Position from, Position to) {
  const double dlat_arcmin = (to.lat_deg - from.lat_deg) * k_arcmin_per_degree;
  const double dlon = dlon_arcmin(from.lon_deg, to.lon_deg);
  const double parts = meridional_parts_arcmin(to.lat_deg) - meridional_parts_arcmin(from.lat_deg);
  const TrueDirection course(std::atan2(dlon, parts) / k_degree_rad);
  const double along_meridian = cos_deg(course.deg());
  if (std::abs(along_meridian) < k_nearly_nought) {
    const double middle_deg = (from.lat_deg + to.lat_deg) / 2;
    return {.course = course, .distance_nm = std::abs(parallel_departure_nm(middle_deg, dlon))};
  }
  return {.course = course, .distance_nm = std::abs(dlat_arcmin / along_meridian)};
}

Result<Position> mercator_position(Position from, CourseDistance leg) {
  const PlaneRun run = plane_run(leg);
  const Result<double> lat_deg = latitude_after(from, run);
  if (!lat_deg.ok()) return lat_deg.problem();
  const double along_meridian = cos_deg(leg.course.deg());
  if (std::abs(along_meridian) < k_nearly_nought)
    return Position{.lat_deg = *lat_deg, .lon_deg = parallel_longitude_deg(from.lat_deg, from.lon_deg, run.departure_nm)};
  const double parts = meridional_parts_arcmin(*lat_deg) - meridional_parts_arcmin(from.lat_deg);
  const double dlon = parts * sin_deg(leg.course.deg()) / along_meridian;
  return Position{.lat_deg = *lat_deg, .lon_deg = reduce_longitude_deg(from.lon_deg + dlon / k_arcmin_per_degree)};
}

}  // namespace fogsheet
