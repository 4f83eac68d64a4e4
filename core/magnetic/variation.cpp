#include "core/magnetic/variation.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace fogsheet {

namespace {

constexpr double k_arcmin_per_degree = 60;

// A note is some model of its day, rounded to a quarter of a degree at worst (0.07 deg as one sigma), carried on with a
// change that itself changes: 0.02 deg a year, chosen; a larger figure trusts old notes less.
constexpr double k_printed_rounding_sd_deg = 0.07;
constexpr double k_printed_drift_sd_deg_per_year = 0.02;

double printed_sd_deg(double model_sd_deg, int years) {
  const double drift_deg = k_printed_drift_sd_deg_per_year * std::abs(years);
  return std::hypot(model_sd_deg, k_printed_rounding_sd_deg, drift_deg);
}

}  // namespace

Variation carried_variation(Variation variation, double annual_change_min, double years) {
  return {.deg = variation.deg + years * annual_change_min / k_arcmin_per_degree};
}

Variation printed_variation_at(const PrintedVariation& note, Date date) {
  return carried_variation({.deg = note.value_deg}, note.annual_change_min, date.year - note.year);
}

VariationInUse variation_in_use(Position place, Date date, const std::optional<PrintedVariation>& printed, Rounding rounding, double moved_nm) {
  const double year = decimal_year(date);
  const Result<MagneticField> at_date = magnetic_field(place, year);
  const MagneticField field = at_date.ok() ? *at_date : *magnetic_field(place, std::clamp(year, k_first_model_year, k_last_model_year));

  std::optional<Variation> model_value;
  if (at_date.ok() && field.zone != FieldZone::blackout) model_value = Variation{.deg = field.declination_deg};

  VariationInUse in_use{.zone = field.zone};
  const int age_years = printed ? date.year - printed->year : 0;
  if (printed && std::abs(age_years) <= k_printed_leads_years && moved_nm < k_printed_leads_nm) {
    in_use.source = VariationSource::printed;
    in_use.value = printed_variation_at(*printed, date);
    in_use.uncertainty_deg = printed_sd_deg(field.declination_sd_deg, age_years);
    in_use.annual_change_min = printed->annual_change_min;
    in_use.model_value = model_value;
  } else {
    in_use.value = model_value;
    in_use.uncertainty_deg = field.declination_sd_deg;
    in_use.annual_change_min = field.declination_deg_per_year * k_arcmin_per_degree;
    if (!at_date.ok()) in_use.problem = at_date.problem();
    if (printed) in_use.printed_value = printed_variation_at(*printed, date);
  }
  if (in_use.value) in_use.used = Variation{.deg = round_correction_deg(in_use.value->deg, rounding)};
  return in_use;
}

bool both_variations_shown(const VariationInUse& variation) {
  const std::optional<Variation>& other = variation.source == VariationSource::printed ? variation.model_value : variation.printed_value;
  return variation.value && other && std::abs(reduce_difference_deg(variation.value->deg - other->deg)) > k_both_shown_over_deg;
}

}  // namespace fogsheet
