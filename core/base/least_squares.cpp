#include "core/base/least_squares.h"

#include <cmath>

#include "core/base/check.h"

namespace fogsheet {
namespace {

double column_product(const Matrix& a, std::size_t i, const Matrix& b, std::size_t j) {
  double sum = 0;
  for (std::size_t row = 0; row < a.rows; ++row) sum += a.at(row, i) * b.at(row, j);
  return sum;
}

/// Columns of one length at right angles to each other (in place of X), and the upper triangle R that gives X back.
/// False where a column depends on those before it.
bool orthogonalise(Matrix& q, Matrix& r) {
  constexpr double k_dependent = 1e-9;
  for (std::size_t column = 0; column < q.columns; ++column) {
    const double length = std::sqrt(column_product(q, column, q, column));
    for (int pass = 0; pass < 2; ++pass) {
      for (std::size_t before = 0; before < column; ++before) {
        const double share = column_product(q, before, q, column);
        r.at(before, column) += share;
        for (std::size_t row = 0; row < q.rows; ++row) q.at(row, column) -= share * q.at(row, before);
      }
    }
    const double left = std::sqrt(column_product(q, column, q, column));
    if (!(left > k_dependent * length)) return false;
    r.at(column, column) = left;
    for (std::size_t row = 0; row < q.rows; ++row) q.at(row, column) /= left;
  }
  return true;
}

/// Of an upper triangle without noughts on its diagonal.
Matrix inverse_of_triangle(const Matrix& r) {
  Matrix inverse(r.columns, r.columns);
  for (std::size_t column = 0; column < r.columns; ++column) {
    inverse.at(column, column) = 1 / r.at(column, column);
    for (std::size_t row = column; row-- > 0;) {
      double sum = 0;
      for (std::size_t k = row + 1; k <= column; ++k) sum += r.at(row, k) * inverse.at(k, column);
      inverse.at(row, column) = -sum / r.at(row, row);
    }
  }
  return inverse;
}

}  // namespace

std::optional<LeastSquares> least_squares(const Matrix& design, std::span<const double> observed) {
  SHEET_CHECK(design.columns > 0 && observed.size() == design.rows, "a least squares problem has its columns, and a value for each row");
  if (design.rows < design.columns) return std::nullopt;
  Matrix q = design;
  Matrix r(design.columns, design.columns);
  if (!orthogonalise(q, r)) return std::nullopt;

  LeastSquares fit{.solution = std::vector<double>(q.columns), .cofactors = Matrix(q.columns, q.columns), .residuals = {observed.begin(), observed.end()},
                   .leverages = std::vector<double>(q.rows), .squares = 0};
  const Matrix inverse = inverse_of_triangle(r);
  for (std::size_t column = 0; column < q.columns; ++column) {
    double share = 0;
    for (std::size_t row = 0; row < q.rows; ++row) share += q.at(row, column) * fit.residuals[row];
    for (std::size_t row = 0; row < q.rows; ++row) {
      fit.residuals[row] -= share * q.at(row, column);
      fit.leverages[row] += q.at(row, column) * q.at(row, column);
    }
    for (std::size_t k = 0; k < q.columns; ++k) fit.solution[k] += inverse.at(k, column) * share;
  }
  for (std::size_t i = 0; i < q.columns; ++i)
    for (std::size_t j = 0; j < q.columns; ++j)
      for (std::size_t k = 0; k < q.columns; ++k) fit.cofactors.at(i, j) += inverse.at(i, k) * inverse.at(j, k);
  for (const double residual : fit.residuals) fit.squares += residual * residual;
  return fit;
}

}  // namespace fogsheet
