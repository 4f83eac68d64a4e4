#include "core/magnetic/field.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/magnetic/coefficients.h"

namespace fogsheet {

namespace {

constexpr double k_degrees = 180 / 3.14159265358979323846;
constexpr double k_metres_per_km = 1000;
constexpr double k_blackout_below_nt = 2000;
constexpr double k_caution_below_nt = 6000;
constexpr double k_declination_sd_floor_deg = 0.26;
constexpr double k_declination_sd_deg_nt = 5417;

// A stretch of years over which the coefficients are a straight line: at + (year - from_year) x change.
struct Stretch {
  double from_year;
  HarmonicTable at;
  HarmonicTable change;
};

HarmonicTable yearly_change(const HarmonicTable& from, const HarmonicTable& to, double years) {
  HarmonicTable change(from.degree);
  for (std::size_t i = 0; i < change.cosines.size(); ++i) change.cosines[i] = (to.cosines[i] - from.cosines[i]) / years;
  for (std::size_t i = 0; i < change.sines.size(); ++i) change.sines[i] = (to.sines[i] - from.sines[i]) / years;
  return change;
}

std::vector<Stretch> igrf14_stretches() {
  std::vector<Stretch> stretches;
  for (int epoch = 0; epoch < k_igrf14_epochs; ++epoch) {
    const HarmonicTable at = igrf14_main(epoch);
    const bool last = epoch + 1 == k_igrf14_epochs;
    stretches.push_back({.from_year = k_igrf14_first_epoch + epoch * k_igrf14_epoch_years,
                         .at = at,
                         .change = last ? igrf14_change() : yearly_change(at, igrf14_main(epoch + 1), k_igrf14_epoch_years)});
  }
  return stretches;
}

// Unpacked at the first call: constants that the program carries in a smaller form.
const Stretch& stretch_for(MagneticModel model, double year) {
  if (model == MagneticModel::wmm2025) {
    static const Stretch wmm2025{.from_year = k_wmm2025_epoch, .at = wmm2025_main(), .change = wmm2025_change()};
    return wmm2025;
  }
  static const std::vector<Stretch> igrf14 = igrf14_stretches();
  const int epoch = static_cast<int>((year - k_igrf14_first_epoch) / k_igrf14_epoch_years);
  return igrf14[static_cast<std::size_t>(std::clamp(epoch, 0, k_igrf14_epochs - 1))];
}

double dot(const EarthVector& a, const EarthVector& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

FieldZone zone_of(double horizontal_nt) {
  if (horizontal_nt < k_blackout_below_nt) return FieldZone::blackout;
  return horizontal_nt < k_caution_below_nt ? FieldZone::caution : FieldZone::normal;
}

// The angles and strengths that follow from north, east and down, and their change.
void complete(MagneticField& field) {
  field.horizontal_nt = std::hypot(field.north_nt, field.east_nt);
  field.total_nt = std::hypot(field.horizontal_nt, field.down_nt);
  field.declination_deg = std::atan2(field.east_nt, field.north_nt) * k_degrees;
  field.inclination_deg = std::atan2(field.down_nt, field.horizontal_nt) * k_degrees;
  const double h = field.horizontal_nt, f = field.total_nt;
  const double x = field.north_nt, y = field.east_nt, z = field.down_nt;
  const double dx = field.north_nt_per_year, dy = field.east_nt_per_year, dz = field.down_nt_per_year;
  if (h > 0) {  // at a magnetic pole direction and its change mean nothing
    field.horizontal_nt_per_year = (x * dx + y * dy) / h;
    field.declination_deg_per_year = (x * dy - y * dx) / (h * h) * k_degrees;
    field.declination_sd_deg = std::hypot(k_declination_sd_floor_deg, k_declination_sd_deg_nt / h);
  } else {
    field.declination_sd_deg = 180;
  }
  const double dh = field.horizontal_nt_per_year;
  field.total_nt_per_year = (h * dh + z * dz) / f;
  field.inclination_deg_per_year = (h * dz - z * dh) / (f * f) * k_degrees;
  field.zone = zone_of(h);
}

bool model_covers(MagneticModel model, double year) {
  const double from = model == MagneticModel::wmm2025 ? k_wmm2025_from_year : k_first_model_year;
  return year >= from && year <= k_last_model_year;
}

bool covered(double year) { return year >= k_first_model_year && year <= k_last_model_year; }

MagneticModel leading_model(double year) { return year >= k_wmm2025_from_year ? MagneticModel::wmm2025 : MagneticModel::igrf14; }

Problem outside_models(MagneticModel model, double year) {
  const double from = model == MagneticModel::wmm2025 ? k_wmm2025_from_year : k_first_model_year;
  return {.fault = Fault::date_outside_models, .numbers = {year, from, k_last_model_year}};
}

MagneticField field_in(const LocalFrame& frame, MagneticModel model, double year) {
  const Stretch& stretch = stretch_for(model, year);
  const EarthVector at = harmonic_gradient(stretch.at, frame.place_m, k_magnetic_radius_m);
  const EarthVector change = harmonic_gradient(stretch.change, frame.place_m, k_magnetic_radius_m);
  const double years = year - stretch.from_year;
  // The field is minus the gradient of the potential, radius x sum.
  EarthVector field_nt, change_nt;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    field_nt[axis] = -k_magnetic_radius_m * (at[axis] + years * change[axis]);
    change_nt[axis] = -k_magnetic_radius_m * change[axis];
  }
  MagneticField field{.north_nt = dot(field_nt, frame.north),
                      .east_nt = dot(field_nt, frame.east),
                      .down_nt = -dot(field_nt, frame.up),
                      .north_nt_per_year = dot(change_nt, frame.north),
                      .east_nt_per_year = dot(change_nt, frame.east),
                      .down_nt_per_year = -dot(change_nt, frame.up),
                      .model = model};
  complete(field);
  return field;
}

}  // namespace

Result<MagneticField> magnetic_field_by(MagneticModel model, Position position, double year, double height_km) {
  if (!model_covers(model, year)) return outside_models(model, year);
  return field_in(geodetic_frame(position, height_km * k_metres_per_km), model, year);
}

Result<MagneticField> magnetic_field(Position position, double year, double height_km) {
  if (!covered(year)) return outside_models(MagneticModel::igrf14, year);
  return magnetic_field_by(leading_model(year), position, year, height_km);
}

Result<double> declination_deg(Position position, double year, double height_km) {
  if (!covered(year)) return outside_models(MagneticModel::igrf14, year);
  const LocalFrame frame = geodetic_frame(position, height_km * k_metres_per_km);
  const Stretch& stretch = stretch_for(leading_model(year), year);
  const EarthVector uphill = harmonic_gradient(stretch.at, stretch.change, year - stretch.from_year, frame.place_m, k_magnetic_radius_m);
  return std::atan2(-dot(uphill, frame.east), -dot(uphill, frame.north)) * k_degrees;
}

Result<MagneticField> magnetic_field_geocentric(MagneticModel model, GeocentricPlace place, double year) {
  if (!model_covers(model, year)) return outside_models(model, year);
  const Position above{.lat_deg = 90 - place.colat_deg, .lon_deg = place.lon_deg};
  return field_in(spherical_frame(above, place.radius_km * k_metres_per_km), model, year);
}

}  // namespace fogsheet
