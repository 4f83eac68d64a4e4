// Cards to print: of a swing with a reading left out and one that does not belong, of an adjuster, of a compass so bad that some
// headings have two answers or none.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "shell/panels/card_page.h"

namespace fogsheet::sample {

inline CardPage page_of(LogEntryKind what, Date date) {
  Boat boat{.name = "Small Hours", .compasses = {{.id = CompassId{1}, .name = "steering compass", .log = {{EntryId{2}, date, std::move(what)}}}}, .next_id = 3};
  return card_page_of(boat, boat.compasses[0], boat.compasses[0].log[0], "by WMM2025 for 2026-05-12").value();
}

/// @param coefficients_deg what the readings are of, but for a few tenths; @param from_deg, to_deg  the headings swung through
inline CardPage swung_card(const ByCoefficient& coefficients_deg, int headings, double from_deg = 0, double to_deg = 360) {
  constexpr double k_misses_deg[] = {0.3, -0.4, 0.2, 0.1, -0.5, 0.4, -0.1, -0.2, 0.3, -0.3, 0.1, 0.2};
  Swing swing{.method = SwingMethod::known_object, .place = "in the roads off Pellow Quay, flat calm, gear stowed as for sea", .object = "Tolver Light", .object_deg = 138.6, .reference = Reference::true_north,
              .variation_deg = -9.42, .variation_sd_deg = 0.4, .object_nm = 3.1, .field = CardField{.horizontal_nt = 23'412, .inclination_deg = 59.3}};
  const auto add = [&](double heading_deg, double deviation_deg, bool left_out) {
    const double read_deg = CompassDirection(138.6 + 9.42 - deviation_deg).deg();
    swing.rows.push_back({.heading_deg = CompassDirection(heading_deg).deg(), .read_deg = std::round(read_deg * 10) / 10, .left_out = left_out});
  };
  for (int i = 0; i < headings; ++i) {
    const double heading_deg = from_deg + (to_deg - from_deg) * i / headings;
    add(heading_deg, deviation_by(coefficients_deg, CompassDirection(heading_deg)).deg + k_misses_deg[i % 12] + (i == headings * 7 / 12 ? 4.6 : 0), false);
  }
  add(255, -14, true);
  return page_of(std::move(swing), {.year = 2026, .month = 5, .day = 12});
}

inline CardPage typed_card() {
  TypedCard typed{.by = "an adjuster in Pellow"};
  constexpr double k_deviations_deg[] = {-2, 3, 4, 4.5, 4, 2, -3.5, -5};
  for (int i = 0; i < 8; ++i) typed.entries.push_back({CompassDirection(45.0 * i), {k_deviations_deg[i]}});
  return page_of(std::move(typed), {.year = 2024, .month = 2, .day = 29});
}

/// "swung", "typed", "steep" or "part" (of the circle).
inline CardPage card_named(const std::string& name) {
  if (name == "typed") return typed_card();
  if (name == "steep") return swung_card({0, -40, 0, -14, 0}, 16);
  if (name == "part") return swung_card({1, 4, -3, 1, 0.5}, 8, 300, 480);
  return swung_card({0.8, 3.7, -3.6, 1.7, 0.7}, 12);
}

}  // namespace fogsheet::sample
