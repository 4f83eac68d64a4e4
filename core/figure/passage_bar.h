// A passage as the sheet's own scale bar: chequered by miles, a turn's cross between legs, an open lozenge where the boat is.
#pragma once

#include <vector>

#include "core/figure/figure.h"

namespace fogsheet {

struct PassageBar {
  std::vector<double> turns_nm;  // from the start, ascending; the last is the whole
  double at_nm = 0;
};

inline constexpr double k_passage_bar_width = 346;  // of the figure, in its own units
inline constexpr double k_passage_bar_height = 34;

/// Nothing but the bar where the passage has no length.
Figure passage_bar(const PassageBar& bar);

}  // namespace fogsheet
