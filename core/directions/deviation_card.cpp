#include "core/directions/deviation_card.h"

#include <algorithm>
#include <cmath>

namespace fogsheet {

Result<DeviationCard> DeviationCard::make(std::vector<DeviationEntry> entries) {
  if (entries.empty()) return Problem{.fault = Fault::number_missing, .texts = {"deviation"}};
  for (const DeviationEntry& entry : entries)
    if (!(std::abs(entry.deviation.deg) < 180))
      return Problem{.fault = Fault::number_out_of_range, .texts = {"deviation"}, .numbers = {entry.deviation.deg, -180, 180}};
  std::sort(entries.begin(), entries.end(), [](const DeviationEntry& a, const DeviationEntry& b) { return a.heading.deg() < b.heading.deg(); });
  for (std::size_t i = 1; i < entries.size(); ++i)
    if (entries[i].heading == entries[i - 1].heading) return Problem{.fault = Fault::card_heading_twice, .numbers = {entries[i].heading.deg()}};
  return DeviationCard(std::move(entries));
}

DeviationCard::Stretch DeviationCard::stretch(std::size_t index) const {
  const DeviationEntry& from = entries_[index];
  const bool last = index + 1 == entries_.size();
  const DeviationEntry& to = entries_[last ? 0 : index + 1];
  return {.from_deg = from.heading.deg(),
          .width_deg = to.heading.deg() - from.heading.deg() + (last ? 360 : 0),
          .from_deviation_deg = from.deviation.deg,
          .to_deviation_deg = to.deviation.deg};
}

std::optional<Deviation> DeviationCard::at(CompassDirection heading) const {
  std::size_t index = entries_.size() - 1;  // headings before the first entry lie in the last stretch
  for (std::size_t i = 0; i < entries_.size() && entries_[i].heading.deg() <= heading.deg(); ++i) index = i;
  const Stretch s = stretch(index);
  const double along_deg = reduce_direction_deg(heading.deg() - s.from_deg);
  if (along_deg == 0) return Deviation{.deg = s.from_deviation_deg};
  if (s.width_deg > k_widest_card_gap_deg) return std::nullopt;
  return Deviation{.deg = s.from_deviation_deg + (s.to_deviation_deg - s.from_deviation_deg) * along_deg / s.width_deg};
}

Deviation DeviationCard::nearest(CompassDirection heading) const {
  const auto away_deg = [&](const DeviationEntry& entry) { return std::abs(reduce_difference_deg(entry.heading.deg() - heading.deg())); };
  const DeviationEntry* best = &entries_.front();
  for (const DeviationEntry& entry : entries_) {
    const bool clockwise = reduce_difference_deg(entry.heading.deg() - heading.deg()) > 0;
    if (away_deg(entry) < away_deg(*best) || (away_deg(entry) == away_deg(*best) && clockwise)) best = &entry;
  }
  return best->deviation;
}

std::vector<CompassDirection> DeviationCard::compass_for(MagneticDirection heading) const {
  std::vector<CompassDirection> found;
  for (std::size_t i = 0; i < entries_.size(); ++i) {
    const Stretch s = stretch(i);
    // Magnetic heading along the stretch, counted on from its start's: a straight line from nought to `gain`. Its start
    // belongs to it, its end to the next stretch.
    const double gain_deg = s.width_deg + s.to_deviation_deg - s.from_deviation_deg;
    const double wanted_deg = reduce_direction_deg(heading.deg() - (s.from_deg + s.from_deviation_deg));
    const bool joined = s.width_deg <= k_widest_card_gap_deg;
    if (wanted_deg == 0) found.emplace_back(s.from_deg);
    if (!joined) continue;
    for (double turn_deg = -720; turn_deg <= 720; turn_deg += 360) {
      const double reach_deg = wanted_deg + turn_deg;
      const bool inside = gain_deg > 0 ? reach_deg > 0 && reach_deg < gain_deg : reach_deg < 0 && reach_deg > gain_deg;
      if (inside) found.emplace_back(s.from_deg + s.width_deg * reach_deg / gain_deg);
    }
  }
  std::sort(found.begin(), found.end(), [](CompassDirection a, CompassDirection b) { return a.deg() < b.deg(); });
  return found;
}

}  // namespace fogsheet
