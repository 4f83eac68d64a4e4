#include "core/base/random.h"

#include <cmath>

#include "core/base/check.h"

namespace fogsheet {

namespace {

std::uint64_t rotated_left(std::uint64_t bits, int by) { return (bits << by) | (bits >> (64 - by)); }

std::uint64_t splitmix64(std::uint64_t& state) {
  state += 0x9e3779b97f4a7c15u;
  std::uint64_t z = state;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return z ^ (z >> 31);
}

// ln of a positive normal number by 2 artanh((m - 1) / (m + 1)), m in [1/sqrt 2, sqrt 2): the library's differs between
// systems in the last digit.
double exact_log(double x) {
  constexpr double k_ln2 = 0.69314718055994530942;
  constexpr double k_sqrt_half = 0.70710678118654752440;
  constexpr int k_terms = 13;  // leaves under 1e-19
  int exponent = 0;
  double mantissa = std::frexp(x, &exponent);
  if (mantissa < k_sqrt_half) {
    mantissa *= 2;
    --exponent;
  }
  const double t = (mantissa - 1) / (mantissa + 1);
  const double t2 = t * t;
  double series = 0;
  for (int k = k_terms - 1; k >= 0; --k) series = series * t2 + 1.0 / (2 * k + 1);
  return 2 * t * series + exponent * k_ln2;
}

template <int count>
double polynomial(const double (&coefficients)[count], double x) {
  double sum = 0;
  for (int i = count - 1; i >= 0; --i) sum = sum * x + coefficients[i];
  return sum;
}

}  // namespace

Random::Random(std::uint64_t seed) {
  for (std::uint64_t& word : state_) word = splitmix64(seed);
}

std::uint64_t Random::next() {
  const std::uint64_t result = rotated_left(state_[1] * 5, 7) * 9;
  const std::uint64_t shifted = state_[1] << 17;
  state_[2] ^= state_[0];
  state_[3] ^= state_[1];
  state_[1] ^= state_[2];
  state_[0] ^= state_[3];
  state_[2] ^= shifted;
  state_[3] = rotated_left(state_[3], 45);
  return result;
}

double Random::uniform() { return static_cast<double>(next() >> 11) * 0x1p-53; }

double Random::uniform(double least, double most) {
  const double drawn = least + uniform() * (most - least);
  return drawn < most ? drawn : least;  // the product may round up to the far end
}

std::int64_t Random::whole(std::int64_t least, std::int64_t most) {
  SHEET_CHECK(least <= most, "a range that is empty");
  const std::uint64_t span = static_cast<std::uint64_t>(most) - static_cast<std::uint64_t>(least) + 1;
  if (span == 0) return static_cast<std::int64_t>(next());
  // What is left over above the last whole multiple of the span would favour small numbers.
  const std::uint64_t limit = ~std::uint64_t{0} - (~std::uint64_t{0} % span + 1) % span;
  std::uint64_t drawn = next();
  while (drawn > limit) drawn = next();
  return static_cast<std::int64_t>(static_cast<std::uint64_t>(least) + drawn % span);
}

double Random::normal() {
  // Half a step keeps nought out.
  return normal_quantile((static_cast<double>(next() >> 12) + 0.5) * 0x1p-52);
}

double normal_quantile(double probability) {
  SHEET_CHECK(probability > 0 && probability < 1, "a probability outside (0, 1)");
  static constexpr double k_a[] = {3.3871328727963666080e0,  1.3314166789178437745e+2, 1.9715909503065514427e+3, 1.3731693765509461125e+4,
                                   4.5921953931549871457e+4, 6.7265770927008700853e+4, 3.3430575583588128105e+4, 2.5090809287301226727e+3};
  static constexpr double k_b[] = {1.0,
                                   4.2313330701600911252e+1,
                                   6.8718700749205790830e+2,
                                   5.3941960214247511077e+3,
                                   2.1213794301586595867e+4,
                                   3.9307895800092710610e+4,
                                   2.8729085735721942674e+4,
                                   5.2264952788528545610e+3};
  static constexpr double k_c[] = {1.42343711074968357734e0, 4.63033784615654529590e0,  5.76949722146069140550e0,  3.64784832476320460504e0,
                                   1.27045825245236838258e0, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4};
  static constexpr double k_d[] = {1.0,
                                   2.05319162663775882187e0,
                                   1.67638483018380384940e0,
                                   6.89767334985100004550e-1,
                                   1.48103976427480074590e-1,
                                   1.51986665636164571966e-2,
                                   5.47593808499534494600e-4,
                                   1.05075007164441684324e-9};
  static constexpr double k_e[] = {6.65790464350110377720e0,  5.46378491116411436990e0,  1.78482653991729133580e0,  2.96560571828504891230e-1,
                                   2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7};
  static constexpr double k_f[] = {1.0,
                                   5.99832206555887937690e-1,
                                   1.36929880922735805310e-1,
                                   1.48753612908506148525e-2,
                                   7.86869131145613259100e-4,
                                   1.84631831751005468180e-5,
                                   1.42151175831644588870e-7,
                                   2.04426310338993978564e-15};
  const double from_middle = probability - 0.5;
  if (std::abs(from_middle) <= 0.425) {
    const double r = 0.180625 - from_middle * from_middle;
    return from_middle * polynomial(k_a, r) / polynomial(k_b, r);
  }
  const double tail = from_middle < 0 ? probability : 1 - probability;
  const double r = std::sqrt(-exact_log(tail));
  const double size = r <= 5 ? polynomial(k_c, r - 1.6) / polynomial(k_d, r - 1.6) : polynomial(k_e, r - 5) / polynomial(k_f, r - 5);
  return from_middle < 0 ? -size : size;
}

}  // namespace fogsheet
