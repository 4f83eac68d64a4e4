#include "core/directions/rounding.h"

#include <cmath>

#include "core/directions/directions.h"

namespace fogsheet {

namespace {

// Sums of decimals miss their half by the last bits (47.3 - 12.8 - 34.5 is not 0). What is this near to a half counts as
// one, so that the figure shown is the one found by hand and the same in every build.
constexpr double k_half_reach = 1e-9;

int units_per_degree(Rounding rounding) { return rounding == Rounding::tenths ? 10 : 1; }

double halves_up(double value) { return std::floor(value + 0.5 + k_half_reach); }

}  // namespace

double round_direction_deg(double deg, Rounding rounding) {
  const int units = units_per_degree(rounding);
  return reduce_direction_deg(halves_up(reduce_direction_deg(deg) * units) / units);
}

double round_correction_deg(double deg, Rounding rounding) {
  const int units = units_per_degree(rounding);
  const double size = halves_up(std::abs(deg) * units) / units;
  return deg < 0 && size > 0 ? -size : size;
}

bool rounding_moved_far(double shown_deg, double exact_deg) {
  return std::abs(reduce_difference_deg(shown_deg - exact_deg)) >= k_tenths_shown_from_deg - k_half_reach;
}

}  // namespace fogsheet
