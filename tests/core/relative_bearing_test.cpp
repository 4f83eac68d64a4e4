#include "core/directions/relative_bearing.h"

#include "core/directions/circular_mean.h"
#include "core/directions/leeway.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("bearings from the ship's head") {
  // Common practice, no source.
  CHECK(relative_bearing_deg(TrueDirection(10), TrueDirection(350)) == 20);
  CHECK(relative_bearing_deg(TrueDirection(350), TrueDirection(10)) == 340);
  CHECK(angle_on_bow_deg(TrueDirection(350), TrueDirection(10)) == -20);
  CHECK(bearing_from_relative(CompassDirection(300), 90).deg() == 30);
  CHECK(bearing_from_relative(MagneticDirection(300), relative_bearing_deg(MagneticDirection(12), MagneticDirection(300))).deg() == 12);
}

TEST_CASE("leeway turns away from the wind") {
  // Source: USCG deck examination question bank, compass course questions, questions 4 and 8.
  CHECK(heading_for(TrueDirection(57), leeway_from_wind(TrueDirection(57), TrueDirection(337.5), 1)).deg() == 56);
  CHECK(water_track(TrueDirection(354), leeway_from_wind(TrueDirection(354), TrueDirection(45), 1)).deg() == 353);
  CHECK(leeway_from_wind(TrueDirection(90), TrueDirection(90), 5).deg == 0);
  CHECK(leeway_from_wind(TrueDirection(90), TrueDirection(270), 5).deg == 0);
}
