#include "core/passage/pass_mark.h"

#include <cmath>

#include "core/base/units.h"

namespace fogsheet {

Result<Passing> pass_at_distance(TrueDirection bearing, double distance_nm, double abeam_nm, Side side) {
  constexpr double k_farthest_nm = 100;
  for (const double given : {distance_nm, abeam_nm})
    if (!(given >= 0 && given <= k_farthest_nm))
      return Problem{.fault = Fault::number_out_of_range, .texts = {"distance"}, .numbers = {given, 0, k_farthest_nm}};
  if (abeam_nm > distance_nm) return Problem{.fault = Fault::mark_too_near, .numbers = {abeam_nm, distance_nm}};
  const double run_nm = std::sqrt((distance_nm - abeam_nm) * (distance_nm + abeam_nm));
  const double turn_deg = std::atan2(abeam_nm, run_nm) / k_degree_rad;  // a mark left to port is turned away from to starboard
  return Passing{.course = TrueDirection(bearing.deg() + (side == Side::port ? turn_deg : -turn_deg)), .run_nm = run_nm};
}

}  // namespace fogsheet
