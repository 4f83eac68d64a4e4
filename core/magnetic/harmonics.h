// A magnetic potential as a sum of spherical harmonics whose coefficients change evenly from year to year, and the field
// that follows from it. A new date costs a multiplication and an addition a coefficient, inside the sum.
#pragma once

#include <array>
#include <cstddef>

namespace fogsheet {

inline constexpr double k_magnetic_radius_m = 6'371'200.0;  // reference radius of the models
inline constexpr int k_most_harmonic_degree = 13;           // IGRF-14's; WMM2025 ends at 12

/// g cos(m lon) + h sin(m lon) of one degree n and order m, nT, Schmidt semi-normalised, and its change, nT a year.
struct HarmonicTerm {
  double g = 0;
  double h = 0;  // stays nought at order 0
  double g_change = 0;
  double h_change = 0;
};

/// The terms of a model, by order, then by degree; all nought at first.
struct HarmonicTable {
  static constexpr int k_most = k_most_harmonic_degree;

  /// @param n degree, [1, 13]; m order, [0, n].
  HarmonicTerm& at(int n, int m);

  int degree = k_most;  // no term beyond it is read
  std::array<HarmonicTerm, static_cast<std::size_t>(k_most * (k_most + 3) / 2)> terms = {};
};

/// A field or its change along the three axes of a place.
struct FieldVector {
  double north = 0;
  double east = 0;
  double down = 0;
};

struct FieldAndChange {
  FieldVector field;   // nT
  FieldVector change;  // nT a year
};

/// A place by sine and cosine of its geocentric latitude and longitude, and its distance from the earth's centre.
struct HarmonicPlace {
  double sin_lat = 0;
  double cos_lat = 1;
  double sin_lon = 0;
  double cos_lon = 1;
  double radius_m = k_magnetic_radius_m;
};

/// The same terms as the sum reads them: with factors taken in that its recursion would need.
class HarmonicSum {
 public:
  explicit HarmonicSum(const HarmonicTable& table);

  /// The field so many years after the table's moment, along the geocentric vertical. At a pole north is along the meridian
  /// of the longitude given. Method: Gauss-normalised Legendre functions divided by cos lat, by recursion in degree.
  /// Source: Wertz (ed.), Spacecraft Attitude Determination and Control (1978), appendix H.
  FieldVector field(const HarmonicPlace& place, double years) const;

  /// The same with its change a year, in one sum.
  FieldAndChange field_and_change(const HarmonicPlace& place, double years) const;

 private:
  HarmonicTable gauss_;
};

}  // namespace fogsheet
