#include "core/compass/swing_fit.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/student.h"

namespace fogsheet {
namespace {

struct Terms {
  std::size_t count = 0;
  std::array<Coefficient, k_coefficient_count> which{};
};

using enum Coefficient;
constexpr Terms k_all = {5, {a, b, c, d, e}}, k_without_e = {4, {a, b, c, d}}, k_semicircular = {3, {a, b, c}}, k_fore_and_aft = {2, {a, b}},
                k_athwart = {2, {a, c}}, k_constant = {1, {a}};
// What is tried in turn; of those of one size the better found is taken.
constexpr Terms k_tries[] = {k_all, k_without_e, k_semicircular, k_fore_and_aft, k_athwart, k_constant};

struct Trial {
  Terms terms;
  LeastSquares fit;
  double sd_deg = 0;     // of one reading
  double worst_se_deg = 0;
};

std::optional<Trial> try_terms(const Terms& terms, std::span<const DeviationReading> readings, const SwingAssumptions& assumptions) {
  Matrix design(readings.size(), terms.count);
  std::vector<double> observed(readings.size());
  for (std::size_t row = 0; row < readings.size(); ++row) {
    const ByCoefficient factors = coefficient_factors(readings[row].heading);
    for (std::size_t column = 0; column < terms.count; ++column) design.at(row, column) = of(factors, terms.which[column]);
    observed[row] = readings[row].deviation.deg;
  }
  std::optional<LeastSquares> fit = least_squares(design, observed);
  if (!fit) return std::nullopt;
  Trial trial{.terms = terms, .fit = std::move(*fit)};
  const std::size_t freedom = readings.size() - terms.count;
  trial.sd_deg = freedom > 0 ? std::sqrt(trial.fit.squares / static_cast<double>(freedom)) : assumptions.reading_sd_deg;
  // Headings are judged by readings as bad as assumed at least: a few that agree by luck support nothing more.
  const double judged_deg = std::max(trial.sd_deg, assumptions.reading_sd_deg);
  for (std::size_t i = 0; i < terms.count; ++i)
    trial.worst_se_deg = std::max(trial.worst_se_deg, judged_deg * std::sqrt(trial.fit.cofactors.at(i, i)));
  return trial;
}

std::optional<Trial> best_trial(std::span<const DeviationReading> readings, const SwingAssumptions& assumptions) {
  std::optional<Trial> best;
  std::size_t size = 0;
  for (const Terms& terms : k_tries) {
    if (terms.count != size && best && best->worst_se_deg <= k_largest_coefficient_se_deg) break;
    if (std::exchange(size, terms.count) != terms.count) best.reset();
    std::optional<Trial> trial = try_terms(terms, readings, assumptions);
    if (trial && (!best || trial->worst_se_deg < best->worst_se_deg)) best = std::move(trial);
  }
  return best;  // at last A alone, however badly
}

}  // namespace

ByCoefficient SwingFit::curve_deg() const {
  ByCoefficient curve{};
  for (const Coefficient which : k_coefficients) of(curve, which) = coefficient_deg(which);
  return curve;
}

double SwingFit::sd_at_deg(CompassDirection heading) const {
  const ByCoefficient factors = coefficient_factors(heading);
  double variance = reference_sd_deg * reference_sd_deg;
  for (std::size_t i = 0; i < k_coefficient_count; ++i)
    for (std::size_t j = 0; j < k_coefficient_count; ++j) variance += factors[i] * covariance_deg2.at(i, j) * factors[j];
  return std::sqrt(std::max(variance, 0.0));
}

double SwingFit::one_sigma_factor() const { return degrees_of_freedom > 0 ? one_sigma_student(degrees_of_freedom) : 1; }

bool SwingFit::covers(CompassDirection heading) const {
  // The gap clockwise from the last reading at or before the heading to the next one.
  const auto next = std::upper_bound(covered_from_deg.begin(), covered_from_deg.end(), heading.deg());
  const double to_deg = next == covered_from_deg.end() ? covered_from_deg.front() + 360 : *next;
  const double from_deg = next == covered_from_deg.begin() ? covered_from_deg.back() - 360 : *(next - 1);
  return from_deg == heading.deg() || to_deg - from_deg <= k_widest_card_gap_deg;
}

Result<DeviationCard> SwingFit::card(int step_deg) const {
  std::vector<DeviationEntry> entries;
  for (int deg = 0; deg < 360; deg += step_deg) {
    const CompassDirection heading(deg);
    if (covers(heading)) entries.push_back({.heading = heading, .deviation = at(heading)});
  }
  if (entries.empty()) return Problem{.fault = Fault::headings_too_close, .numbers = {static_cast<double>(covered_from_deg.size())}};
  return DeviationCard::make(std::move(entries));
}

void SwingFit::take(std::span<const Coefficient> which, std::span<const double> values_deg, const Matrix& cofactors, double variance) {
  const auto is_open = [&](std::size_t column) { return which[column] == Coefficient::a && !a_found; };
  for (std::size_t i = 0; i < which.size(); ++i) {
    if (is_open(i)) continue;
    const auto row = static_cast<std::size_t>(which[i]);
    coefficients_deg[row] = values_deg[i];
    se_deg[row] = std::sqrt(variance * cofactors.at(i, i));
    for (std::size_t j = 0; j < which.size(); ++j)
      if (!is_open(j)) covariance_deg2.at(row, static_cast<std::size_t>(which[j])) = variance * cofactors.at(i, j);
  }
  double& se_a = of(se_deg, Coefficient::a);
  if (a_found) se_a = std::hypot(se_a, reference_sd_deg);
  std::sort(covered_from_deg.begin(), covered_from_deg.end());
}

Result<SwingFit> fit_swing(std::span<const DeviationReading> readings, const SwingAssumptions& assumptions) {
  if (readings.empty()) return Problem{.fault = Fault::too_few_readings, .numbers = {0, 1}};
  const std::optional<Trial> trial = best_trial(readings, assumptions);
  SHEET_CHECK(trial.has_value(), "one reading supports A");

  SwingFit fit;
  fit.reading_sd_deg = trial->sd_deg;
  fit.degrees_of_freedom = static_cast<int>(readings.size() - trial->terms.count);
  fit.reference_sd_deg = assumptions.reference_sd_deg;
  fit.a_found = assumptions.bearing_known;
  for (const DeviationReading& reading : readings) fit.covered_from_deg.push_back(reading.heading.deg());
  fit.take({trial->terms.which.data(), trial->terms.count}, trial->fit.solution, trial->fit.cofactors, trial->sd_deg * trial->sd_deg);
  fit.misfits = misfits_of(trial->fit);
  return fit;
}

}  // namespace fogsheet
