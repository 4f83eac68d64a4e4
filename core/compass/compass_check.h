// Checking a compass against bearings that can be trusted: what it reads with the boat pointed at each, beside what it ought to.
// The rule is a plain one, that can be said in a line: it agrees while the mean deviation is under two of its own standard
// errors and no single one is over three standard deviations of a reading; failing that, one constant explains it while no
// reading is further than three standard deviations from the mean; else it goes by heading.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/directions/directions.h"

namespace fogsheet {

struct CheckedBearing {
  MagneticDirection trusted;   // to the landmark
  CompassDirection read;       // with the boat pointed at it: the heading as well
};

enum class CheckVerdict {
  too_few,   // one reading tells of one heading only
  agrees,
  constant,  // one correction for all headings: the lubber line, or a wrong variation
  by_heading  // swing, adjust or allow for it
};

struct CompassCheck {
  std::vector<Deviation> deviations;  // in the order of the bearings
  double mean_deg = 0;
  double spread_deg = 0;           // one sigma of a deviation about the mean, from n - 1; 0 for one
  std::size_t worst = 0;           // index of the largest deviation
  double mean_allowed_deg = 0;     // the rule's bounds: of the mean,
  double single_allowed_deg = 0;   // of one reading, and of one about the mean
  CheckVerdict verdict = CheckVerdict::too_few;
  bool beyond_handbook = false;    // a deviation over k_adjust_from_deg: have it adjusted
  std::optional<std::size_t> reciprocal;  // a reading that fits when it is turned by 180 degrees
};

/// From this much on, handbooks for small craft say: look for the cause, have the compass adjusted.
/// Source: advice for small craft, "When do vessels need their compasses adjusted"; Coastal Navigation Course, ch. VII.
inline constexpr double k_adjust_from_deg = 5;

/// @param bearings at least one. @param reading_sd_deg one sigma of one reading, over 0
CompassCheck check_compass(std::span<const CheckedBearing> bearings, double reading_sd_deg);

}  // namespace fogsheet
