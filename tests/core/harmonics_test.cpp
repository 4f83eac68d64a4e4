#include "core/magnetic/harmonics.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

HarmonicPlace place_at(double lat, double lon, double radius_m) {
  return {.sin_lat = std::sin(lat), .cos_lat = std::cos(lat), .sin_lon = std::sin(lon), .cos_lon = std::cos(lon), .radius_m = radius_m};
}

HarmonicTable one_term(int n, int m, double g, double h) {
  HarmonicTable table;
  table.at(n, m) = {.g = g, .h = h};
  return table;
}

double apart(const FieldVector& a, const FieldVector& b) { return std::hypot(a.north - b.north, a.east - b.east, a.down - b.down); }

}  // namespace

TEST_CASE("the first term is a dipole's field") {
  // Source: Merrill, McElhinny and McFadden, The Magnetic Field of the Earth (1996), ch. 2: B(r) = 2 g cos(colat) (a/r)^3,
  // B(colat) = g sin(colat) (a/r)^3.
  const HarmonicSum dipole(one_term(1, 0, -29000, 0));
  for (const double lat : {-1.5707963267948966, -1.2, -0.3, 0.0, 0.7, 1.5707963267948966}) {
    CAPTURE(lat);
    const double radius_m = 7'000'000;
    const double cubed = std::pow(k_magnetic_radius_m / radius_m, 3);
    const FieldVector expected{.north = 29000 * std::cos(lat) * cubed, .east = 0, .down = 2 * 29000 * std::sin(lat) * cubed};
    CHECK(apart(dipole.field(place_at(lat, 2, radius_m), 0), expected) <= 1e-9);
  }
}

TEST_CASE("terms are minus the slope of their potential") {
  // Schmidt semi-normalised functions in closed form. Source: Langel, The Main Field, in Geomagnetism vol. 1 (1987), table 4.
  struct Case {
    int n, m;
    double (*schmidt)(double x, double s);
  };
  constexpr Case k_cases[] = {
      {1, 1, [](double, double s) { return s; }},
      {2, 0, [](double x, double) { return (3 * x * x - 1) / 2; }},
      {2, 1, [](double x, double s) { return std::sqrt(3.0) * x * s; }},
      {2, 2, [](double, double s) { return std::sqrt(3.0) / 2 * s * s; }},
      {3, 0, [](double x, double) { return (5 * x * x * x - 3 * x) / 2; }},
      {3, 1, [](double x, double s) { return std::sqrt(6.0) / 4 * s * (5 * x * x - 1); }},
      {3, 2, [](double x, double s) { return std::sqrt(15.0) / 2 * x * s * s; }},
      {3, 3, [](double, double s) { return std::sqrt(10.0) / 4 * s * s * s; }},
      {4, 4, [](double, double s) { return std::sqrt(35.0) / 8 * s * s * s * s; }},
  };
  constexpr double k_step = 1e-5;  // radians, and of the radius: central differences are good to its square
  Random random(1838);
  for (const Case& c : k_cases) {
    CAPTURE(c.n);
    CAPTURE(c.m);
    const double g = random.uniform(-1000, 1000), h = c.m > 0 ? random.uniform(-1000, 1000) : 0;
    const HarmonicSum sum(one_term(c.n, c.m, g, h));
    const auto potential = [&](double lat, double lon, double ratio) {
      return std::pow(1 / ratio, c.n + 1) * (g * std::cos(c.m * lon) + h * std::sin(c.m * lon)) * c.schmidt(std::sin(lat), std::cos(lat));
    };
    for (int i = 0; i < 100; ++i) {
      const double lat = random.uniform(-1.5, 1.5), lon = random.uniform(-3.1, 3.1), ratio = random.uniform(0.9, 1.2);
      const FieldVector expected{
          .north = -(potential(lat + k_step, lon, ratio) - potential(lat - k_step, lon, ratio)) / (2 * k_step) / ratio,
          .east = -(potential(lat, lon + k_step, ratio) - potential(lat, lon - k_step, ratio)) / (2 * k_step) / ratio / std::cos(lat),
          .down = (potential(lat, lon, ratio + k_step) - potential(lat, lon, ratio - k_step)) / (2 * k_step)};
      CHECK(apart(sum.field(place_at(lat, lon, ratio * k_magnetic_radius_m), 0), expected) <= 1e-5);
    }
  }
}

TEST_CASE("every term is smooth over the poles") {
  for (int n = 1; n <= HarmonicTable::k_most; ++n) {
    for (int m = 0; m <= n; ++m) {
      CAPTURE(n);
      CAPTURE(m);
      const HarmonicSum sum(one_term(n, m, 100, m > 0 ? -70 : 0));
      for (const double pole : {1.5707963267948966, -1.5707963267948966}) {
        // The next place is 64 m away; the field of degree 13 turns by 13 times that angle.
        const FieldVector at = sum.field(place_at(pole, 0.5, k_magnetic_radius_m), 0);
        const FieldVector near = sum.field(place_at(pole * (1 - 6.4e-6), 0.5, k_magnetic_radius_m), 0);
        CHECK(apart(at, near) <= 0.2);
      }
    }
  }
}

TEST_CASE("a year changes the field by the change") {
  Random random(2025);
  HarmonicTable table;
  for (HarmonicTerm& term : table.terms) term = {random.uniform(-1, 1), random.uniform(-1, 1), random.uniform(-1, 1), random.uniform(-1, 1)};
  const HarmonicSum sum(table);
  for (int i = 0; i < 200; ++i) {
    const HarmonicPlace place = place_at(random.uniform(-1.57, 1.57), random.uniform(-3.14, 3.14), k_magnetic_radius_m);
    const double years = random.uniform(-5, 5);
    const FieldVector before = sum.field(place, years), after = sum.field(place, years + 1);
    const FieldAndChange both = sum.field_and_change(place, years);
    CHECK(apart(both.field, before) <= 1e-10);
    CHECK(apart(both.change, {after.north - before.north, after.east - before.east, after.down - before.down}) <= 1e-10);
  }
}

TEST_CASE("terms beyond the degree are not read") {
  HarmonicTable table;
  table.degree = 12;
  table.at(13, 5).g = 1000;
  table.at(13, 0).g = 1000;
  CHECK(apart(HarmonicSum(table).field(place_at(0.3, 0.4, k_magnetic_radius_m), 0), {}) == 0);
}
