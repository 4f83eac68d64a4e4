#include "core/compass/card_place.h"

#include <cmath>

#include "core/base/units.h"

namespace fogsheet {

CardAway card_away(const CardField& made, const CardField& here) {
  const auto down_over_horizontal = [](const CardField& field) { return std::tan(field.inclination_deg * k_degree_rad); };
  CardAway away;
  away.permanent_factor = made.horizontal_nt / here.horizontal_nt;
  const double there = down_over_horizontal(made);
  constexpr double k_no_dip = 1e-6;
  if (std::abs(there) > k_no_dip) away.soft_iron_factor = down_over_horizontal(here) / there;
  away.horizontal_far = std::abs(here.horizontal_nt - made.horizontal_nt) > k_card_horizontal_share * made.horizontal_nt;
  away.dip_far = std::abs(here.inclination_deg - made.inclination_deg) > k_card_dip_deg;
  away.other_hemisphere = away.dip_far && here.inclination_deg * made.inclination_deg < 0;
  return away;
}

}  // namespace fogsheet
