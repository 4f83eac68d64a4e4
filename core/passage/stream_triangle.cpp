#include "core/passage/stream_triangle.h"

#include <algorithm>
#include <cmath>

namespace fogsheet {

LineTriangle line_triangle(PlaneVector ahead, double speed_kn, PlaneVector stream_kn) {
  LineTriangle found{.across_kn = to_starboard(ahead, stream_kn)};
  found.left_kn = std::sqrt(std::max(0.0, (speed_kn - found.across_kn) * (speed_kn + found.across_kn)));
  found.speed_over_ground_kn = dot(ahead, stream_kn) + found.left_kn;
  // Parts in 10^12: a stream dead against the boat at her own speed leaves a last bit of way.
  found.stemmed = std::abs(found.across_kn) <= speed_kn && found.speed_over_ground_kn > 1e-12 * speed_kn;
  return found;
}

double crab_deg(const LineTriangle& triangle) { return -std::atan2(triangle.across_kn, triangle.left_kn) / k_degree_rad; }

Result<CourseToSteer> course_to_steer(TrueDirection track, double speed_kn, Stream stream) {
  if (!(speed_kn > 0)) return Problem{.fault = Fault::speed_not_positive, .numbers = {speed_kn}};
  const LineTriangle found = line_triangle(along(track), speed_kn, velocity_kn(stream));
  if (!found.stemmed) return Problem{.fault = Fault::stream_not_stemmed, .numbers = {speed_kn, least_speed_kn(track, stream)}};
  return CourseToSteer{.water_track = TrueDirection(track.deg() + crab_deg(found)), .speed_over_ground_kn = found.speed_over_ground_kn};
}

double least_speed_kn(TrueDirection track, Stream stream) { return least_speed_kn(along(track), velocity_kn(stream)); }

double least_speed_kn(PlaneVector ahead, PlaneVector stream_kn) {
  return dot(ahead, stream_kn) > 0 ? std::abs(to_starboard(ahead, stream_kn)) : length_of(stream_kn);
}

Motion made_good(Motion through_water, Stream stream) { return motion_of(velocity_kn(through_water) + velocity_kn(stream)); }

Motion through_water_for(Motion over_ground, Stream stream) { return motion_of(velocity_kn(over_ground) - velocity_kn(stream)); }

Stream stream_between(Motion through_water, Motion over_ground) { return stream_of(velocity_kn(over_ground) - velocity_kn(through_water)); }

}  // namespace fogsheet
