// True, magnetic, compass; leeway; notes of variation; deviation cards and coefficients; units.
#include <algorithm>
#include <array>

#include "core/base/units.h"
#include "core/compass/coefficients.h"
#include "core/directions/deviation_card.h"
#include "core/directions/directions.h"
#include "core/directions/leeway.h"
#include "core/magnetic/variation.h"
#include "tests/values/kinds.h"

namespace fogsheet::values {

namespace {

Variation variation(const Inputs& in) { return {.deg = in.number("variation_deg")}; }
Deviation deviation(const Inputs& in) { return {.deg = in.number("deviation_deg")}; }
CompassDirection compass(const Inputs& in) { return CompassDirection(in.number("compass_deg")); }

Outputs true_from_magnetic(const Inputs& in) {
  return {{"true_deg", in_full(to_true(MagneticDirection(in.number("magnetic_deg")), variation(in)).deg())}};
}

Outputs true_from_compass(const Inputs& in) {
  const MagneticDirection magnetic = to_magnetic(compass(in), deviation(in));
  return {{"magnetic_deg", in_full(magnetic.deg())}, {"true_deg", in_full(to_true(magnetic, variation(in)).deg())}};
}

Outputs compass_from_true(const Inputs& in) {
  const MagneticDirection magnetic = to_magnetic(TrueDirection(in.number("true_deg")), variation(in));
  return {{"magnetic_deg", in_full(magnetic.deg())}, {"compass_deg", in_full(to_compass(magnetic, deviation(in)).deg())}};
}

Outputs variation_from_headings(const Inputs& in) {
  const MagneticDirection magnetic = to_magnetic(compass(in), deviation(in));
  const Variation found = variation_between(TrueDirection(in.number("true_deg")), magnetic);
  return {{"magnetic_deg", in_full(magnetic.deg())}, {"variation_deg", in_full(found.deg)}};
}

Outputs compass_error(const Inputs& in) { return {{"compass_error_deg", in_full(compass_error_deg(variation(in), deviation(in)))}}; }

TrueDirection heading_for_row(const Inputs& in) {
  const TrueDirection track(in.number("water_track_true_deg"));
  const TrueDirection wind(in.number("wind_from_deg"));
  return heading_for(track, leeway_from_wind(track, wind, in.number("leeway_deg")));
}

Outputs leeway_heading(const Inputs& in) { return {{"heading_true_deg", in_full(heading_for_row(in).deg())}}; }

Outputs leeway_compass_course(const Inputs& in) {
  const MagneticDirection magnetic = to_magnetic(heading_for_row(in), variation(in));
  return {{"compass_deg", in_full(to_compass(magnetic, deviation(in)).deg())}};
}

Outputs leeway_water_track(const Inputs& in) {
  const TrueDirection heading = to_true(to_magnetic(compass(in), deviation(in)), variation(in));
  const TrueDirection wind(in.number("wind_from_deg"));
  const TrueDirection track = water_track(heading, leeway_from_wind(heading, wind, in.number("leeway_deg")));
  return {{"water_track_true_deg", in_full(track.deg())}};
}

Outputs variation_update(const Inputs& in) {
  const Variation carried =
      carried_variation({.deg = in.number("note_variation_deg")}, in.number("annual_change_arcmin"), in.number("year") - in.number("note_year"));
  return {{"variation_deg", in_full(carried.deg)}};
}

DeviationCard needed_card(const Inputs& in) {
  std::vector<DeviationEntry> entries;
  for (const Row* row : in.needed("deviation-table"))
    entries.push_back({.heading = CompassDirection(number_in(*row, "compass_deg")), .deviation = {.deg = number_in(*row, "deviation_deg")}});
  Result<DeviationCard> card = DeviationCard::make(std::move(entries));
  if (!card.ok()) throw RowError{"no card can be made of the rows it needs"};
  return std::move(card).value();
}

Coefficient named_coefficient(const std::string& name) {
  if (name.size() != 1 || name[0] < 'A' || name[0] > 'E') throw RowError{"no such coefficient"};
  return k_coefficients[static_cast<std::size_t>(name[0] - 'A')];
}

Outputs coefficient(const Inputs& in) {
  const DeviationCard card = needed_card(in);
  std::array<double, 8> deviations_deg{};
  for (std::size_t i = 0; i < deviations_deg.size(); ++i) {
    const CompassDirection heading(45.0 * static_cast<double>(i));
    const auto found = std::find_if(card.entries().begin(), card.entries().end(), [&](const DeviationEntry& entry) { return entry.heading == heading; });
    if (found == card.entries().end()) throw RowError{"the table lacks one of the eight headings"};
    deviations_deg[i] = found->deviation.deg;
  }
  return {{"value_deg", in_full(of(coefficients_by_hand(deviations_deg), named_coefficient(in.text("coefficient"))))}};
}

Outputs deviation_from_coefficients(const Inputs& in) {
  ByCoefficient coefficients_deg{};
  for (const Row* row : in.needed("coefficient-given")) of(coefficients_deg, named_coefficient(text_in(*row, "coefficient"))) = number_in(*row, "value_deg");
  return {{"deviation_deg", in_full(deviation_by(coefficients_deg, compass(in)).deg)}};
}

Outputs interpolation_by_compass_heading(const Inputs& in) {
  const std::optional<Deviation> found = needed_card(in).at(compass(in));
  return {{"deviation_deg", found ? in_full(found->deg) : "none"}};
}

Outputs compass_from_magnetic(const Inputs& in) {
  const DeviationCard card = needed_card(in);
  const std::vector<CompassDirection> found = card.compass_for(MagneticDirection(in.number("magnetic_deg")));
  if (found.size() != 1) return {{"compass_deg", "none"}, {"deviation_deg", "none"}};
  return {{"compass_deg", in_full(found[0].deg())}, {"deviation_deg", in_full(card.at(found[0])->deg)}};
}

Outputs nearest_table_entry(const Inputs& in) { return {{"deviation_deg", in_full(needed_card(in).nearest(compass(in)).deg)}}; }

Outputs unit(const Inputs& in) {
  const std::optional<double> value = unit_in(in.text("one"), in.text("in"));
  if (!value) throw RowError{"no such unit"};
  return {{"value", in_full(*value)}};
}

}  // namespace

KindTable compass_kinds() {
  return {{"true-from-magnetic", true_from_magnetic},
          {"true-from-compass", true_from_compass},
          {"compass-from-true", compass_from_true},
          {"variation-from-headings", variation_from_headings},
          {"compass-error", compass_error},
          {"leeway-heading", leeway_heading},
          {"leeway-compass-course", leeway_compass_course},
          {"leeway-water-track", leeway_water_track},
          {"variation-update", variation_update},
          {"coefficient", coefficient},
          {"deviation-from-coefficients", deviation_from_coefficients},
          {"interpolation-by-compass-heading", interpolation_by_compass_heading},
          {"compass-from-magnetic", compass_from_magnetic},
          {"nearest-table-entry", nearest_table_entry},
          {"unit", unit}};
}

}  // namespace fogsheet::values
