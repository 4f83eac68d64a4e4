#include "core/compass/compass_check.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/compass/bearings_swung.h"
#include "core/directions/circular_mean.h"

namespace fogsheet {
namespace {

/// The mean of angles that may lie to both sides of 180 degrees: of how far each is from about their middle.
double mean_of(const std::vector<Deviation>& deviations) {
  std::vector<double> all_deg;
  for (const Deviation& deviation : deviations) all_deg.push_back(deviation.deg);
  const std::optional<CircularMean> about = circular_mean(all_deg);
  const double middle_deg = about ? about->mean_deg : 0;
  double off_deg = 0;
  for (const double deg : all_deg) off_deg += reduce_difference_deg(deg - middle_deg) / static_cast<double>(all_deg.size());
  return reduce_difference_deg(middle_deg + off_deg);
}

}  // namespace

CompassCheck check_compass(std::span<const CheckedBearing> bearings, double reading_sd_deg) {
  SHEET_CHECK(!bearings.empty() && reading_sd_deg > 0, "a check has readings, and they have an error");
  CompassCheck check;
  const auto count = static_cast<double>(bearings.size());
  for (const CheckedBearing& bearing : bearings) {
    const Deviation deviation = deviation_between(bearing.trusted, bearing.read);
    if (!check.reciprocal && as_reciprocal(deviation)) check.reciprocal = check.deviations.size();
    check.deviations.push_back(deviation);
    if (std::abs(deviation.deg) > std::abs(check.deviations[check.worst].deg)) check.worst = check.deviations.size() - 1;
  }
  check.mean_deg = mean_of(check.deviations);
  double squares = 0, largest_about_mean_deg = 0;
  for (const Deviation& deviation : check.deviations) {
    const double off_deg = reduce_difference_deg(deviation.deg - check.mean_deg);
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
