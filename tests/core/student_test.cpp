#include "core/base/student.h"

#include <cmath>
#include <initializer_list>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("Student's t agrees with printed tables") {
  // Value from memory: Abramowitz and Stegun, table 26.10, as in every handbook of statistics; printed to three decimals.
  struct Case { double below; int degrees_of_freedom; double t; };
  constexpr Case k_cases[] = {{0.975, 1, 12.706}, {0.975, 2, 4.303}, {0.975, 3, 3.182}, {0.975, 4, 2.776}, {0.975, 5, 2.571}, {0.975, 10, 2.228},
                              {0.975, 30, 2.042}, {0.95, 1, 6.314}, {0.95, 2, 2.920},  {0.95, 7, 1.895},  {0.95, 20, 1.725}, {0.995, 3, 5.841},
                              {0.995, 8, 3.355},  {0.995, 120, 2.617}, {0.90, 4, 1.533}, {0.75, 6, 0.718}};
  for (const Case& c : k_cases) {
    CAPTURE(c.below);
    CAPTURE(c.degrees_of_freedom);
    CHECK(std::abs(student_quantile(c.below, c.degrees_of_freedom) - c.t) <= 0.0005001);
    CHECK(std::abs(student_quantile(1 - c.below, c.degrees_of_freedom) + c.t) <= 0.0005001);
  }
}

TEST_CASE("Student's t: share and quantile are each other's way back, and it becomes normal") {
  Random random(72);
  for (int i = 0; i < 500; ++i) {
    const int freedom = static_cast<int>(random.whole(1, 60));
    const double share = random.uniform(0.001, 0.999);
    CHECK(std::abs(student_probability(student_quantile(share, freedom), freedom) - share) <= 1e-11);
  }
  CHECK(student_probability(0, 5) == 0.5);
  CHECK(std::abs(student_quantile(0.9, 100000) - normal_quantile(0.9)) <= 1e-4);
  CHECK(one_sigma_student(3) > one_sigma_student(19));
  CHECK(std::abs(one_sigma_student(100000) - 1) <= 1e-4);
}

TEST_CASE("Student's t has the cases that can be written down") {
  constexpr double k_pi = 3.14159265358979323846;
  for (const double t : {-7.0, -1.0, -0.2, 0.4, 2.0, 30.0}) {
    CHECK(std::abs(student_probability(t, 1) - (0.5 + std::atan(t) / k_pi)) <= 1e-15);           // Cauchy's
    CHECK(std::abs(student_probability(t, 2) - (0.5 + t / (2 * std::sqrt(2 + t * t)))) <= 1e-15);
  }
}
