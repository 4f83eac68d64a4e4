#include "core/earth/mercator.h"

#include <cmath>

#include "core/base/units.h"

namespace fogsheet {

namespace {

constexpr double k_arcmin_per_radian = 10'800 / k_pi;
constexpr double k_e2 = k_wgs84_flattening * (2 - k_wgs84_flattening);

double first_eccentricity() { return std::sqrt(k_e2); }

}  // namespace

double isometric_latitude(double lat_deg) {
  const double lat = lat_deg * k_degree_rad;
  const double e = first_eccentricity();
  // asinh(tan) is artanh(sin), and keeps its digits near the pole.
  return std::asinh(std::tan(lat)) - e * std::atanh(e * std::sin(lat));
}

double latitude_from_isometric_deg(double psi) {
  const double e = first_eccentricity();
  // Each round leaves under e^2 = 0.0067 of the error before it, which is 0.0034 at first.
  constexpr int k_rounds = 8;
  double lat = std::atan(std::sinh(psi));
  for (int i = 0; i < k_rounds; ++i) lat = std::atan(std::sinh(psi + e * std::atanh(e * std::sin(lat))));
  return lat / k_degree_rad;
}

double meridional_parts_arcmin(double lat_deg) { return isometric_latitude(lat_deg) * k_arcmin_per_radian; }

double parallel_radius_m(double lat_deg) {
  const double s = std::sin(lat_deg * k_degree_rad);
  return k_wgs84_equatorial_radius_m * std::cos(lat_deg * k_degree_rad) / std::sqrt(1 - k_e2 * s * s);
}

double meridian_radius_m(double lat_deg) {
  const double s = std::sin(lat_deg * k_degree_rad);
  const double w2 = 1 - k_e2 * s * s;
  return k_wgs84_equatorial_radius_m * (1 - k_e2) / (w2 * std::sqrt(w2));
}

double meridian_arc_m(double from_lat_deg, double to_lat_deg) {
  // Gauss-Legendre of five points; over 10 degrees it leaves under a nanometre.
  constexpr double k_longest_step_deg = 10;
  constexpr double k_nodes[] = {0, 0.53846931010568309104, 0.90617984593866399280};
  constexpr double k_weights[] = {0.56888888888888888889, 0.47862867049936646804, 0.23692688505618908751};
  const double whole_deg = to_lat_deg - from_lat_deg;
  const int steps = static_cast<int>(std::abs(whole_deg) / k_longest_step_deg) + 1;
  const double half_deg = whole_deg / steps / 2;
  double sum_m = 0;
  for (int i = 0; i < steps; ++i) {
    const double middle_deg = from_lat_deg + (2 * i + 1) * half_deg;
    sum_m += k_weights[0] * meridian_radius_m(middle_deg);
    for (int k = 1; k < 3; ++k)
      sum_m += k_weights[k] * (meridian_radius_m(middle_deg - k_nodes[k] * half_deg) + meridian_radius_m(middle_deg + k_nodes[k] * half_deg));
  }
  return sum_m * half_deg * k_degree_rad;
}

double latitude_minute_m(double lat_deg) {
  constexpr double k_half_minute_deg = 0.5 / 60;
  return meridian_arc_m(lat_deg - k_half_minute_deg, lat_deg + k_half_minute_deg);
}

double longitude_minute_m(double lat_deg) { return parallel_radius_m(lat_deg) / k_arcmin_per_radian; }

}  // namespace fogsheet
