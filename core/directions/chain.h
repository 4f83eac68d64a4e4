// The chain true, variation, magnetic, deviation, compass, in both orders, as rows of a sum that adds up on screen.
// Each row is rounded before it is used (rounding.h). Core gives figures and codes; the words are shell's.
#pragma once

#include <optional>
#include <vector>

#include "core/directions/deviation_card.h"
#include "core/directions/directions.h"
#include "core/directions/leeway.h"
#include "core/directions/rounding.h"

namespace fogsheet {

/// From the ground to the compass. Every second one is a correction, and each direction is the one below it plus the
/// correction between: ground track = water track + stream, water track = heading + leeway, true = magnetic + variation,
/// magnetic = compass + deviation.
enum class ChainTerm { ground_track, stream, water_track, leeway, true_direction, variation, magnetic_direction, deviation, compass_direction };

/// One row of the sum. A direction row holds [0, 360); a correction row holds the signed correction, east positive
/// (stream and leeway: positive to starboard).
struct ChainRow {
  ChainTerm term;
  double shown_deg = 0;  // rounded: what stands on screen
  double exact_deg = 0;  // unrounded
  int applied_sign = 0;  // corrections: +1 when its size is added to the direction above, -1 when taken away, 0 when it is nought
  /// Directions after a correction: the value when every term is rounded to tenths instead, in [0, 360). Set exactly when
  /// rounding has moved the shown value by 0.75 deg or more from the unrounded one.
  std::optional<double> by_tenths_deg;
};

/// What the deviation came to. `one`: its row stands. `none`: the card has a gap there; `several`: more than one compass
/// heading is that magnetic one, since the card's deviation falls by more than a degree a degree.
enum class DeviationAnswer { not_entered, one, none, several };

struct Chain {
  std::vector<ChainRow> rows;  // in the order in which they are added up; they end before a deviation that has no one answer
  bool deviation_entered = false;
  DeviationAnswer deviation = DeviationAnswer::not_entered;
  std::vector<CompassDirection> candidates;  // the compass headings when there are several
};

/// The row of a term; null where the chain has none.
const ChainRow* row_of(const Chain& chain, ChainTerm term);

/// What lies between ground and compass. What is not set has no row; a chain begins or ends at the outermost that is.
struct ChainCorrections {
  std::optional<double> stream_deg;  // ground track seen from the water track, positive to starboard
  std::optional<Leeway> leeway;
  Variation variation;
  std::optional<Deviation> deviation;   // a known one: for the ship's head, not the thing seen; or nought, if the user says so
  const DeviationCard* card = nullptr;  // the boat's, for headings, where no deviation is given; must outlive the call
};

/// Down the list: ground track (where a stream is set) or water track (where a leeway is) or true direction -> ... ->
/// magnetic, and on to the compass where a deviation or a card is given.
Chain chain_to_compass(TrueDirection direction, const ChainCorrections& corrections, Rounding rounding);

/// magnetic -> compass. Variation, leeway and stream have no part in it.
Chain chain_to_compass(MagneticDirection direction, const ChainCorrections& corrections, Rounding rounding);

/// Up the list: compass -> magnetic -> true -> water track and ground track where they are set. Rows: the compass direction
/// alone where deviation is not entered or has no answer.
Chain chain_from_compass(CompassDirection direction, const ChainCorrections& corrections, Rounding rounding);

/// true -> magnetic, deviation not entered: rows true, variation, magnetic.
Chain chain_from_true(TrueDirection course, Variation variation, Rounding rounding);

/// As far as the variation is known: without one, the row true alone. With a card on to the compass: `course` is the ship's head.
Chain chain_from_true(TrueDirection course, const std::optional<Variation>& variation, Rounding rounding, const DeviationCard* card = nullptr);

/// magnetic -> true: rows magnetic, variation, true.
Chain chain_from_magnetic(MagneticDirection bearing, Variation variation, Rounding rounding);

}  // namespace fogsheet
