#include "core/compass/compass_check.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/compass/bearings_swung.h"

namespace fogsheet {

CompassCheck check_compass(std::span<const CheckedBearing> bearings, double reading_sd_deg) {
  SHEET_CHECK(!bearings.empty() && reading_sd_deg > 0, "a check has readings, and they have an error");
  CompassCheck check;
  const auto count = static_cast<double>(bearings.size());
  for (const CheckedBearing& bearing : bearings) {
    const Deviation deviation = deviation_of_bearing(bearing.trusted, bearing.read);
    if (!check.reciprocal && as_reciprocal(deviation)) check.reciprocal = check.deviations.size();
    check.deviations.push_back(deviation);
    check.mean_deg += deviation.deg / count;
    if (std::abs(deviation.deg) > std::abs(check.deviations[check.worst].deg)) check.worst = check.deviations.size() - 1;
  }
  double squares = 0, largest_about_mean_deg = 0;
  for (const Deviation& deviation : check.deviations) {
    const double off_deg = deviation.deg - check.mean_deg;
    squares += off_deg * off_deg;
    largest_about_mean_deg = std::max(largest_about_mean_deg, std::abs(off_deg));
  }
  if (bearings.size() > 1) check.spread_deg = std::sqrt(squares / (count - 1));

  check.mean_allowed_deg = 2 * reading_sd_deg / std::sqrt(count);
  check.single_allowed_deg = 3 * reading_sd_deg;
  const double worst_deg = std::abs(check.deviations[check.worst].deg);
  check.beyond_handbook = worst_deg > k_adjust_from_deg;
  if (bearings.size() < 2) check.verdict = CheckVerdict::too_few;
  else if (std::abs(check.mean_deg) <= check.mean_allowed_deg && worst_deg <= check.single_allowed_deg) check.verdict = CheckVerdict::agrees;
  else if (largest_about_mean_deg <= check.single_allowed_deg) check.verdict = CheckVerdict::constant;
  else check.verdict = CheckVerdict::by_heading;
  return check;
}

}  // namespace fogsheet
