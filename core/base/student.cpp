#include "core/base/student.h"

#include <cmath>

#include "core/base/check.h"
#include "core/base/units.h"

namespace fogsheet {

double student_probability(double t, int degrees_of_freedom) {
  SHEET_CHECK(degrees_of_freedom >= 1, "Student's t has degrees of freedom");
  const double nu = degrees_of_freedom;
  const double theta = std::atan(t / std::sqrt(nu));
  const double cosine = std::cos(theta), sine = std::sin(theta);
  const bool odd = degrees_of_freedom % 2 == 1;
  // The finite series in powers of the cosine: from cos (odd) or 1 (even), each term the last times (k - 1) / k cos^2.
  double term = odd ? cosine : 1, sum = 0;
  for (int k = odd ? 3 : 2; k <= degrees_of_freedom; k += 2) {
    sum += term;
    term *= (k - 1.0) / k * cosine * cosine;
  }
  // How much lies within -t and t. For 1 degree of freedom the series is empty.
  const double within = odd ? 2 / k_pi * (theta + sine * sum) : sine * sum;
  return 0.5 + within / 2;
}

double student_quantile(double probability, int degrees_of_freedom) {
  SHEET_CHECK(probability > 0 && probability < 1, "a share lies between nought and one");
  const bool below = probability < 0.5;
  const double share = below ? 1 - probability : probability;
  double low = 0, high = 1;
  while (student_probability(high, degrees_of_freedom) < share) high *= 2;
  // Halving: slow and sure, and asked for a few times a swing.
  for (int i = 0; i < 200 && high - low > 1e-13 * (1 + high); ++i) {
    const double middle = (low + high) / 2;
    (student_probability(middle, degrees_of_freedom) < share ? low : high) = middle;
  }
  return below ? -(low + high) / 2 : (low + high) / 2;
}

double one_sigma_student(int degrees_of_freedom) {
  constexpr double k_one_sigma_below = 0.841344746068542949;  // of a normal distribution, below one standard deviation
  return student_quantile(k_one_sigma_below, degrees_of_freedom);
}

}  // namespace fogsheet
