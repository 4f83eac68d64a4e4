#include "core/directions/deviation_card.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

DeviationCard card_of(std::vector<DeviationEntry> entries) { return *DeviationCard::make(std::move(entries)); }

DeviationEntry entry(double heading_deg, double deviation_deg) { return {CompassDirection(heading_deg), Deviation{deviation_deg}}; }

}  // namespace

TEST_CASE("entries are kept in order and refused when they make no card") {
  CHECK(card_of({entry(90, 1), entry(0, 2)}).entries().front().heading.deg() == 0);
  CHECK(DeviationCard::make({}).problem().fault == Fault::number_missing);
  CHECK(DeviationCard::make({entry(10, 1), entry(370, 2)}).problem() == Problem{.fault = Fault::card_heading_twice, .numbers = {10}});
  CHECK(DeviationCard::make({entry(10, 180)}).problem().fault == Fault::number_out_of_range);
  CHECK(DeviationCard::make({entry(10, std::nan(""))}).problem().fault == Fault::number_out_of_range);
}

TEST_CASE("straight lines between entries, round the circle, not over gaps") {
  const DeviationCard card = card_of({entry(30, 3), entry(60, 0), entry(340, -2)});
  CHECK(card.at(CompassDirection(45))->deg == doctest::Approx(1.5));
  CHECK(card.at(CompassDirection(5))->deg == doctest::Approx(0.5));
  CHECK(card.at(CompassDirection(355))->deg == doctest::Approx(-0.5));
  CHECK(card.at(CompassDirection(60))->deg == 0);
  CHECK(card.at(CompassDirection(340))->deg == -2);
  CHECK_FALSE(card.at(CompassDirection(200)));
  CHECK_FALSE(card_of({entry(10, 1)}).at(CompassDirection(11)));
  CHECK(card_of({entry(10, 1)}).at(CompassDirection(10))->deg == 1);
}

TEST_CASE("the nearest entry") {
  // Source: NAVEDTRA 14067 (US Navy Seaman), table 5-2 and text: for 017 the entry of 015.
  const DeviationCard card = card_of({entry(0, -14), entry(15, -10), entry(30, -5)});
  CHECK(card.nearest(CompassDirection(17)).deg == -10);
  CHECK(card.nearest(CompassDirection(350)).deg == -14);
  CHECK(card.nearest(CompassDirection(7.5)).deg == -10);
}

TEST_CASE("each compass heading that is a magnetic one is found once") {
  Random random(8);
  for (int i = 0; i < 20'000; ++i) {
    std::vector<DeviationEntry> entries;
    const double wildness_deg = random.uniform(0, 170);
    for (int heading = 0; heading < 360; heading += 30) entries.push_back(entry(heading, random.uniform(-wildness_deg, wildness_deg)));
    const DeviationCard card = card_of(entries);
    const MagneticDirection magnetic(random.uniform(0, 360));
    const std::vector<CompassDirection> found = card.compass_for(magnetic);
    for (const CompassDirection heading : found)
      CHECK(std::abs(reduce_difference_deg(to_magnetic(heading, *card.at(heading)).deg() - magnetic.deg())) <= 1e-9);
    // Counted by another way: how often heading + deviation passes the magnetic heading along a fine walk round.
    int passes = 0;
    double before = reduce_difference_deg(to_magnetic(CompassDirection(0), *card.at(CompassDirection(0))).deg() - magnetic.deg());
    for (int step = 1; step <= 3600; ++step) {
      const CompassDirection heading(step * 0.1);
      const double after = reduce_difference_deg(to_magnetic(heading, *card.at(heading)).deg() - magnetic.deg());
      if (std::abs(after - before) < 90 && (before < 0) != (after < 0)) ++passes;
      before = after;
    }
    CHECK(static_cast<int>(found.size()) == passes);
  }
}

TEST_CASE("a heading at an entry is found once, a stretch by both its ends") {
  const DeviationCard card = card_of({entry(0, 0), entry(90, 0), entry(180, 0), entry(270, 0)});
  CHECK(card.compass_for(MagneticDirection(90)) == std::vector<CompassDirection>{CompassDirection(90)});
  CHECK(card.compass_for(MagneticDirection(0)) == std::vector<CompassDirection>{CompassDirection(0)});
  const DeviationCard flat = card_of({entry(0, 0), entry(80, 10), entry(100, -10), entry(180, 0), entry(270, 0)});
  CHECK(flat.compass_for(MagneticDirection(90)) == std::vector<CompassDirection>{CompassDirection(80), CompassDirection(100)});
}
