// Student's t: what a standard error that was itself estimated from few readings is worth.
#pragma once

namespace fogsheet {

/// The share of Student's distribution below t. @param degrees_of_freedom at least 1.
/// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (finite sums, exact).
double student_probability(double t, int degrees_of_freedom);

/// The t below which that share lies, to 1e-12 of its size or of 1. @param probability in (0, 1), to 1e-9 of its ends.
double student_quantile(double probability, int degrees_of_freedom);

/// The t so that an estimate plus or minus t standard errors covers the truth as often as one standard deviation of a normal
/// does (68.27 %); towards 1 as readings grow many.
double one_sigma_student(int degrees_of_freedom);

}  // namespace fogsheet
