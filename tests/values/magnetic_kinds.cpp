// The magnetic models.
#include "core/base/date.h"
#include "core/magnetic/field.h"
#include "tests/values/kinds.h"

namespace fogsheet::values {

namespace {

Position place(const Inputs& in) { return {.lat_deg = in.number("lat_deg"), .lon_deg = in.number("lon_deg")}; }

MagneticField checked(const Result<MagneticField>& field) {
  if (!field.ok()) throw RowError{"the date is outside the models"};
  return *field;
}

Outputs components(const MagneticField& field) {
  return {{"D_deg", in_full(field.declination_deg)},
          {"I_deg", in_full(field.inclination_deg)},
          {"H_nT", in_full(field.horizontal_nt)},
          {"X_nT", in_full(field.north_nt)},
          {"Y_nT", in_full(field.east_nt)},
          {"Z_nT", in_full(field.down_nt)},
          {"F_nT", in_full(field.total_nt)},
          {"dD_deg_per_year", in_full(field.declination_deg_per_year)},
          {"dI_deg_per_year", in_full(field.inclination_deg_per_year)},
          {"dH_nT_per_year", in_full(field.horizontal_nt_per_year)},
          {"dX_nT_per_year", in_full(field.north_nt_per_year)},
          {"dY_nT_per_year", in_full(field.east_nt_per_year)},
          {"dZ_nT_per_year", in_full(field.down_nt_per_year)},
          {"dF_nT_per_year", in_full(field.total_nt_per_year)}};
}

const char* zone_name(FieldZone zone) {
  switch (zone) {
    case FieldZone::normal:
      return "normal";
    case FieldZone::caution:
      return "caution";
    case FieldZone::blackout:
      return "blackout";
  }
  return "";
}

Outputs wmm2025(const Inputs& in) {
  return components(checked(magnetic_field_by(MagneticModel::wmm2025, place(in), in.number("date_decimal_year"), in.number("height_km"))));
}

Outputs at_sea(const Inputs& in) {
  const Result<Date> date = parse_iso_date(in.text("date_iso"));
  if (!date.ok()) throw RowError{"no date"};
  const MagneticField field = checked(magnetic_field(place(in), decimal_year(*date), in.number("height_km")));
  Outputs outputs = components(field);
  outputs["date_decimal_year"] = in_full(decimal_year(*date));
  outputs["D_uncertainty_1sigma_deg"] = in_full(field.declination_sd_deg);
  outputs["zone"] = zone_name(field.zone);
  return outputs;
}

Outputs igrf14_geocentric(const Inputs& in) {
  const GeocentricPlace at{.colat_deg = in.number("colat_deg"), .lon_deg = in.number("lon_deg"), .radius_km = in.number("radius_km")};
  return components(checked(magnetic_field_geocentric(MagneticModel::igrf14, at, in.number("date_decimal_year"))));
}

Outputs igrf14_geodetic(const Inputs& in) {
  return components(checked(magnetic_field_by(MagneticModel::igrf14, place(in), in.number("date_decimal_year"), in.number("height_km"))));
}

}  // namespace

KindTable magnetic_kinds() {
  return {{"list-of-100", wmm2025}, {"report", wmm2025}, {"sea", at_sea}, {"geocentric", igrf14_geocentric}, {"geodetic", igrf14_geodetic}};
}

}  // namespace fogsheet::values
