// The sheet that holds given places: two corners, or marks. Middle and scale follow from them and from the paper.
#pragma once

#include <span>

#include "core/base/result.h"
#include "core/sheet/projection.h"

namespace fogsheet {

struct FittedSheet {
  Position middle;
  double scale = 0;  // a round number in [25 000, 1 000 000]
};

/// The largest round scale at which all places lie inside the paper's neat line with `margin_mm` to spare, about the middle
/// of them on paper. Longitudes are taken the shortest way that holds them all, across 180 deg where that is shorter. Places
/// that all but coincide get 1:50 000. Round are multiples of 5 000 up to 200 000, of 10 000 up to 500 000, of 50 000 beyond.
/// Faults: entry_empty (no place at all), sheet_too_wide (numbers: the scale it would take, the bound).
Result<FittedSheet> sheet_holding(std::span<const Position> places, Paper paper, double margin_mm);

}  // namespace fogsheet
