#include "core/directions/chain.h"

#include <cmath>
#include <string>
#include <utility>

#include "core/base/random.h"
#include "core/directions/direction_text.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("true to magnetic as rows that add up") {
  // 100 T with 3 W is 103 M: common practice, no source.
  const Chain chain = chain_from_true(TrueDirection(100), Variation{-3}, Rounding::whole_degrees);
  REQUIRE(chain.rows.size() == 3);
  CHECK(chain.rows[0].term == ChainTerm::true_direction);
  CHECK(chain.rows[1].term == ChainTerm::variation);
  CHECK(chain.rows[1].shown_deg == -3);
  CHECK(chain.rows[1].applied_sign == 1);  // west: the compass reads more, add
  CHECK(chain.rows[2].term == ChainTerm::magnetic_direction);
  CHECK(chain.rows[2].shown_deg == 103);
  CHECK_FALSE(chain.rows[2].by_tenths_deg);
  CHECK_FALSE(chain.deviation_entered);
}

TEST_CASE("magnetic to true takes west away") {
  const Chain chain = chain_from_magnetic(MagneticDirection(2), Variation{-3}, Rounding::whole_degrees);
  CHECK(chain.rows[1].applied_sign == -1);
  CHECK(chain.rows[2].term == ChainTerm::true_direction);
  CHECK(chain.rows[2].shown_deg == 359);
}

TEST_CASE("a variation that rounds to nought is not applied") {
  const Chain chain = chain_from_true(TrueDirection(100.4), Variation{0.4}, Rounding::whole_degrees);
  CHECK(chain.rows[1].applied_sign == 0);
  CHECK(chain.rows[2].shown_deg == 100);
}

TEST_CASE("the value by tenths stands there from three quarters of a degree on") {
  // 47.5 T with 5.4 W: 048 + 5 = 053 shown, 052.9 exact.
  CHECK_FALSE(chain_from_true(TrueDirection(47.5), Variation{-5.4}, Rounding::whole_degrees).rows[2].by_tenths_deg);
  // 47.5 T with 5.25 E: 048 - 5 = 043 shown, 042.25 exact: moved by just 0.75. By tenths 47.5 - 5.3 = 42.2.
  const ChainRow row = chain_from_true(TrueDirection(47.5), Variation{5.25}, Rounding::whole_degrees).rows[2];
  CHECK(row.shown_deg == 43);
  CHECK(row.exact_deg == 42.25);
  REQUIRE(row.by_tenths_deg);
  CHECK(*row.by_tenths_deg == 42.2);
}

TEST_CASE("by tenths the sum adds up to the tenth") {
  const Chain chain = chain_from_true(TrueDirection(0.04), Variation{0.25}, Rounding::tenths);
  CHECK(chain.rows[0].shown_deg == 0);
  CHECK(chain.rows[1].shown_deg == 0.3);
  CHECK(chain.rows[2].shown_deg == 359.7);
}

namespace {

// Source: Handbook of Magnetic Compass Adjustment (NGA, 2004; formerly Pub. 226), chapter V, article 501.
DeviationCard handbook_card() {
  std::vector<DeviationEntry> entries;
  for (const auto& [heading_deg, deviation_deg] :
       {std::pair(0.0, 10.5), {45.0, 20.0}, {90.0, 11.5}, {135.0, -1.2}, {180.0, -5.5}, {225.0, -8.0}, {270.0, -12.5}, {315.0, -6.8}})
    entries.push_back({CompassDirection(heading_deg), Deviation{deviation_deg}});
  return *DeviationCard::make(entries);
}

// A card whose deviation falls by 30 degrees within 15: three compass headings are one magnetic heading there.
DeviationCard unusable_card() {
  std::vector<DeviationEntry> entries;
  for (int heading = 0; heading < 360; heading += 15)
    entries.push_back({CompassDirection(heading), Deviation{heading == 90 ? 15.0 : heading == 105 ? -15.0 : 0.0}});
  return *DeviationCard::make(entries);
}

double figures(const std::string& printed) { return parse_direction(printed)->deg; }

// As a reader adds up what stands on screen: figures and signs read back from the text.
void check_adds_up(const Chain& chain, Rounding rounding) {
  double sum_deg = figures(print_direction(chain.rows[0].shown_deg, std::nullopt, rounding));
  for (std::size_t i = 1; i + 1 < chain.rows.size(); i += 2) {
    const ChainRow& correction = chain.rows[i];
    const ChainRow& direction = chain.rows[i + 1];
    const double size_deg = std::abs(*parse_correction_deg("variation", print_correction(correction.shown_deg, rounding)));
    sum_deg += correction.applied_sign * size_deg;
    const double shown_deg = figures(print_direction(direction.shown_deg, std::nullopt, rounding));
    CHECK(std::abs(reduce_difference_deg(sum_deg - shown_deg)) <= 1e-9);
    CHECK((correction.applied_sign == 0) == (size_deg == 0));
    const double off_deg = std::abs(reduce_difference_deg(shown_deg - direction.exact_deg));
    CHECK(off_deg <= (rounding == Rounding::tenths ? 0.05 : 0.5) * static_cast<double>(i + 3) / 2 + 1e-9);
    if (rounding == Rounding::whole_degrees && std::abs(off_deg - 0.75) > 1e-9) CHECK(direction.by_tenths_deg.has_value() == (off_deg > 0.75));
    sum_deg = shown_deg;
  }
}

}  // namespace

TEST_CASE("true to compass through a card: the deviation is the one for the compass heading") {
  // Source: the card's own inverse by bisection, reference kind compass-from-magnetic: magnetic 070 is compass 051.1644.
  const DeviationCard card = handbook_card();
  const Chain chain = chain_to_compass(TrueDirection(75), {.variation = Variation{5}, .card = &card}, Rounding::whole_degrees);
  REQUIRE(chain.rows.size() == 5);
  CHECK(chain.deviation == DeviationAnswer::one);
  CHECK(chain.deviation_entered);
  CHECK(std::abs(chain.rows[4].exact_deg - 51.1644) <= 1e-3);
  CHECK(chain.rows[3].shown_deg == 19);
  CHECK(chain.rows[4].shown_deg == 51);
}

TEST_CASE("one heading each way, whatever it begins with") {
  // Source: USCG deck examination question bank, compass course questions, question 1: track 236, wind SSE, leeway 1,
  // variation 8 E, deviation 1 E: steer 226 per standard compass.
  const Leeway leeway = leeway_from_wind(TrueDirection(236), TrueDirection(157.5), 1);
  const Chain down =
      chain_to_compass(TrueDirection(236), {.leeway = leeway, .variation = Variation{8}, .deviation = Deviation{1}}, Rounding::whole_degrees);
  REQUIRE(down.rows.size() == 7);
  CHECK(down.rows[0].term == ChainTerm::water_track);
  CHECK(down.rows[2].shown_deg == 235);
  CHECK(down.rows[6].term == ChainTerm::compass_direction);
  CHECK(down.rows[6].shown_deg == 226);

  const Chain up = chain_from_compass(
      CompassDirection(226), {.stream_deg = -12, .leeway = leeway, .variation = Variation{8}, .deviation = Deviation{1}}, Rounding::whole_degrees);
  REQUIRE(up.rows.size() == 9);
  CHECK(row_of(up, ChainTerm::water_track)->shown_deg == 236);
  CHECK(up.rows[8].term == ChainTerm::ground_track);
  CHECK(up.rows[8].shown_deg == 224);

  const Chain streamed = chain_to_compass(TrueDirection(224), {.stream_deg = -12, .variation = Variation{8}}, Rounding::whole_degrees);
  CHECK(streamed.rows[0].term == ChainTerm::ground_track);
  CHECK(streamed.rows[2].term == ChainTerm::true_direction);
  CHECK(streamed.rows[2].shown_deg == 236);
  CHECK(streamed.rows[1].applied_sign == 1);

  const Chain magnetic = chain_to_compass(MagneticDirection(0), {.deviation = Deviation{-3}}, Rounding::whole_degrees);
  REQUIRE(magnetic.rows.size() == 3);
  CHECK(magnetic.rows[2].shown_deg == 3);
}

TEST_CASE("a card with several answers gives none, and the candidates") {
  const DeviationCard card = unusable_card();
  const Chain chain = chain_to_compass(MagneticDirection(97.5), {.card = &card}, Rounding::whole_degrees);
  CHECK(chain.deviation == DeviationAnswer::several);
  CHECK(chain.rows.size() == 1);
  REQUIRE(chain.candidates.size() == 3);
  for (const CompassDirection candidate : chain.candidates) CHECK(std::abs(to_magnetic(candidate, *card.at(candidate)).deg() - 97.5) <= 1e-9);
}

TEST_CASE("a gap in the card has no answer") {
  const DeviationCard card = *DeviationCard::make({{CompassDirection(0), Deviation{2}}, {CompassDirection(90), Deviation{4}}});
  CHECK(chain_to_compass(MagneticDirection(200), {.card = &card}, Rounding::whole_degrees).deviation == DeviationAnswer::none);
  const Chain up = chain_from_compass(CompassDirection(200), {.card = &card}, Rounding::whole_degrees);
  CHECK(up.deviation == DeviationAnswer::none);
  CHECK(up.rows.size() == 1);
  CHECK(chain_to_compass(MagneticDirection(48), {.card = &card}, Rounding::whole_degrees).deviation == DeviationAnswer::one);
}

TEST_CASE("deviation not entered is no deviation of nought") {
  CHECK(chain_from_compass(CompassDirection(200), {}, Rounding::whole_degrees).rows.size() == 1);
  const Chain nought = chain_to_compass(TrueDirection(100), {.deviation = Deviation{0}}, Rounding::whole_degrees);
  CHECK(nought.rows.size() == 5);
  CHECK(nought.deviation == DeviationAnswer::one);
}

TEST_CASE("what is shown adds up, is at most 1.5 degrees off, and has its tenths from 0.75 on") {
  Random random(1500);
  for (int i = 0; i < 100'000; ++i) {
    const TrueDirection direction(random.uniform(0, 360));
    const ChainCorrections corrections{.variation = Variation{random.uniform(-30, 30)}, .deviation = Deviation{random.uniform(-30, 30)}};
    const Rounding rounding = i % 10 == 0 ? Rounding::tenths : Rounding::whole_degrees;
    const Chain down = chain_to_compass(direction, corrections, rounding);
    check_adds_up(down, rounding);
    const Chain up = chain_from_compass(CompassDirection(direction.deg()), corrections, rounding);
    check_adds_up(up, rounding);
    for (const Chain& chain : {down, up}) CHECK(std::abs(reduce_difference_deg(chain.rows[4].shown_deg - chain.rows[4].exact_deg)) <= 1.5 + 1e-9);
  }
}

TEST_CASE("every half-degree edge: the rule to the letter") {
  // All sums of halves and quarters are exact, so that the edges of 0.75 are met and not just passed.
  for (double true_deg = 0; true_deg < 360; true_deg += 0.5)
    for (double variation_deg = -3; variation_deg <= 3; variation_deg += 0.25)
      for (const double deviation_deg : {-2.5, -0.75, -0.5, 0.0, 0.25, 0.5, 1.5}) {
        const Chain chain = chain_to_compass(TrueDirection(true_deg), {.variation = Variation{variation_deg}, .deviation = Deviation{deviation_deg}},
                                             Rounding::whole_degrees);
        check_adds_up(chain, Rounding::whole_degrees);
        for (const std::size_t i : {std::size_t{2}, std::size_t{4}}) {
          const double off_deg = std::abs(reduce_difference_deg(chain.rows[i].shown_deg - chain.rows[i].exact_deg));
          CHECK(chain.rows[i].by_tenths_deg.has_value() == (off_deg >= 0.75));
        }
      }
}

TEST_CASE("forth and back is the same direction wherever the card has one answer") {
  Random random(4);
  const DeviationCard cards[] = {handbook_card(), unusable_card()};
  int several = 0;
  for (int i = 0; i < 100'000; ++i) {
    const ChainCorrections corrections{.stream_deg = random.uniform(-20, 20),
                                       .leeway = Leeway{random.uniform(-10, 10)},
                                       .variation = Variation{random.uniform(-30, 30)},
                                       .card = &cards[i % 2]};
    const TrueDirection track(random.uniform(0, 360));
    const Chain down = chain_to_compass(track, corrections, Rounding::whole_degrees);
    if (down.deviation == DeviationAnswer::several) {
      ++several;
      continue;
    }
    REQUIRE(down.deviation == DeviationAnswer::one);
    const Chain up = chain_from_compass(CompassDirection(down.rows.back().exact_deg), corrections, Rounding::whole_degrees);
    CHECK(std::abs(reduce_difference_deg(up.rows.back().exact_deg - track.deg())) <= 1e-9);
  }
  CHECK(several > 0);
}
