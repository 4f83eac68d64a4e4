#include "core/compass/interference.h"

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("what is switched on matters when the compass moves by more than two readings differ anyhow") {
  const std::vector<OnAndOff> trials = {{CompassDirection(359), CompassDirection(4)}, {CompassDirection(10), CompassDirection(9)}};
  const std::vector<Pull> pulls = interference(trials, 1);
  CHECK(pulls[0].deg == 5);
  CHECK(pulls[0].matters);
  CHECK(pulls[1].deg == -1);
  CHECK_FALSE(pulls[1].matters);
}
