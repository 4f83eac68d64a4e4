// The earth's magnetic field by place and date: World Magnetic Model 2025 from 2025.0 to 2030.0, IGRF-14 from 1900.0 to
// 2025.0, from their official coefficients.
#pragma once

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/positions/position.h"

namespace fogsheet {

inline constexpr double k_first_model_year = 1900.0;
inline constexpr double k_wmm2025_from_year = 2025.0;
inline constexpr double k_last_model_year = 2030.0;  // the last instant that counts as inside

enum class MagneticModel { wmm2025, igrf14 };

/// Where a magnetic compass can be trusted. Source: WMM2025 technical report: H under 2000 nT blackout, under 6000 nT caution.
enum class FieldZone { normal, caution, blackout };

/// Geodetic components, north, east, down; angles in degrees, strengths in nT, and their change a year.
struct MagneticField {
  double declination_deg = 0;  // the variation, east positive
  double inclination_deg = 0;  // dip, down positive
  double horizontal_nt = 0;
  double north_nt = 0;
  double east_nt = 0;
  double down_nt = 0;
  double total_nt = 0;
  double declination_deg_per_year = 0;
  double inclination_deg_per_year = 0;
  double horizontal_nt_per_year = 0;
  double north_nt_per_year = 0;
  double east_nt_per_year = 0;
  double down_nt_per_year = 0;
  double total_nt_per_year = 0;
  double declination_sd_deg = 0;  // one sigma: sqrt(0.26^2 + (5417 / H)^2), 180 at most; WMM2025's error model
  FieldZone zone = FieldZone::normal;
  MagneticModel model = MagneticModel::wmm2025;
};

/// One sigma of the other parts, everywhere. Source: WMM2025 technical report.
inline constexpr double k_inclination_sd_deg = 0.20;
inline constexpr double k_north_sd_nt = 137;
inline constexpr double k_east_sd_nt = 89;
inline constexpr double k_down_sd_nt = 141;
inline constexpr double k_horizontal_sd_nt = 133;
inline constexpr double k_total_sd_nt = 138;

/// The field at a place, by WMM2025 from 2025.0 on and by IGRF-14 before.
/// @param position latitude in [-90, 90]; year decimal, [1900, 2030]; height_km above the ellipsoid.
/// At a pole north is along the meridian of the longitude given. Faults: date_outside_models.
/// The yearly change is the model's own straight line at that moment (IGRF-14: over the five years that hold it).
Result<MagneticField> magnetic_field(Position position, double year, double height_km = 0);

/// Its declination alone, deg, in two thirds of the time: for many points. Same ranges, models and faults.
Result<double> declination_deg(Position position, double year, double height_km = 0);

/// The field by one model: WMM2025 for [2025, 2030], IGRF-14 for [1900, 2030].
Result<MagneticField> magnetic_field_by(MagneticModel model, Position position, double year, double height_km = 0);

/// A place on no ellipsoid, as published check values give it. @param colat_deg in [0, 180], from the north pole.
struct GeocentricPlace {
  double colat_deg = 90;
  double lon_deg = 0;
  double radius_km = 6371.2;
};

/// As above, with north, east and down along the geocentric vertical.
Result<MagneticField> magnetic_field_geocentric(MagneticModel model, GeocentricPlace place, double year);

}  // namespace fogsheet
