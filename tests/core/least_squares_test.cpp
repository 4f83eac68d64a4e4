#include "core/base/least_squares.h"

#include <cmath>

#include "Eigen/Dense"
#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

Eigen::MatrixXd as_eigen(const Matrix& matrix) {
  Eigen::MatrixXd same(matrix.rows, matrix.columns);
  for (std::size_t i = 0; i < matrix.rows; ++i)
    for (std::size_t j = 0; j < matrix.columns; ++j) same(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) = matrix.at(i, j);
  return same;
}

}  // namespace

TEST_CASE("least squares agree with Eigen's singular values") {
  // Eigen: a general-purpose library of linear algebra; BDCSVD shares no step with orthogonal columns.
  Random random(71);
  double worst = 0;
  for (int i = 0; i < 300; ++i) {
    Matrix design(static_cast<std::size_t>(random.whole(8, 24)), static_cast<std::size_t>(random.whole(1, 8)));
    std::vector<double> observed(design.rows);
    for (double& value : design.values) value = random.normal();
    for (double& value : observed) value = random.uniform(-20, 20);
    const std::optional<LeastSquares> fit = least_squares(design, observed);
    REQUIRE(fit);

    const Eigen::MatrixXd x = as_eigen(design);
    const Eigen::VectorXd y = Eigen::Map<const Eigen::VectorXd>(observed.data(), static_cast<Eigen::Index>(observed.size()));
    const Eigen::VectorXd solution = x.bdcSvd(Eigen::ComputeThinU | Eigen::ComputeThinV).solve(y);
    const Eigen::MatrixXd cofactors = (x.transpose() * x).inverse(), hat = x * cofactors * x.transpose();
    const Eigen::VectorXd residuals = y - x * solution;
    for (std::size_t k = 0; k < design.columns; ++k) worst = std::max(worst, std::abs(fit->solution[k] - solution(static_cast<Eigen::Index>(k))));
    worst = std::max(worst, (as_eigen(fit->cofactors) - cofactors).cwiseAbs().maxCoeff() / (1 + cofactors.cwiseAbs().maxCoeff()));
    for (std::size_t row = 0; row < design.rows; ++row) {
      const auto at = static_cast<Eigen::Index>(row);
      worst = std::max({worst, std::abs(fit->residuals[row] - residuals(at)), std::abs(fit->leverages[row] - hat(at, at))});
    }
    worst = std::max(worst, std::abs(fit->squares - residuals.squaredNorm()) / (1 + fit->squares));
  }
  MESSAGE("largest difference from Eigen: ", worst);
  CHECK(worst <= 1e-9);  // condition numbers of a hundred or so, times the last bits
}

TEST_CASE("columns that depend on one another, and too few rows, have no least squares") {
  Matrix twice(4, 2);
  for (std::size_t row = 0; row < 4; ++row) {
    twice.at(row, 0) = static_cast<double>(row) + 1;
    twice.at(row, 1) = 3 * twice.at(row, 0);
  }
  const std::vector<double> four = {1, 2, 3, 4};
  CHECK_FALSE(least_squares(twice, four));
  CHECK_FALSE(least_squares(Matrix(4, 1), four));  // a column of noughts
  const std::vector<double> one = {1};
  CHECK_FALSE(least_squares(Matrix(1, 2), one));
}
