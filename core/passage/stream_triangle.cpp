#include "core/passage/stream_triangle.h"

#include <cmath>

namespace fogsheet {

Result<CourseToSteer> course_to_steer(TrueDirection track, double speed_kn, Stream stream) {
  if (!(speed_kn > 0)) return Problem{.fault = Fault::speed_not_positive, .numbers = {speed_kn}};
  const PlaneVector ahead = along(track), drift = velocity_kn(stream);
  const double across_kn = to_starboard(ahead, drift);
  const double left_kn = std::sqrt(std::max(0.0, (speed_kn - across_kn) * (speed_kn + across_kn)));  // what crabbing leaves of the speed
  const double over_ground_kn = dot(ahead, drift) + left_kn;
  // Parts in 10^12: a stream dead against the boat at her own speed leaves a last bit of way.
  if (std::abs(across_kn) > speed_kn || over_ground_kn <= 1e-12 * speed_kn)
    return Problem{.fault = Fault::stream_not_stemmed, .numbers = {speed_kn, least_speed_kn(track, stream)}};
  return CourseToSteer{.water_track = TrueDirection(track.deg() - std::atan2(across_kn, left_kn) / k_degree_rad),
                       .speed_over_ground_kn = over_ground_kn};
}

double least_speed_kn(TrueDirection track, Stream stream) {
  const PlaneVector ahead = along(track), drift = velocity_kn(stream);
  return dot(ahead, drift) > 0 ? std::abs(to_starboard(ahead, drift)) : stream.drift_kn;
}

Motion made_good(Motion through_water, Stream stream) { return motion_of(velocity_kn(through_water) + velocity_kn(stream)); }

Motion through_water_for(Motion over_ground, Stream stream) { return motion_of(velocity_kn(over_ground) - velocity_kn(stream)); }

Stream stream_between(Motion through_water, Motion over_ground) { return stream_of(velocity_kn(over_ground) - velocity_kn(through_water)); }

}  // namespace fogsheet
