// A deviation card has its place: what the boat's permanent magnetism does goes as 1 / H, what her vertical soft iron does as
// Z / H, and near the other side of the magnetic equator a card tuned for one dip drags.
// Source: Handbook of Magnetic Compass Adjustment (NGA 2004), on how deviation changes with latitude; the bounds are the design's.
#pragma once

#include "core/magnetic/field.h"

namespace fogsheet {

/// The field where a card was made.
struct CardField {
  double horizontal_nt = 0;
  double inclination_deg = 0;

  bool operator==(const CardField&) const = default;
};

inline constexpr double k_card_horizontal_share = 0.15;  // of the horizontal field there
inline constexpr double k_card_dip_deg = 10;

struct CardAway {
  double permanent_factor = 1;   // by which permanent parts of B and C have changed: H there / H here
  double soft_iron_factor = 1;   // by which their vertical soft iron parts have: (Z/H here) / (Z/H there); 1 where Z/H was nought
  bool horizontal_far = false;   // over k_card_horizontal_share: swing again
  bool dip_far = false;          // over k_card_dip_deg: swing again
  bool other_hemisphere = false;  // dip of the other sign, over k_card_dip_deg from it: the card may tilt and drag

  bool swing_again() const { return horizontal_far || dip_far; }
};

/// @param here the field where the card is to be used, H over 0
CardAway card_away(const CardField& made, const CardField& here);

}  // namespace fogsheet
