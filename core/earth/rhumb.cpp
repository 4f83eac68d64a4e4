#include "core/earth/rhumb.h"

#include <cmath>

#include "core/base/units.h"
#include "core/earth/geodesy.h"

namespace fogsheet {

RhumbLeg rhumb_inverse(Position from, Position to) {
  double dlon_deg = reduce_difference_deg(to.lon_deg - from.lon_deg);
  if (dlon_deg == -180) dlon_deg = 180;
  const RhumbCourse course = rhumb_course(from.lat_deg, to.lat_deg, dlon_deg);
  return {.course = TrueDirection(course.course_deg), .distance_nm = course.distance_m / k_metres_per_nm};
}

Result<Position> rhumb_direct(Position from, TrueDirection course, double distance_nm) {
  if (!std::isfinite(distance_nm)) return Problem{.fault = Fault::number_missing, .texts = {"distance"}};
  const std::optional<Position> end = rhumb_end(from, course.deg(), distance_nm * k_metres_per_nm);
  if (!end) {
    const bool northward = (std::cos(course.deg() * k_degree_rad) > 0) == (distance_nm > 0);
    return Problem{.fault = Fault::latitude_out_of_range, .numbers = {northward ? 90.0 : -90.0, 90.0}};
  }
  return *end;
}

}  // namespace fogsheet
