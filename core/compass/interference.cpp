#include "core/compass/interference.h"

#include <cmath>

namespace fogsheet {

std::vector<Pull> interference(std::span<const OnAndOff> trials, double reading_sd_deg) {
  const double bound_deg = 2 * std::sqrt(2.0) * reading_sd_deg;
  std::vector<Pull> pulls;
  for (const OnAndOff& trial : trials) {
    const double deg = reduce_difference_deg(trial.on.deg() - trial.off.deg());
    pulls.push_back({.deg = deg, .matters = std::abs(deg) > bound_deg});
  }
  return pulls;
}

}  // namespace fogsheet
