#include "core/compass/misfit.h"

#include <algorithm>
#include <cmath>

#include "core/base/student.h"

namespace fogsheet {

std::vector<Misfit> misfits_of(const LeastSquares& fit) {
  const std::size_t count = fit.residuals.size();
  const int freedom_without = static_cast<int>(count) - static_cast<int>(fit.solution.size()) - 1;
  std::vector<Misfit> misfits(count);
  // Among many good readings some lie far out: each is judged at its share of 1 in 20, to both sides.
  const double bound = freedom_without >= 1 ? student_quantile(1 - 0.025 / static_cast<double>(count), freedom_without) : 0;
  for (std::size_t i = 0; i < count; ++i) {
    Misfit& misfit = misfits[i];
    misfit.miss_deg = fit.residuals[i];
    const double free_share = 1 - fit.leverages[i];
    constexpr double k_no_share = 1e-9;  // the curve goes through this reading whatever it is
    if (freedom_without < 1 || free_share < k_no_share) continue;
    const double squares_without = fit.squares - misfit.miss_deg * misfit.miss_deg / free_share;
    const double variance_without = std::max(squares_without, 0.0) / freedom_without;
    constexpr double k_exact = 1e-18;  // readings without any error: nothing to judge by
    if (variance_without < k_exact) continue;
    misfit.studentised = misfit.miss_deg / std::sqrt(variance_without * free_share);
    misfit.does_not_belong = std::abs(*misfit.studentised) > bound;
  }
  return misfits;
}

}  // namespace fogsheet
