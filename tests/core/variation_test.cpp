#include "core/magnetic/variation.h"

#include <cmath>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr Position k_solent{.lat_deg = 50.75, .lon_deg = -1.3};
constexpr Date k_date{2026, 11, 25};

}  // namespace

TEST_CASE("a printed note is carried to the date by whole years") {
  // Source: Deck officer reviewer: 3 deg 45' W 1988, decreasing 6' a year, is 3 deg 27' W in 1991.
  const PrintedVariation note{.value_deg = -3.75, .year = 1988, .annual_change_min = 6};
  CHECK(std::abs(printed_variation_at(note, {1991, 12, 31}).deg - -3.45) <= 1e-12);
}

TEST_CASE("the model leads where there is no note") {
  // Source: WMM2025 coefficients, value at sea for the Solent: 0.904 E, 0.171 deg a year.
  const VariationInUse in_use = variation_in_use(k_solent, k_date, std::nullopt, Rounding::whole_degrees);
  CHECK(in_use.source == VariationSource::model);
  REQUIRE(in_use.value);
  CHECK(std::abs(in_use.value->deg - 0.904) <= 0.0006);
  CHECK(in_use.used->deg == 1);
  CHECK(std::abs(in_use.annual_change_min - 0.171 * 60) <= 0.06);
  CHECK_FALSE(in_use.problem);
  CHECK_FALSE(both_variations_shown(in_use));
}

TEST_CASE("a note leads while it is up to ten years old and near") {
  PrintedVariation note{.value_deg = -1.5, .year = 2016, .annual_change_min = 10};
  const VariationInUse led = variation_in_use(k_solent, k_date, note, Rounding::tenths, 59.9);
  CHECK(led.source == VariationSource::printed);
  CHECK(std::abs(led.value->deg - (-1.5 + 100.0 / 60)) <= 1e-12);
  CHECK(led.used->deg == 0.2);
  CHECK(led.annual_change_min == 10);
  REQUIRE(led.model_value);
  CHECK(std::abs(led.model_value->deg - 0.904) <= 0.0006);
  CHECK_FALSE(both_variations_shown(led));

  CHECK(variation_in_use(k_solent, k_date, note, Rounding::tenths, 60).source == VariationSource::model);
  note.year = 2015;
  const VariationInUse old = variation_in_use(k_solent, k_date, note, Rounding::tenths);
  CHECK(old.source == VariationSource::model);
  CHECK(old.printed_value);
  note.value_deg = 9;
  CHECK(both_variations_shown(variation_in_use(k_solent, k_date, note, Rounding::tenths)));
}

TEST_CASE("the uncertainty of a note grows with its age") {
  const PrintedVariation fresh{.value_deg = 1, .year = 2026, .annual_change_min = 10};
  const PrintedVariation aged{.value_deg = 1, .year = 2017, .annual_change_min = 10};
  CHECK(variation_in_use(k_solent, k_date, fresh, Rounding::tenths).uncertainty_deg <
        variation_in_use(k_solent, k_date, aged, Rounding::tenths).uncertainty_deg);
}

TEST_CASE("outside the models' years there is no value, unless a note leads") {
  const Date late{2031, 1, 1};
  const VariationInUse none = variation_in_use(k_solent, late, std::nullopt, Rounding::whole_degrees);
  CHECK_FALSE(none.value);
  CHECK_FALSE(none.used);
  REQUIRE(none.problem);
  CHECK(none.problem->fault == Fault::date_outside_models);
  const PrintedVariation note{.value_deg = 1, .year = 2026, .annual_change_min = 10};
  const VariationInUse led = variation_in_use(k_solent, late, note, Rounding::whole_degrees);
  CHECK(led.value);
  CHECK_FALSE(led.model_value);
  CHECK_FALSE(led.problem);
  CHECK(variation_in_use(k_solent, {2030, 1, 1}, std::nullopt, Rounding::whole_degrees).value);
}

TEST_CASE("in the blackout zone the model has no value") {
  const VariationInUse in_use = variation_in_use({.lat_deg = -66, .lon_deg = 140}, {2026, 1, 15}, std::nullopt, Rounding::whole_degrees);
  CHECK(in_use.zone == FieldZone::blackout);
  CHECK_FALSE(in_use.value);
  CHECK_FALSE(in_use.problem);
}
