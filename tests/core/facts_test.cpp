// What follows from a document: its variation and its legs.
#include "core/document/facts.h"

#include <cmath>

#include "core/document/actions.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

History history_at(double lat_deg, double lon_deg) {
  return History(made_sheet({.mid_lat_deg = lat_deg, .mid_lon_deg = lon_deg, .date = {2026, 7, 1}}).value());
}

}  // namespace

TEST_CASE("a sheet goes by the model at its middle and date until a chart's note is entered") {
  History history = history_at(44, -31);
  const VariationInUse model = variation_of(history.now(), Rounding::whole_degrees);
  CHECK(model.source == VariationSource::model);
  REQUIRE(model.value);
  CHECK(model.value->deg == magnetic_field({44, -31}, decimal_year({2026, 7, 1})).value().declination_deg);

  REQUIRE(set_chart_note(history, PrintedVariation{.value_deg = -9.25, .year = 2024, .annual_change_min = 12}));
  const VariationInUse printed = variation_of(history.now(), Rounding::whole_degrees);
  CHECK(printed.source == VariationSource::printed);
  // -9.25 + 2 years of 12' east = -8.85, used as 9 deg west.
  REQUIRE(printed.value);
  CHECK(std::abs(printed.value->deg - -8.85) < 1e-9);
  CHECK(printed.used->deg == -9);
}

TEST_CASE("a note entered 60 nm and more from the sheet's middle leads no longer") {
  History history = history_at(44, -31);
  REQUIRE(set_chart_note(history, PrintedVariation{.value_deg = -9.25, .year = 2024}));
  Document moved = history.now();
  moved.sheet.middle.lat += 59 * 10'000;  // 59' of latitude, about 59 nm
  CHECK(variation_of(moved, Rounding::whole_degrees).source == VariationSource::printed);
  moved.sheet.middle.lat += 2 * 10'000;
  CHECK(variation_of(moved, Rounding::whole_degrees).source == VariationSource::model);
}

TEST_CASE("a leg's course is the rhumb line's, its magnetic course made with the variation as used") {
  History history = history_at(0, 10);
  const MarkId a = *add_mark(history, {.name = "A", .lat_deg = 0, .lon_deg = 10});
  const MarkId b = *add_mark(history, {.name = "B", .lat_deg = 0, .lon_deg = 10.05});
  const LegId leg = *add_leg(history, a, b);
  REQUIRE(set_chart_note(history, PrintedVariation{.value_deg = -9.42, .year = 2026}));
  const VariationInUse variation = variation_of(history.now(), Rounding::whole_degrees);
  const LegFacts facts = leg_facts(history.now(), *history.now().legs.find(leg), variation, Rounding::whole_degrees, nullptr);
  // Along the equator: due east, 3' of longitude of 1855.325 m (WGS84: a * pi / 10800).
  CHECK(std::abs(facts.rhumb.course.deg() - 90) < 1e-9);
  CHECK(std::abs(facts.rhumb.distance_nm - 3 * 1855.3248 / 1852) < 1e-5);
  CHECK(facts.has_magnetic);
  CHECK(std::abs(facts.magnetic.deg() - 99) < 1e-9);
  CHECK(facts.chain.rows.size() == 3);
}

TEST_CASE("with a card a leg has a compass course, or the reason why it has none") {
  History history = history_at(0, 10);
  const MarkId a = *add_mark(history, {.name = "A", .lat_deg = 0, .lon_deg = 10});
  const MarkId b = *add_mark(history, {.name = "B", .lat_deg = 0, .lon_deg = 10.05});
  const LegId id = *add_leg(history, a, b);
  const Leg leg = *history.now().legs.find(id);
  REQUIRE(set_chart_note(history, PrintedVariation{.value_deg = -9.42, .year = 2026}));
  const VariationInUse variation = variation_of(history.now(), Rounding::whole_degrees);
  // 099 magnetic; deviation 3 W at every compass heading: 102 compass.
  const DeviationCard flat = *DeviationCard::make({{CompassDirection(0), {.deg = -3}}, {CompassDirection(90), {.deg = -3}}, {CompassDirection(180), {.deg = -3}}, {CompassDirection(270), {.deg = -3}}});
  const LegFacts facts = leg_facts(history.now(), leg, variation, Rounding::whole_degrees, &flat);
  CHECK(facts.compass->deg() == doctest::Approx(102));
  REQUIRE(row_of(facts.chain, ChainTerm::compass_direction) != nullptr);
  CHECK(row_of(facts.chain, ChainTerm::compass_direction)->shown_deg == 102);
  // Deviation that falls by three degrees in one: 095, 100 and 105 compass are all 100 magnetic, or near.
  const DeviationCard steep = *DeviationCard::make({{CompassDirection(60), {.deg = 10}}, {CompassDirection(95), {.deg = 10}}, {CompassDirection(103), {.deg = -10}}, {CompassDirection(150), {.deg = -10}}});
  const LegFacts unsure = leg_facts(history.now(), leg, variation, Rounding::whole_degrees, &steep);
  CHECK_FALSE(unsure.compass);
  CHECK(unsure.chain.deviation == DeviationAnswer::several);
  CHECK(unsure.chain.candidates.size() == 3);
  const DeviationCard elsewhere = *DeviationCard::make({{CompassDirection(200), {.deg = 1}}, {CompassDirection(250), {.deg = 1}}});
  CHECK(leg_facts(history.now(), leg, variation, Rounding::whole_degrees, &elsewhere).chain.deviation == DeviationAnswer::none);
}

TEST_CASE("where there is no variation a leg has its true course alone") {
  History history = history_at(0, 10);
  const MarkId a = *add_mark(history, {.name = "A", .lat_deg = 0, .lon_deg = 10});
  const MarkId b = *add_mark(history, {.name = "B", .lat_deg = 0.05, .lon_deg = 10});
  const LegId leg = *add_leg(history, a, b);
  REQUIRE(set_date(history, {2050, 1, 1}));
  const VariationInUse variation = variation_of(history.now(), Rounding::whole_degrees);
  CHECK_FALSE(variation.value);
  const LegFacts facts = leg_facts(history.now(), *history.now().legs.find(leg), variation, Rounding::whole_degrees, nullptr);
  CHECK_FALSE(facts.has_magnetic);
  REQUIRE(facts.chain.rows.size() == 1);
  CHECK(facts.chain.rows[0].shown_deg == 0);
}

TEST_CASE("a rose set to its own place shows the model there, and serves the legs nearest to it") {
  History history = history_at(44, -31);
  const MarkId a = *add_mark(history, {.name = "A", .lat_deg = 44, .lon_deg = -31.1});
  const MarkId b = *add_mark(history, {.name = "B", .lat_deg = 44.02, .lon_deg = -31.1});
  const LegId leg_id = *add_leg(history, a, b);
  const Leg leg = *history.now().legs.find(leg_id);
  const RoseId near = *add_rose(history, 44.01, -31.11, 30);
  REQUIRE(set_chart_note(history, PrintedVariation{.value_deg = -9.25, .year = 2024}));
  const Projection projection = projection_of(history.now());
  const VariationInUse of_sheet = variation_of(history.now(), Rounding::whole_degrees);
  CHECK(rose_serving(history.now(), leg, projection) == nullptr);
  CHECK(variation_at(history.now(), *history.now().roses.find(near), of_sheet, Rounding::whole_degrees).source == VariationSource::printed);

  REQUIRE(change_rose(history, near, {.own_place = true}));
  const Rose* serving = rose_serving(history.now(), leg, projection);
  REQUIRE(serving);
  CHECK(serving->id == near);
  const VariationInUse shown = variation_at(history.now(), *serving, of_sheet, Rounding::whole_degrees);
  CHECK(shown.source == VariationSource::model);
  CHECK(shown.value->deg == magnetic_field(unquantise(serving->at), decimal_year({2026, 7, 1})).value().declination_deg);

  // Another rose that is nearer, and shows the sheet's variation, takes the leg over.
  REQUIRE(add_rose(history, 44.01, -31.1, 30));
  CHECK(rose_serving(history.now(), leg, projection) == nullptr);
}
