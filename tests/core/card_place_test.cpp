#include "core/compass/card_place.h"

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("a card used far from where it was made says so") {
  const CardField made{.horizontal_nt = 20000, .inclination_deg = 65};
  CHECK_FALSE(card_away(made, made).swing_again());
  CHECK(card_away(made, made).permanent_factor == 1);
  CHECK(card_away(made, made).soft_iron_factor == 1);
  CHECK_FALSE(card_away(made, {.horizontal_nt = 22900, .inclination_deg = 60}).swing_again());
  CHECK(card_away(made, {.horizontal_nt = 23100, .inclination_deg = 60}).horizontal_far);
  CHECK(card_away(made, {.horizontal_nt = 16900, .inclination_deg = 60}).horizontal_far);
  CHECK(card_away(made, {.horizontal_nt = 20000, .inclination_deg = 54}).dip_far);
  const CardAway south = card_away(made, {.horizontal_nt = 20000, .inclination_deg = -50});
  CHECK(south.other_hemisphere);
  CHECK(south.soft_iron_factor < 0);  // it pulls the other way
  CHECK(card_away(made, {.horizontal_nt = 40000, .inclination_deg = 0}).permanent_factor == doctest::Approx(0.5));
  CHECK_FALSE(card_away({.horizontal_nt = 30000, .inclination_deg = 4}, {.horizontal_nt = 30000, .inclination_deg = -4}).other_hemisphere);
}
