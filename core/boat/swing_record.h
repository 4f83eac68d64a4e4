// From a swing as it was noted to what it says: the deviation of each row, the coefficients with their errors, what the rows
// can't be; and the card that a log entry gives.
#pragma once

#include <optional>
#include <vector>

#include "core/boat/boat.h"
#include "core/boat/kept_card.h"
#include "core/compass/compass_check.h"
#include "core/compass/satellite_swing.h"
#include "core/compass/swing_findings.h"
#include "core/compass/swing_fit.h"

namespace fogsheet {

/// One sigma of a reading as far as nothing tells better: a steady boat in a calm, read to half a degree.
/// Common practice, no source.
inline constexpr double k_usual_reading_sd_deg = 1;

/// Every how many degrees a kept card has a point.
inline constexpr int k_kept_card_step_deg = 10;

struct SwingWorked {
  std::vector<std::optional<Deviation>> deviations;  // of each row; none where something it needs was not noted
  std::vector<std::size_t> counted;                  // the rows that were fitted: complete, and not left out; fit.misfits goes by these
  SwingFit fit;
  SwingFindings findings;
  std::optional<MagneticDirection> mean_bearing;     // unknown_object: what the object's bearing was taken to be
  std::optional<SatelliteSwing> over_ground;         // satellite: stream and speed that were found along
};

/// Deviation of each row, as far as it can be told by itself; none at all for a satellite swing, whose stream must be known.
std::vector<std::optional<Deviation>> deviations_of(const Swing& swing);

/// Faults: too_few_readings, headings_too_close, those of fit_satellite_swing.
Result<SwingWorked> work_out(const Swing& swing);

struct CheckWorked {
  std::vector<std::size_t> counted;  // the rows that were taken: complete, and not left out; those of `check` go by these
  CompassCheck check;
};

/// Empty when no row is complete.
std::optional<CheckWorked> work_out(const Check& check);

/// Why a row can't be as it is noted, beside the others. Empty when it can. @param row an index. Faults: heading_twice (numbers:
/// the heading; same way of turning), reading_reversed (numbers: reading, its reciprocal), deviation_too_large (numbers: the
/// deviation it would make, the most).
std::optional<Problem> row_problem(const Swing& swing, std::size_t row);
std::optional<Problem> row_problem(const Check& check, std::size_t row);

/// The magnetic direction of a trusted bearing.
MagneticDirection magnetic_of(double deg, Reference reference, double variation_deg);

/// The card that a log entry gives: of a swing each k_kept_card_step_deg where its readings cover the circle, of a typed card its
/// own entries. Faults: too_few_readings, headings_too_close, no_card (the entry is of another kind), number_out_of_range
/// ("deviation").
Result<KeptCard> card_from(const Boat& boat, const Compass& compass, const LogEntry& entry);

/// The user's word that there is no deviation.
KeptCard nought_card(const Boat& boat, const Compass& compass, Date date);

/// The latest entry (by date, then as entered) that gives a card and after which the compass was not adjusted.
const LogEntry* latest_card(const Compass& compass);

/// The headings a swing is steered through at first: each 45 degrees from north.
std::vector<SwingRow> eight_headings();

/// The whole degree in the middle of the widest stretch without a heading; 0 for no rows.
double widest_gap_middle_deg(const Swing& swing);

}  // namespace fogsheet
