// Speed, time and distance: any two give the third. Source: Bowditch, The American Practical Navigator (NGA Pub. 9), Table 19.
#pragma once

#include "core/base/instant.h"

namespace fogsheet {

/// Nautical miles. Faults: speed_not_positive; time_not_positive for less than no time.
Result<double> distance_run_nm(double speed_kn, double hours);

/// Knots. Faults: number_out_of_range for a negative distance; time_not_positive for no time or less.
Result<double> speed_needed_kn(double distance_nm, double hours);

/// Hours; no distance takes none. Faults: number_out_of_range for a negative distance, speed_not_positive.
Result<double> hours_taken(double distance_nm, double speed_kn);

/// The nearest second. Faults: those of hours_taken, and leg_takes_too_long past k_longest_run_hours.
Result<Instant> time_of_arrival(Instant start, double distance_nm, double speed_kn);

/// Ten years: within it a time of arrival stays within the calendar, whatever was typed.
inline constexpr double k_longest_run_hours = 87'660;

}  // namespace fogsheet
