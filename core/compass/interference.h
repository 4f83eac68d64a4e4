// A trial of what is carried near the compass: on one heading, with each suspect thing on and off (radio, telephone, tools,
// wipers), what the compass reads.
#pragma once

#include <span>
#include <vector>

#include "core/directions/directions.h"

namespace fogsheet {

struct OnAndOff {
  CompassDirection off;
  CompassDirection on;
};

struct Pull {
  double deg = 0;        // on less off, [-180, 180): positive turns the card's reading up
  bool matters = false;  // over what two readings differ by anyhow
};

/// One for each pair. It matters from two standard deviations of a difference of two readings on (2 sqrt 2 sd).
/// @param reading_sd_deg of one reading, over 0
std::vector<Pull> interference(std::span<const OnAndOff> trials, double reading_sd_deg);

}  // namespace fogsheet
