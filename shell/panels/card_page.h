// A compass's deviation card on one printed page: whose, when, where, how, how good, when due again; the curve; the card by
// compass heading and by magnetic heading. A function of what it is given, so that it prints whatever card is at hand.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/boat/swing_record.h"
#include "core/directions/rounding.h"
#include "core/figure/deviation_curve.h"
#include "shell/panels/panel.h"

namespace fogsheet {

/// What a swung card was made with.
struct SwingUsed {
  SwingMethod method = SwingMethod::trusted_bearings;
  std::string place;              // may be empty
  std::string object;             // may be empty
  std::optional<double> object_nm = {};
  std::optional<double> variation_deg = {};  // east positive; none where the bearings were magnetic
  double variation_sd_deg = 0;
  std::string variation_source;   // "by WMM2025 for 2026-05-12"; may be empty
  SwingFit fit;
};

struct CardPage {
  KeptCard card;                         // boat, compass, date, deviations, field: as courses are made by it
  std::optional<SwingUsed> swing = {};   // of a swung card
  std::string by = {};                   // whose card was typed in; may be empty
  DeviationCurve curve = {};
  int step_deg = 10;                     // from row to row: 10 or 15
  Rounding rounding = Rounding::whole_degrees;
};

/// What to print of a log entry that gives a card. Faults: those of card_from. @param variation_source may be empty
Result<CardPage> card_page_of(const Boat& boat, const Compass& compass, const LogEntry& entry, std::string variation_source);

/// In PanelPlace::page.
Panel card_page(const CardPage& page);

/// A card is made anew so many years after the swing at the latest. Common practice, no source.
inline constexpr int k_card_good_for_years = 2;
/// That day; the last of February for a 29th. @param made up to the year 9997
Date card_due(Date made);

}  // namespace fogsheet
