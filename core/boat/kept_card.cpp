#include "core/boat/kept_card.h"

#include "core/base/check.h"

namespace fogsheet {

DeviationCard KeptCard::card() const {
  std::vector<DeviationEntry> entries;
  for (const KeptCardPoint& point : points) entries.push_back({CompassDirection(point.heading_deg), {.deg = point.deviation_deg}});
  Result<DeviationCard> made = DeviationCard::make(std::move(entries));
  SHEET_CHECK(made.ok(), "a kept card without points, or with two on one heading");
  return std::move(made).value();
}

double deviation_sd_deg(const KeptCard& card, CompassDirection heading) {
  // Standard errors lie between the points as deviations do: the same straight lines.
  std::vector<DeviationEntry> entries;
  for (const KeptCardPoint& point : card.points) {
    if (point.sd_deg <= 0) return k_unswung_sd_deg;
    entries.push_back({CompassDirection(point.heading_deg), {.deg = point.sd_deg}});
  }
  const Result<DeviationCard> spread = DeviationCard::make(std::move(entries));
  const std::optional<Deviation> there = spread ? spread->at(heading) : std::nullopt;
  return there ? there->deg : k_unswung_sd_deg;
}

}  // namespace fogsheet
