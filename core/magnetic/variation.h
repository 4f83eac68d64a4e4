// Which variation a sheet uses: the model's, or the one printed on the user's chart carried to the date; with its
// uncertainty, and as it is used (rounded by the rule).
#pragma once

#include <optional>

#include "core/base/date.h"
#include "core/directions/directions.h"
#include "core/directions/rounding.h"
#include "core/magnetic/field.h"

namespace fogsheet {

/// The note inside a chart's rose. East positive; annual change in minutes of arc, east positive.
struct PrintedVariation {
  double value_deg = 0;
  int year = 2026;
  double annual_change_min = 0;

  bool operator==(const PrintedVariation&) const = default;
};

/// A variation carried on by so many years at that change, minutes of arc a year, east positive.
Variation carried_variation(Variation variation, double annual_change_min, double years);

/// The note carried to a date: value + (year of the date - year of the note) x change. Years are calendar years, as the
/// handbooks do it. Source: reference kind variation-update.
Variation printed_variation_at(const PrintedVariation& note, Date date);

enum class VariationSource { model, printed };

/// What a sheet goes by. In the blackout zone and outside the models' years the model has no value: when it leads there,
/// `value` is empty; `zone` or `problem` says why. The zone is the model's at the nearest year it has, whichever leads.
struct VariationInUse {
  VariationSource source = VariationSource::model;
  std::optional<Variation> value;  // unrounded
  std::optional<Variation> used;   // rounded by the rule: as the ring is turned
  FieldZone zone = FieldZone::normal;
  double uncertainty_deg = 0;              // one sigma
  double annual_change_min = 0;            // east positive
  std::optional<Problem> problem;          // date_outside_models
  std::optional<Variation> model_value;    // the model's, when a printed note leads, for comparison
  std::optional<Variation> printed_value;  // the note's, when the model leads over one, for comparison
};

inline constexpr int k_printed_leads_years = 10;
inline constexpr double k_printed_leads_nm = 60;
/// From a larger difference on, both values are shown.
inline constexpr double k_both_shown_over_deg = 1;

/// Design rule: a printed note leads when it is up to ten years old at the date and the sheet's middle has moved under
/// 60 nm since the note was set; otherwise the model leads.
/// @param place the sheet's middle, latitude in [-90, 90]; moved_nm how far it has moved since the note was set, >= 0.
VariationInUse variation_in_use(Position place, Date date, const std::optional<PrintedVariation>& printed, Rounding rounding, double moved_nm = 0);

/// Whether both values are to be shown: there are two, and they differ by over a degree.
bool both_variations_shown(const VariationInUse& variation);

}  // namespace fogsheet
