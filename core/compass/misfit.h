// Which of many readings does not belong: its residual in the standard errors of the fit made without it.
// Source: Draper and Smith, Applied Regression Analysis (3rd ed. 1998), chapter 8 (externally studentised residuals).
#pragma once

#include <optional>
#include <vector>

#include "core/base/least_squares.h"

namespace fogsheet {

struct Misfit {
  double miss_deg = 0;                // read less fitted
  std::optional<double> studentised;  // none with too few readings to judge it by, or where they agree without any error
  bool does_not_belong = false;       // less likely than 1 in 20 among so many readings, were they all good
};

/// One for each row of a fit, in the same order; miss_deg is the row's own residual.
std::vector<Misfit> misfits_of(const LeastSquares& fit);

}  // namespace fogsheet
