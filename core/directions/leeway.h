// Leeway: the angle between the heading and the track through the water, always turned away from the wind.
#pragma once

#include "core/directions/directions.h"

namespace fogsheet {

/// Water track seen from the heading, positive to starboard (wind from port).
struct Leeway {
  double deg = 0;
  bool operator==(const Leeway&) const = default;
};

/// Leeway of that size for a boat on that heading or water track, with the wind from there. Wind from right ahead or right
/// astern turns nothing. @param angle_deg the size, at least 0. Source: USCG deck examination questions.
Leeway leeway_from_wind(TrueDirection along, TrueDirection wind_from, double angle_deg);

/// water track = heading + leeway, and back: turned towards the wind to make the track good.
TrueDirection water_track(TrueDirection heading, Leeway leeway);
TrueDirection heading_for(TrueDirection water_track, Leeway leeway);

}  // namespace fogsheet
