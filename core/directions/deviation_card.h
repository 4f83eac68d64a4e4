// A boat's deviation card: the deviation for compass headings, straight lines between its entries, and the way back from
// magnetic to compass, which is solved, since deviation goes by the ship's head by compass and not by the magnetic one.
#pragma once

#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/directions/directions.h"

namespace fogsheet {

struct DeviationEntry {
  CompassDirection heading;
  Deviation deviation;

  bool operator==(const DeviationEntry&) const = default;
};

/// Entries further apart than this are not joined: a straight line over more than a quarter of the circle is a guess, and
/// such a card has no deviation there.
inline constexpr double k_widest_card_gap_deg = 90;

class DeviationCard {
 public:
  /// @param entries in any order, deviations in (-180, 180). Faults: number_missing (no entry), number_out_of_range,
  /// card_heading_twice.
  static Result<DeviationCard> make(std::vector<DeviationEntry> entries);

  /// In order of heading.
  const std::vector<DeviationEntry>& entries() const { return entries_; }

  /// Straight line between the entries on either side, round the circle. Empty in a gap.
  std::optional<Deviation> at(CompassDirection heading) const;

  /// Deviation of the nearest entry, as some handbooks do it; of two equally near ones the clockwise one.
  Deviation nearest(CompassDirection heading) const;

  /// Every compass heading that is that magnetic one, each once, in order. One on any card that is good to use; several
  /// where deviation falls by more than a degree a degree; none in a gap. Where the card holds the magnetic heading over a
  /// whole stretch, both ends of it.
  std::vector<CompassDirection> compass_for(MagneticDirection heading) const;

  bool operator==(const DeviationCard&) const = default;

 private:
  explicit DeviationCard(std::vector<DeviationEntry> entries) : entries_(std::move(entries)) {}

  // From an entry clockwise to the next one, the last one's being the first again.
  struct Stretch {
    double from_deg, width_deg;
    double from_deviation_deg, to_deviation_deg;
  };
  Stretch stretch(std::size_t index) const;

  std::vector<DeviationEntry> entries_;
};

}  // namespace fogsheet
