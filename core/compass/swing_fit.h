// From the deviations read on a swing to the coefficients, by least squares, with what each is worth.
// As many coefficients are fitted as the headings support: all five; without E; A, B, C; A with the better found of B and C; A.
// Source: Draper and Smith, Applied Regression Analysis (3rd ed. 1998), chapters 1 and 5 (estimates and their standard errors).
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/compass/coefficients.h"
#include "core/compass/misfit.h"
#include "core/directions/deviation_card.h"

namespace fogsheet {

struct DeviationReading {
  CompassDirection heading;
  Deviation deviation;
};

/// What is taken for granted in a fit.
struct SwingAssumptions {
  double reading_sd_deg = 1;    // of one reading, for as long as the readings can't tell themselves; over 0
  double reference_sd_deg = 0;  // of what all readings share (variation, the bearing that was trusted): it goes into A; at least 0
  bool bearing_known = true;    // of what was sighted; when not, A can't be found
};

/// A coefficient with a larger standard error than this is not given: the headings do not support it.
inline constexpr double k_largest_coefficient_se_deg = 3;

struct SwingFit {
  std::array<std::optional<double>, k_coefficient_count> coefficients_deg;  // empty: not supported, or (A) not to be found
  ByCoefficient se_deg{};                      // one standard error, with the reference's own in A; 0 where there is no value
  Matrix covariance_deg2{k_coefficient_count, k_coefficient_count};  // without the reference's; noughts where there is no value
  double reading_sd_deg = 0;                   // as the readings tell it, or as was assumed
  int degrees_of_freedom = 0;                  // 0: the readings do not tell how good they are
  double reference_sd_deg = 0;
  bool a_found = true;                         // false: the curve is drawn with A nought
  std::vector<Misfit> misfits;                 // one for each reading, in the same order
  std::vector<double> covered_from_deg;        // where readings lie, in order: see covers()

  double coefficient_deg(Coefficient which) const { return coefficients_deg[static_cast<std::size_t>(which)].value_or(0); }
  ByCoefficient curve_deg() const;

  /// The curve's deviation on a heading, and its standard error there, from the covariance and the reference.
  Deviation at(CompassDirection heading) const { return deviation_by(curve_deg(), heading); }
  double sd_at_deg(CompassDirection heading) const;

  /// What to multiply a standard error by to be right as often as one standard deviation of a normal is (base/student.h).
  double one_sigma_factor() const;

  /// Whether readings lie to both sides of a heading, no further apart than a card may join (k_widest_card_gap_deg).
  bool covers(CompassDirection heading) const;

  /// An entry each `step_deg` by compass, where the readings cover it. Fault headings_too_close when that is nowhere.
  /// @param step_deg a divisor of 360
  Result<DeviationCard> card(int step_deg) const;

  /// Fills in what follows from the least squares: values with their errors, and the headings in order. What was assumed and
  /// the headings stand there before.
  /// @param which  what the first columns are; those after them are no coefficients
  /// @param variance  of one observation: times a cofactor, deg^2
  void take(std::span<const Coefficient> which, std::span<const double> values_deg, const Matrix& cofactors, double variance);
};

/// @param readings those that count, in any order; several on one heading are fine. Fault too_few_readings when there is none.
Result<SwingFit> fit_swing(std::span<const DeviationReading> readings, const SwingAssumptions& assumptions);

}  // namespace fogsheet
