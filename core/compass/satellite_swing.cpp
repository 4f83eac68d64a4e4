#include "core/compass/satellite_swing.h"

#include <algorithm>
#include <cmath>

#include "core/base/units.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_stream_north = k_coefficient_count, k_stream_east = k_stream_north + 1, k_water_speed = k_stream_east + 1, k_unknowns = k_water_speed + 1;

struct Velocity {
  double north_kn = 0;
  double east_kn = 0;
};

Velocity along(double direction_deg, double speed_kn) { return {speed_kn * std::cos(direction_deg * k_degree_rad), speed_kn * std::sin(direction_deg * k_degree_rad)}; }
double direction_deg(Velocity v) { return reduce_direction_deg(std::atan2(v.east_kn, v.north_kn) / k_degree_rad); }

struct Motion {
  ByCoefficient coefficients_deg{};
  Velocity stream;
  double water_speed_kn = 0;
};

/// As if there were no deviation: stream and speed alone, which is linear.
std::optional<Motion> first_guess(std::span<const SatelliteReading> readings, Variation variation) {
  Matrix design(2 * readings.size(), 3);
  std::vector<double> observed;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const Velocity heading = along(readings[i].heading.deg() + variation.deg, 1), ground = along(readings[i].track.deg(), readings[i].speed_kn);
    design.at(2 * i, 0) = 1;
    design.at(2 * i + 1, 1) = 1;
    design.at(2 * i, 2) = heading.north_kn;
    design.at(2 * i + 1, 2) = heading.east_kn;
    observed.push_back(ground.north_kn);
    observed.push_back(ground.east_kn);
  }
  const std::optional<LeastSquares> fit = least_squares(design, observed);
  if (!fit) return std::nullopt;
  return Motion{.stream = {fit->solution[0], fit->solution[1]}, .water_speed_kn = fit->solution[2]};
}

/// One step: what to add to the unknowns, from the misses in track and speed, each in its own standard deviations.
std::optional<LeastSquares> step(const Motion& motion, std::span<const SatelliteReading> readings, Variation variation, const SatelliteAssumptions& assumptions) {
  Matrix design(2 * readings.size(), k_unknowns);
  std::vector<double> observed(2 * readings.size());
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const SatelliteReading& reading = readings[i];
    const double heading_deg = reading.heading.deg() + deviation_by(motion.coefficients_deg, reading.heading).deg + variation.deg;
    const Velocity ahead = along(heading_deg, 1);
    const Velocity ground = {motion.water_speed_kn * ahead.north_kn + motion.stream.north_kn, motion.water_speed_kn * ahead.east_kn + motion.stream.east_kn};
    const double speed_kn = std::hypot(ground.north_kn, ground.east_kn);
    constexpr double k_still_kn = 1e-6;
    if (speed_kn < k_still_kn) return std::nullopt;  // no track to speak of
    const std::size_t track = 2 * i, speed = track + 1;
    observed[track] = reduce_difference_deg(reading.track.deg() - direction_deg(ground)) / assumptions.track_sd_deg;
    observed[speed] = (reading.speed_kn - speed_kn) / assumptions.speed_sd_kn;
    const auto put = [&](std::size_t unknown, Velocity change) {
      const double turned_deg = (ground.north_kn * change.east_kn - ground.east_kn * change.north_kn) / (speed_kn * speed_kn) / k_degree_rad;
      const double faster_kn = (ground.north_kn * change.north_kn + ground.east_kn * change.east_kn) / speed_kn;
      design.at(track, unknown) = turned_deg / assumptions.track_sd_deg;
      design.at(speed, unknown) = faster_kn / assumptions.speed_sd_kn;
    };
    const double swung_kn = motion.water_speed_kn * k_degree_rad;  // to starboard, for a heading one degree further round
    const ByCoefficient factors = coefficient_factors(reading.heading);
    for (std::size_t k = 0; k < k_coefficient_count; ++k) put(k, {-ahead.east_kn * swung_kn * factors[k], ahead.north_kn * swung_kn * factors[k]});
    put(k_stream_north, {1, 0});
    put(k_stream_east, {0, 1});
    put(k_water_speed, ahead);
  }
  return least_squares(design, observed);
}

void move(Motion& motion, const LeastSquares& by) {
  for (std::size_t k = 0; k < k_coefficient_count; ++k) motion.coefficients_deg[k] += by.solution[k];
  motion.stream.north_kn += by.solution[k_stream_north];
  motion.stream.east_kn += by.solution[k_stream_east];
  motion.water_speed_kn += by.solution[k_water_speed];
}

bool is_small(const LeastSquares& by) {
  constexpr double k_small = 1e-11;  // degrees and knots
  return std::all_of(by.solution.begin(), by.solution.end(), [](double change) { return std::abs(change) < k_small; });
}

/// A reading has two rows; the one that misses more tells.
std::vector<Misfit> one_a_reading(const std::vector<Misfit>& rows) {
  std::vector<Misfit> misfits;
  for (std::size_t i = 0; i + 1 < rows.size(); i += 2) {
    const auto size = [&](std::size_t row) { return std::abs(rows[row].studentised.value_or(0)); };
    misfits.push_back(rows[size(i) >= size(i + 1) ? i : i + 1]);
  }
  return misfits;
}

}  // namespace

Result<SatelliteSwing> fit_satellite_swing(std::span<const SatelliteReading> readings, Variation variation, const SatelliteAssumptions& assumptions) {
  const auto count = static_cast<double>(readings.size());
  if (readings.size() < k_least_satellite_readings) return Problem{.fault = Fault::too_few_readings, .numbers = {count, k_least_satellite_readings}};
  const Problem no_answer{.fault = Fault::headings_too_close, .numbers = {count}};
  std::optional<Motion> motion = first_guess(readings, variation);
  if (!motion) return no_answer;
  std::optional<LeastSquares> last;
  for (int i = 0; i < 50 && !(last && is_small(*last)); ++i) {
    last = step(*motion, readings, variation, assumptions);
    if (!last) return no_answer;
    move(*motion, *last);
  }
  if (!is_small(*last) || motion->water_speed_kn <= 0) return no_answer;

  SatelliteSwing swing;
  swing.speed_through_water_kn = motion->water_speed_kn;
  swing.set = TrueDirection(direction_deg(motion->stream));
  swing.drift_kn = std::hypot(motion->stream.north_kn, motion->stream.east_kn);

  SwingFit& fit = swing.fit;
  fit.degrees_of_freedom = static_cast<int>(2 * readings.size() - k_unknowns);
  const double variance = last->squares / fit.degrees_of_freedom;  // in units of what was assumed of a reading
  fit.reading_sd_deg = std::sqrt(variance) * assumptions.track_sd_deg;
  fit.reference_sd_deg = assumptions.variation_sd_deg;
  // Headings are judged by readings as bad as assumed at least: those that agree by luck support nothing more.
  const double judged = std::max(variance, 1.0);
  for (std::size_t i = 0; i < k_coefficient_count; ++i)
    if (std::sqrt(judged * last->cofactors.at(i, i)) > k_largest_coefficient_se_deg) return no_answer;
  for (const SatelliteReading& reading : readings) fit.covered_from_deg.push_back(reading.heading.deg());
  fit.take(k_coefficients, motion->coefficients_deg, last->cofactors, variance);
  fit.misfits = one_a_reading(misfits_of(*last));
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const SatelliteReading& reading = readings[i];
    const Velocity ground = along(reading.track.deg(), reading.speed_kn);
    const Velocity through_water = {ground.north_kn - motion->stream.north_kn, ground.east_kn - motion->stream.east_kn};
    const double deviation_deg = reduce_difference_deg(direction_deg(through_water) - variation.deg - reading.heading.deg());
    swing.deviations.push_back({.deg = deviation_deg});
    fit.misfits[i].miss_deg = reduce_difference_deg(deviation_deg - fit.at(reading.heading).deg);
  }
  return swing;
}

}  // namespace fogsheet
