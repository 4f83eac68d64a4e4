#include "core/boat/swing_record.h"

#include <algorithm>
#include <cmath>

#include "core/compass/bearings_swung.h"
#include "core/directions/circular_mean.h"
#include "core/formats/boat_fields.h"

namespace fogsheet {
namespace {

bool is_complete(const Swing& swing, const SwingRow& row) {
  if (!row.read_deg) return false;
  switch (swing.method) {
    case SwingMethod::trusted_bearings: return row.trusted_deg.has_value();
    case SwingMethod::known_object:
    case SwingMethod::relative_bearing: return swing.object_deg.has_value();
    case SwingMethod::unknown_object: return true;
    case SwingMethod::satellite: return row.speed_kn.has_value();
  }
  return false;
}

/// The object's magnetic bearing as the mean of what was read: whatever is constant in the deviation goes into it.
std::optional<MagneticDirection> mean_bearing(const Swing& swing) {
  std::vector<double> read;
  for (const SwingRow& row : swing.rows)
    if (row.read_deg && !row.left_out) read.push_back(*row.read_deg);
  const std::optional<CircularMean> mean = circular_mean(read);
  return mean ? std::optional(MagneticDirection(mean->mean_deg)) : std::nullopt;
}

std::optional<MagneticDirection> bearing_for(const Swing& swing, const SwingRow& row, const std::optional<MagneticDirection>& mean) {
  if (swing.method == SwingMethod::unknown_object) return mean;
  const std::optional<double>& deg = swing.method == SwingMethod::trusted_bearings ? row.trusted_deg : swing.object_deg;
  return deg ? std::optional(magnetic_of(*deg, swing.reference, swing.variation_deg)) : std::nullopt;
}

std::optional<Problem> too_large(Deviation deviation, double read_deg) {
  if (std::abs(deviation.deg) <= k_largest_plain_deviation_deg) return std::nullopt;
  if (as_reciprocal(deviation)) return Problem{.fault = Fault::reading_reversed, .numbers = {read_deg, CompassDirection(read_deg).reciprocal().deg()}};
  return Problem{.fault = Fault::deviation_too_large, .numbers = {deviation.deg, k_largest_plain_deviation_deg}};
}

std::optional<CheckedBearing> checked_bearing(const Check& check, const CheckRow& row) {
  if (!row.trusted_deg || !row.read_deg) return std::nullopt;
  return CheckedBearing{magnetic_of(*row.trusted_deg, check.reference, check.variation_deg), CompassDirection(*row.read_deg)};
}

KeptCard card_head(const Boat& boat, const Compass& compass, Date date, CardSource source) {
  return {.boat = boat.name, .compass = compass.name, .date = date, .source = source, .points = {}};
}

Result<KeptCard> card_of(const Swing& swing, KeptCard head) {
  const Result<SwingWorked> worked = work_out(swing);
  if (!worked) return worked.problem();
  const Result<DeviationCard> card = worked->fit.card(k_kept_card_step_deg);
  if (!card) return card.problem();
  const double widened = worked->fit.one_sigma_factor();
  for (const DeviationEntry& entry : card->entries())
    head.points.push_back({entry.heading.deg(), entry.deviation.deg, std::min(worked->fit.sd_at_deg(entry.heading) * widened, k_most_card_deviation_deg)});
  head.field = swing.field;
  return as_kept(std::move(head));
}

Result<KeptCard> card_of(const TypedCard& typed, KeptCard head) {
  if (typed.entries.empty()) return Problem{.fault = Fault::too_few_readings, .numbers = {0, 1}};
  for (const DeviationEntry& entry : typed.entries) head.points.push_back({entry.heading.deg(), entry.deviation.deg});
  head.source = CardSource::typed;
  head.field = typed.field;
  return as_kept(std::move(head));
}

bool gives_card(const LogEntry& entry) {
  if (const auto* swing = std::get_if<Swing>(&entry.what)) {
    const Result<SwingWorked> worked = work_out(*swing);
    return worked && worked->fit.card(k_kept_card_step_deg).ok();
  }
  const auto* typed = std::get_if<TypedCard>(&entry.what);
  return typed && !typed->entries.empty();
}

}  // namespace

MagneticDirection magnetic_of(double deg, Reference reference, double variation_deg) {
  return reference == Reference::true_north ? to_magnetic(TrueDirection(deg), {.deg = variation_deg}) : MagneticDirection(deg);
}

std::vector<std::optional<Deviation>> deviations_of(const Swing& swing) {
  std::vector<std::optional<Deviation>> deviations(swing.rows.size());
  if (swing.method == SwingMethod::satellite) return deviations;
  const std::optional<MagneticDirection> mean = swing.method == SwingMethod::unknown_object ? mean_bearing(swing) : std::nullopt;
  for (std::size_t i = 0; i < swing.rows.size(); ++i) {
    const SwingRow& row = swing.rows[i];
    const std::optional<MagneticDirection> bearing = bearing_for(swing, row, mean);
    if (!is_complete(swing, row) || !bearing) continue;
    deviations[i] = swing.method == SwingMethod::relative_bearing ? deviation_of_relative(*bearing, CompassDirection(row.heading_deg), *row.read_deg)
                                                                  : deviation_between(*bearing, CompassDirection(*row.read_deg));
  }
  return deviations;
}

Result<SwingWorked> work_out(const Swing& swing) {
  SwingWorked worked;
  worked.deviations = deviations_of(swing);
  for (std::size_t i = 0; i < swing.rows.size(); ++i)
    if (is_complete(swing, swing.rows[i]) && !swing.rows[i].left_out) worked.counted.push_back(i);

  if (swing.method == SwingMethod::satellite) {
    std::vector<SatelliteReading> readings;
    for (const std::size_t i : worked.counted) {
      const SwingRow& row = swing.rows[i];
      readings.push_back({CompassDirection(row.heading_deg), TrueDirection(*row.read_deg), *row.speed_kn});
    }
    const Result<SatelliteSwing> fitted = fit_satellite_swing(readings, {.deg = swing.variation_deg}, {.variation_sd_deg = swing.variation_sd_deg});
    if (!fitted) return fitted.problem();
    for (std::size_t i = 0; i < worked.counted.size(); ++i) worked.deviations[worked.counted[i]] = fitted->deviations[i];
    worked.fit = fitted->fit;
    worked.over_ground = *fitted;
  } else {
    std::erase_if(worked.counted, [&](std::size_t i) { return !worked.deviations[i]; });  // of an unknown object whose bearings cancel
    std::vector<DeviationReading> readings;
    for (const std::size_t i : worked.counted) readings.push_back({CompassDirection(swing.rows[i].heading_deg), *worked.deviations[i]});
    const bool known = swing.method != SwingMethod::unknown_object;
    if (!known) worked.mean_bearing = mean_bearing(swing);
    const bool by_variation = swing.reference == Reference::true_north;
    const Result<SwingFit> fitted = fit_swing(readings, {.reading_sd_deg = k_usual_reading_sd_deg, .reference_sd_deg = known && by_variation ? swing.variation_sd_deg : 0, .bearing_known = known});
    if (!fitted) return fitted.problem();
    worked.fit = *fitted;
  }
  worked.findings = findings_of(worked.fit);
  return worked;
}

std::optional<Problem> row_problem(const Swing& swing, std::size_t index) {
  const SwingRow& row = swing.rows[index];
  for (std::size_t i = 0; i < swing.rows.size(); ++i) {
    const SwingRow& other = swing.rows[i];
    if (i != index && other.heading_deg == row.heading_deg && other.turning == row.turning) return Problem{.fault = Fault::heading_twice, .numbers = {row.heading_deg}};
  }
  if (!row.read_deg) return std::nullopt;
  if (swing.method == SwingMethod::satellite) {
    const double track_off = reduce_difference_deg(*row.read_deg - swing.variation_deg - row.heading_deg);
    const bool backwards = std::abs(track_off) > 180 - k_largest_plain_deviation_deg;
    return backwards ? std::optional(Problem{.fault = Fault::reading_reversed, .numbers = {*row.read_deg, TrueDirection(*row.read_deg).reciprocal().deg()}}) : std::nullopt;
  }
  if (swing.method == SwingMethod::unknown_object) {
    Swing others = swing;
    others.rows.erase(others.rows.begin() + static_cast<std::ptrdiff_t>(index));
    const std::optional<MagneticDirection> mean = mean_bearing(others);
    return mean ? too_large(deviation_between(*mean, CompassDirection(*row.read_deg)), *row.read_deg) : std::nullopt;
  }
  const std::optional<Deviation> deviation = deviations_of(swing)[index];
  return deviation ? too_large(*deviation, *row.read_deg) : std::nullopt;
}

std::optional<Problem> row_problem(const Check& check, std::size_t index) {
  const std::optional<CheckedBearing> bearing = checked_bearing(check, check.rows[index]);
  return bearing ? too_large(deviation_between(bearing->trusted, bearing->read), bearing->read.deg()) : std::nullopt;
}

std::optional<CheckWorked> work_out(const Check& check) {
  CheckWorked worked;
  std::vector<CheckedBearing> bearings;
  for (std::size_t i = 0; i < check.rows.size(); ++i) {
    const std::optional<CheckedBearing> bearing = checked_bearing(check, check.rows[i]);
    if (!bearing || check.rows[i].left_out) continue;
    worked.counted.push_back(i);
    bearings.push_back(*bearing);
  }
  if (bearings.empty()) return std::nullopt;
  worked.check = check_compass(bearings, k_usual_reading_sd_deg);
  return worked;
}

Result<KeptCard> card_from(const Boat& boat, const Compass& compass, const LogEntry& entry) {
  const KeptCard head = card_head(boat, compass, entry.date, CardSource::swing);
  if (const auto* swing = std::get_if<Swing>(&entry.what)) return card_of(*swing, head);
  if (const auto* typed = std::get_if<TypedCard>(&entry.what)) return card_of(*typed, head);
  return Fault::no_card;
}

KeptCard nought_card(const Boat& boat, const Compass& compass, Date date) {
  KeptCard card = card_head(boat, compass, date, CardSource::nought);
  for (const double heading_deg : {0.0, 90.0, 180.0, 270.0}) card.points.push_back({heading_deg, 0, 0});
  return card;
}

const LogEntry* latest_card(const Compass& compass) {
  const LogEntry* latest = nullptr;
  const LogEntry* adjusted = nullptr;
  for (const LogEntry& entry : compass.log) {
    const auto* remark = std::get_if<Remark>(&entry.what);
    if (remark && remark->adjusted && (!adjusted || entry.date >= adjusted->date)) adjusted = &entry;
    if (gives_card(entry) && (!latest || entry.date >= latest->date)) latest = &entry;
  }
  return latest && adjusted && adjusted->date > latest->date ? nullptr : latest;
}

double widest_gap_middle_deg(const Swing& swing) {
  std::vector<double> headings;
  for (const SwingRow& row : swing.rows) headings.push_back(row.heading_deg);
  std::sort(headings.begin(), headings.end());
  double widest_deg = 0, middle_deg = 0;
  for (std::size_t i = 0; i < headings.size(); ++i) {
    const bool last = i + 1 == headings.size();
    const double gap_deg = last ? headings.front() + 360 - headings[i] : headings[i + 1] - headings[i];
    if (gap_deg <= widest_deg) continue;
    widest_deg = gap_deg;
    middle_deg = std::floor(headings[i] + gap_deg / 2);
  }
  return reduce_direction_deg(middle_deg);
}

std::vector<SwingRow> eight_headings() {
  std::vector<SwingRow> rows;
  for (int heading_deg = 0; heading_deg < 360; heading_deg += 45) rows.push_back({.heading_deg = static_cast<double>(heading_deg)});
  return rows;
}

}  // namespace fogsheet
