#include "core/directions/leeway.h"

namespace fogsheet {

Leeway leeway_from_wind(TrueDirection along, TrueDirection wind_from, double angle_deg) {
  const double wind_on_bow_deg = reduce_difference_deg(wind_from.deg() - along.deg());
  if (wind_on_bow_deg == 0 || wind_on_bow_deg == -180) return {};
  return {.deg = wind_on_bow_deg > 0 ? -angle_deg : angle_deg};
}

TrueDirection water_track(TrueDirection heading, Leeway leeway) { return TrueDirection(heading.deg() + leeway.deg); }

TrueDirection heading_for(TrueDirection water_track, Leeway leeway) { return TrueDirection(water_track.deg() - leeway.deg); }

}  // namespace fogsheet
