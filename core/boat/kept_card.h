// A compass's card as a sheet keeps it: frozen on a day, so that a course laid off yesterday does not change when the boat is
// swung again today; with what it is worth and where it was made.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/compass/card_place.h"
#include "core/directions/deviation_card.h"

namespace fogsheet {

/// Where a card's deviations come from. Their order is part of what is kept.
enum class CardSource {
  swing,
  typed,   // an adjuster's
  nought   // the user says that there is none
};

struct KeptCardPoint {
  double heading_deg = 0;    // by compass, [0, 360), whole degrees
  double deviation_deg = 0;  // [-60, 60], whole 0.01, east positive
  double sd_deg = 0;         // one sigma, [0, 60], whole 0.01; 0 when it is not known

  bool operator==(const KeptCardPoint&) const = default;
};

struct KeptCard {
  std::string boat;     // not empty
  std::string compass;  // not empty
  Date date;            // of the swing, or of the adjuster's card
  CardSource source = CardSource::swing;
  std::vector<KeptCardPoint> points;  // ascending headings, at least one
  std::optional<CardField> field = {};  // where it was made: H in whole nT, dip in whole 0.01 deg
  bool in_links = true;  // it goes along when the sheet is sent as a link

  bool operator==(const KeptCard&) const = default;

  DeviationCard card() const;
};

inline constexpr double k_most_card_deviation_deg = 60;

/// A course's standard deviation from not knowing the deviation: as the points give it (straight between them), else what
/// the design takes where there was no swing.
inline constexpr double k_unswung_sd_deg = 4;
double deviation_sd_deg(const KeptCard& card, CompassDirection heading);

}  // namespace fogsheet
