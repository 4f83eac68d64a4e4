// The chain true, variation, magnetic, deviation, compass, in both orders, as rows of a sum that adds up on screen.
// Each row is rounded before it is used (rounding.h). Core gives figures and codes; the words are shell's.
#pragma once

#include <optional>
#include <vector>

#include "core/directions/directions.h"
#include "core/directions/rounding.h"

namespace fogsheet {

/// From the ground to the compass. Every second one is a correction, and each direction is the one below it plus the
/// correction between: ground track = water track + stream, water track = heading + leeway, true = magnetic + variation,
/// magnetic = compass + deviation.
enum class ChainTerm {
  ground_track,
  stream,
  water_track,
  leeway,
  true_direction,
  variation,
  magnetic_direction,
  deviation,
  compass_direction
};

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

struct Chain {
  std::vector<ChainRow> rows;  // in the order in which they are added up
  bool deviation_entered = false;
};

/// true -> magnetic, deviation not entered: rows true, variation, magnetic.
Chain chain_from_true(TrueDirection course, Variation variation, Rounding rounding);

/// As far as the variation is known: without one, the row true alone.
Chain chain_from_true(TrueDirection course, const std::optional<Variation>& variation, Rounding rounding);

/// magnetic -> true: rows magnetic, variation, true.
Chain chain_from_magnetic(MagneticDirection bearing, Variation variation, Rounding rounding);

}  // namespace fogsheet
