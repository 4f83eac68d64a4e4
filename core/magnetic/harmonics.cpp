#include "core/magnetic/harmonics.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace fogsheet {

namespace {

constexpr int k_most = HarmonicTable::k_most;

constexpr std::size_t index_of(int n, int m) { return static_cast<std::size_t>(m * k_most - m * (m - 1) / 2 + n - 1); }

// Factors of the recursions at degree n and order m: of the functions, P(n + 1) = x P(n) - step P(n - 1), and of their
// slope, sin(colat) P'(n) = n x P(n) - slope P(n - 1).
struct Factors {
  double step = 0;
  double slope = 0;
};

consteval auto make_factors() {
  std::array<Factors, std::tuple_size_v<decltype(HarmonicTable::terms)>> factors = {};
  for (int m = 0; m <= k_most; ++m) {
    for (int n = std::max(m, 1); n <= k_most; ++n) {
      const double slope = static_cast<double>(n * n - m * m) / (2 * n - 1);
      factors[index_of(n, m)] = {.step = slope / (2 * n + 1), .slope = slope};
    }
  }
  return factors;
}

constexpr auto k_factors = make_factors();

// Symbols from here on: x = cos(colat), s = sin(colat), q = (radius / r)^(n + 2) P(n, m) / s, which no pole disturbs.

// A field in the making: the one at a date, or its change. It keeps sums over the degrees of one order.
struct Sums {
  FieldVector field;
  double g = 0, g_degrees = 0, g_slope = 0;
  double h = 0, h_degrees = 0, h_slope = 0;

  void add(double g_term, double h_term, double q, double degrees_q, double slope_q) {
    g += g_term * q;
    h += h_term * q;
    g_degrees += g_term * degrees_q;
    h_degrees += h_term * degrees_q;
    g_slope += g_term * slope_q;
    h_slope += h_term * slope_q;
  }

  void close_order(int m, double cos_m, double sin_m, double x, double s, double ratio) {
    field.north += cos_m * (x * g_degrees - ratio * g_slope) + sin_m * (x * h_degrees - ratio * h_slope);
    field.east += m * (sin_m * g - cos_m * h);
    field.down -= s * (cos_m * (g_degrees + g) + sin_m * (h_degrees + h));
    g = g_degrees = g_slope = h = h_degrees = h_slope = 0;
  }
};

template <bool with_change>
FieldAndChange sum_up(const HarmonicTable& gauss, const HarmonicPlace& place, double years) {
  const double x = place.sin_lat, s = place.cos_lat;
  const double ratio = k_magnetic_radius_m / place.radius_m;
  const double ratio_x = ratio * x, ratio_squared = ratio * ratio;
  Sums value, change;

  // Order 0 has no s to divide by: its slope, by -s, has a recursion of its own.
  double p = ratio_x * ratio_squared, p_before = ratio_squared;
  double slope = ratio * ratio_squared, slope_before = 0;
  for (int n = 1; n <= gauss.degree; ++n) {
    const HarmonicTerm& term = gauss.terms[index_of(n, 0)];
    const double north = -s * slope, down = -(n + 1) * p;
    const double g = term.g + years * term.g_change;
    value.field.north += g * north;
    value.field.down += g * down;
    if constexpr (with_change) {
      change.field.north += term.g_change * north;
      change.field.down += term.g_change * down;
    }
    const double step = k_factors[index_of(n, 0)].step * ratio_squared;
    const double next_slope = ratio_x * slope + ratio * p - step * slope_before;
    const double next_p = ratio_x * p - step * p_before;
    slope_before = slope, slope = next_slope;
    p_before = p, p = next_p;
  }

  double sectoral = ratio_squared * ratio;  // q at degree m
  double sin_m = place.sin_lon, cos_m = place.cos_lon;
  for (int m = 1; m <= gauss.degree; ++m) {
    double q = sectoral, q_before = 0;
    const HarmonicTerm* term = &gauss.terms[index_of(m, m)];
    const Factors* factors = &k_factors[index_of(m, m)];
    for (int n = m; n <= gauss.degree; ++n, ++term, ++factors) {
      const double degrees_q = n * q, slope_q = factors->slope * q_before;
      value.add(term->g + years * term->g_change, term->h + years * term->h_change, q, degrees_q, slope_q);
      if constexpr (with_change) change.add(term->g_change, term->h_change, q, degrees_q, slope_q);
      const double next_q = ratio_x * q - factors->step * (ratio_squared * q_before);
      q_before = q, q = next_q;
    }
    value.close_order(m, cos_m, sin_m, x, s, ratio);
    if constexpr (with_change) change.close_order(m, cos_m, sin_m, x, s, ratio);
    sectoral *= ratio * s;
    const double next_sin = sin_m * place.cos_lon + cos_m * place.sin_lon;
    cos_m = cos_m * place.cos_lon - sin_m * place.sin_lon;
    sin_m = next_sin;
  }
  return {.field = value.field, .change = change.field};
}

// What a Schmidt semi-normalised function is of the Gauss-normalised one. Source: Wertz (1978), eqs. H-7.
double schmidt_per_gauss(int n, int m) {
  double factor = 1;
  for (int degree = 1; degree <= n; ++degree) factor *= static_cast<double>(2 * degree - 1) / degree;
  for (int order = 1; order <= m; ++order) factor *= std::sqrt((n - order + 1) * (order == 1 ? 2.0 : 1.0) / (n + order));
  return factor;
}

}  // namespace

HarmonicTerm& HarmonicTable::at(int n, int m) {
  SHEET_CHECK(n >= 1 && n <= k_most && m >= 0 && m <= n, "a term that the table does not have");
  return terms[index_of(n, m)];
}

HarmonicSum::HarmonicSum(const HarmonicTable& table) : gauss_(table) {
  SHEET_CHECK(table.degree >= 1 && table.degree <= k_most, "harmonics of a degree that is not summed");
  for (int n = 1; n <= k_most; ++n) {
    for (int m = 0; m <= n; ++m) {
      HarmonicTerm& term = gauss_.at(n, m);
      const double factor = schmidt_per_gauss(n, m);
      term = {.g = term.g * factor, .h = term.h * factor, .g_change = term.g_change * factor, .h_change = term.h_change * factor};
    }
  }
}

FieldVector HarmonicSum::field(const HarmonicPlace& place, double years) const { return sum_up<false>(gauss_, place, years).field; }

FieldAndChange HarmonicSum::field_and_change(const HarmonicPlace& place, double years) const { return sum_up<true>(gauss_, place, years); }

}  // namespace fogsheet
