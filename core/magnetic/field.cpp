#include "core/magnetic/field.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/units.h"
#include "core/earth/mercator.h"
#include "core/magnetic/coefficients.h"

namespace fogsheet {

namespace {

constexpr double k_degrees = 1 / k_degree_rad;
constexpr double k_metres_per_km = 1000;
constexpr double k_blackout_below_nt = 2000;
constexpr double k_caution_below_nt = 6000;
constexpr double k_declination_sd_floor_deg = 0.26;
constexpr double k_declination_sd_deg_nt = 5417;

// A stretch of years over which the coefficients are a straight line.
struct Stretch {
  double from_year;
  HarmonicSum sum;
};

std::vector<Stretch> igrf14_stretches() {
  std::vector<Stretch> stretches;
  for (int epoch = 0; epoch < k_igrf14_epochs; ++epoch)
    stretches.push_back({.from_year = k_igrf14_first_epoch + epoch * k_igrf14_epoch_years, .sum = HarmonicSum(igrf14(epoch))});
  return stretches;
}

// Unpacked at the first call: constants that the program carries in a smaller form.
const Stretch& stretch_for(MagneticModel model, double year) {
  if (model == MagneticModel::wmm2025) {
    static const Stretch stretch{.from_year = k_wmm2025_epoch, .sum = HarmonicSum(wmm2025())};
    return stretch;
  }
  static const std::vector<Stretch> stretches = igrf14_stretches();
  const int epoch = static_cast<int>((year - k_igrf14_first_epoch) / k_igrf14_epoch_years);
  return stretches[static_cast<std::size_t>(std::clamp(epoch, 0, k_igrf14_epochs - 1))];
}

// A place for the sum, and how far the ellipsoid's vertical leans from the geocentric one there.
struct Station {
  HarmonicPlace place;
  double sin_lean = 0;  // geodetic less geocentric latitude
  double cos_lean = 1;
};

void check_station(double lat_deg, double lon_deg, double length_km) {
  SHEET_CHECK(std::abs(lat_deg) <= 90, "a latitude beyond the poles");
  SHEET_CHECK(std::isfinite(lon_deg), "a longitude that is not a number");
  SHEET_CHECK(std::isfinite(length_km), "a height that is not a number");
}

Station geodetic_station(Position position, double height_km) {
  check_station(position.lat_deg, position.lon_deg, height_km);
  constexpr double k_e2 = k_wgs84_flattening * (2 - k_wgs84_flattening);
  const double lat = position.lat_deg * k_degree_rad, lon = position.lon_deg * k_degree_rad;
  const double sin_lat = std::sin(lat), cos_lat = std::cos(lat);
  const double height_m = height_km * k_metres_per_km;
  const double normal_m = k_wgs84_equatorial_radius_m / std::sqrt(1 - k_e2 * sin_lat * sin_lat);
  const double from_axis_m = (normal_m + height_m) * cos_lat;
  const double from_equator_m = (normal_m * (1 - k_e2) + height_m) * sin_lat;
  const double radius_m = std::sqrt(from_axis_m * from_axis_m + from_equator_m * from_equator_m);
  const double sin_geocentric = from_equator_m / radius_m, cos_geocentric = from_axis_m / radius_m;
  return {.place = {.sin_lat = sin_geocentric, .cos_lat = cos_geocentric, .sin_lon = std::sin(lon), .cos_lon = std::cos(lon), .radius_m = radius_m},
          .sin_lean = sin_lat * cos_geocentric - cos_lat * sin_geocentric,
          .cos_lean = cos_lat * cos_geocentric + sin_lat * sin_geocentric};
}

Station geocentric_station(const GeocentricPlace& place) {
  check_station(90 - place.colat_deg, place.lon_deg, place.radius_km);
  const double colat = place.colat_deg * k_degree_rad, lon = place.lon_deg * k_degree_rad;
  return {.place = {.sin_lat = std::cos(colat),
                    .cos_lat = std::sin(colat),
                    .sin_lon = std::sin(lon),
                    .cos_lon = std::cos(lon),
                    .radius_m = place.radius_km * k_metres_per_km}};
}

// From the geocentric axes to those of the station.
FieldVector leaned(const FieldVector& field, const Station& station) {
  return {.north = field.north * station.cos_lean + field.down * station.sin_lean,
          .east = field.east,
          .down = field.down * station.cos_lean - field.north * station.sin_lean};
}

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
  }
  field.declination_sd_deg = std::min(180.0, std::hypot(k_declination_sd_floor_deg, k_declination_sd_deg_nt / h));
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

MagneticField field_at(const Station& station, MagneticModel model, double year) {
  const Stretch& stretch = stretch_for(model, year);
  const FieldAndChange both = stretch.sum.field_and_change(station.place, year - stretch.from_year);
  const FieldVector value = leaned(both.field, station), change = leaned(both.change, station);
  MagneticField field{.north_nt = value.north,
                      .east_nt = value.east,
                      .down_nt = value.down,
                      .north_nt_per_year = change.north,
                      .east_nt_per_year = change.east,
                      .down_nt_per_year = change.down,
                      .model = model};
  complete(field);
  return field;
}

}  // namespace

Result<MagneticField> magnetic_field_by(MagneticModel model, Position position, double year, double height_km) {
  if (!model_covers(model, year)) return outside_models(model, year);
  return field_at(geodetic_station(position, height_km), model, year);
}

Result<MagneticField> magnetic_field(Position position, double year, double height_km) {
  if (!covered(year)) return outside_models(MagneticModel::igrf14, year);
  return magnetic_field_by(leading_model(year), position, year, height_km);
}

Result<double> declination_deg(Position position, double year, double height_km) {
  if (!covered(year)) return outside_models(MagneticModel::igrf14, year);
  const Station station = geodetic_station(position, height_km);
  const Stretch& stretch = stretch_for(leading_model(year), year);
  const FieldVector field = leaned(stretch.sum.field(station.place, year - stretch.from_year), station);
  return std::atan2(field.east, field.north) * k_degrees;
}

Result<MagneticField> magnetic_field_geocentric(MagneticModel model, GeocentricPlace place, double year) {
  if (!model_covers(model, year)) return outside_models(model, year);
  return field_at(geocentric_station(place), model, year);
}

}  // namespace fogsheet
