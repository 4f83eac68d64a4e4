// Cards to print: of a swing with a reading left out and one that does not belong, of an adjuster, of a compass so bad that some
// headings have two answers or none.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "core/compass/swing_fit.h"
#include "shell/panels/card_page.h"

namespace fogsheet::sample {

/// @param coefficients_deg what the readings are of, but for a few tenths
inline CardPage swung_card(const ByCoefficient& coefficients_deg, int headings, double from_deg = 0, double to_deg = 360) {
  constexpr double k_misses_deg[] = {0.3, -0.4, 0.2, 0.1, -0.5, 0.4, -0.1, -0.2, 0.3, -0.3, 0.1, 0.2};
  std::vector<DeviationReading> readings;
  for (int i = 0; i < headings; ++i) {
    const CompassDirection heading(from_deg + (to_deg - from_deg) * i / headings);
    readings.push_back({heading, {deviation_by(coefficients_deg, heading).deg + k_misses_deg[i % 12]}});
  }
  readings[static_cast<std::size_t>(headings * 7 / 12)].deviation.deg += 4.6;
  const std::vector<DeviationReading> left_out = {{CompassDirection(255), {-14}}};
  SwingFit fit = *fit_swing(readings, {.reading_sd_deg = 1, .reference_sd_deg = 0.3});

  CardPage page{.card = {.boat = "Small Hours", .compass = "steering compass", .date = {.year = 2026, .month = 5, .day = 12}, .field = CardField{.horizontal_nt = 23'412, .inclination_deg = 59.3}}};
  for (int deg = 0; deg < 360; deg += 10) {
    const CompassDirection heading(deg);
    const auto hundredths = [](double value) { return std::round(value * 100) / 100; };
    if (fit.covers(heading)) page.card.points.push_back({.heading_deg = static_cast<double>(deg), .deviation_deg = hundredths(fit.at(heading).deg), .sd_deg = hundredths(fit.one_sigma_factor() * fit.sd_at_deg(heading))});
  }
  page.curve = curve_of(fit, readings, left_out);
  page.swing = SwingUsed{.method = SwingMethod::known_object, .place = "in the roads off Pellow Quay, flat calm, gear stowed as for sea", .object = "Tolver Light, 3.1 nm off", .variation_deg = -9.42, .variation_sd_deg = 0.4,
                         .variation_source = "by WMM2025 for 2026-05-12", .fit = std::move(fit)};
  return page;
}

inline CardPage typed_card() {
  CardPage page{.card = {.boat = "Small Hours", .compass = "steering compass", .date = {.year = 2024, .month = 2, .day = 29}, .source = CardSource::typed}, .by = "an adjuster in Pellow"};
  constexpr double k_deviations_deg[] = {-2, 3, 4, 4.5, 4, 2, -3.5, -5};
  for (int i = 0; i < 8; ++i) page.card.points.push_back({.heading_deg = 45.0 * i, .deviation_deg = k_deviations_deg[i]});
  page.curve = curve_of(page.card);
  return page;
}

/// "swung", "typed", "steep" or "part" (of the circle).
inline CardPage card_named(const std::string& name) {
  if (name == "typed") return typed_card();
  if (name == "steep") return swung_card({0, -40, 0, -14, 0}, 16);
  if (name == "part") return swung_card({1, 4, -3, 1, 0.5}, 8, 300, 480);
  return swung_card({0.8, 3.7, -3.6, 1.7, 0.7}, 12);
}

}  // namespace fogsheet::sample
