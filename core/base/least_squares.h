// Linear least squares by orthogonal columns. Made for the few unknowns of a swing: full columns, no sparse ones.
// Source: Golub and Van Loan, Matrix Computations (4th ed. 2013), 5.2.8 (modified Gram-Schmidt), each column made orthogonal
// twice, which keeps it so to the last bits; Björck (1996), Numerical Methods for Least Squares Problems, 2.4.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace fogsheet {

/// A matrix of doubles, row by row.
struct Matrix {
  std::size_t rows = 0;
  std::size_t columns = 0;
  std::vector<double> values;

  Matrix() = default;
  Matrix(std::size_t row_count, std::size_t column_count) : rows(row_count), columns(column_count), values(row_count * column_count) {}
  double& at(std::size_t row, std::size_t column) { return values[row * columns + column]; }
  double at(std::size_t row, std::size_t column) const { return values[row * columns + column]; }
};

struct LeastSquares {
  std::vector<double> solution;   // one for each column
  Matrix cofactors;               // (X'X)^-1: times the variance of one observation, the covariance of the solution
  std::vector<double> residuals;  // observed less fitted, one for each row
  std::vector<double> leverages;  // in [0, 1]: how far each observation pulls its own fitted value
  double squares = 0;             // sum of the squared residuals
};

/// The b for which |X b - y| is least. Empty where columns depend on one another to a part in 10^9, or there are fewer rows
/// than columns. @param design X, finite, with at least one column; observed y, one for each row.
std::optional<LeastSquares> least_squares(const Matrix& design, std::span<const double> observed);

}  // namespace fogsheet
