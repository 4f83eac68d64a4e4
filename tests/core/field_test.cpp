#include "core/magnetic/field.h"

#include <cmath>
#include <initializer_list>

#include "core/base/random.h"
#include "core/magnetic/coefficients.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("WMM2025 and IGRF-14 give official values") {
  // Sources: WMM2025 official test values, rows 1 and 4 of the list of 100; BGS check values for IGRF-14.
  const Result<MagneticField> arctic = magnetic_field({.lat_deg = 89, .lon_deg = -121}, 2025.0, 28);
  REQUIRE(arctic.ok());
  CHECK(std::abs(arctic->north_nt - -255.388723) <= 0.01);
  CHECK(std::abs(arctic->east_nt - -1482.460628) <= 0.01);
  CHECK(std::abs(arctic->down_nt - 56194.288771) <= 0.01);
  CHECK(std::abs(arctic->declination_deg_per_year - 2.491706) <= 1e-5);
  CHECK(arctic->zone == FieldZone::blackout);
  CHECK(arctic->model == MagneticModel::wmm2025);

  const Result<MagneticField> old = magnetic_field_geocentric(MagneticModel::igrf14, {.colat_deg = 175, .lon_deg = -150, .radius_km = 6300}, 1900.0);
  REQUIRE(old.ok());
  CHECK(std::abs(old->north_nt - -5072.93) <= 0.02);
  CHECK(std::abs(old->east_nt - 10620.34) <= 0.02);
  CHECK(std::abs(old->down_nt - -67233.55) <= 0.02);
}

TEST_CASE("the coefficients are the files' own") {
  // First and last numbers of each, read by eye in the official files.
  CHECK(wmm2025().at(1, 0).g == -29351.8);
  CHECK(wmm2025().at(1, 1).h_change == -21.5);
  CHECK(wmm2025().degree == 12);
  CHECK(igrf14(0).at(1, 0).g == -31543);
  CHECK(igrf14(25).at(1, 1).h == 4545.5);
  CHECK(igrf14(22).at(1, 1).g == -1586.42);
  CHECK(igrf14(25).at(1, 0).g_change == 12.6);
  CHECK(igrf14(25).at(9, 0).g_change == 0);
}

TEST_CASE("the years covered end where the models do") {
  const Position place{.lat_deg = 50, .lon_deg = -4};
  CHECK(magnetic_field(place, 1900.0).ok());
  CHECK(magnetic_field(place, 2024.999)->model == MagneticModel::igrf14);
  CHECK(magnetic_field(place, 2025.0)->model == MagneticModel::wmm2025);
  CHECK(magnetic_field(place, 2030.0).ok());
  for (const double year : {1899.99, 2030.001, std::nan("")}) {
    const Result<MagneticField> field = magnetic_field(place, year);
    REQUIRE_FALSE(field.ok());
    CHECK(field.problem().fault == Fault::date_outside_models);
    CHECK(field.problem().numbers.at(1) == 1900);
    CHECK(field.problem().numbers.at(2) == 2030);
  }
  CHECK_FALSE(magnetic_field_by(MagneticModel::wmm2025, place, 2024.9).ok());
  CHECK_FALSE(magnetic_field_geocentric(MagneticModel::wmm2025, {}, 2024.9).ok());
}

TEST_CASE("the yearly change is the slope of the values") {
  Random random(2025);
  for (int i = 0; i < 1000; ++i) {
    const Position place{.lat_deg = random.uniform(-75, 75), .lon_deg = random.uniform(-180, 180)};
    const double year = random.uniform(2025.1, 2029.9);
    constexpr double k_step_years = 1e-3;
    const MagneticField before = *magnetic_field(place, year - k_step_years);
    const MagneticField after = *magnetic_field(place, year + k_step_years);
    const MagneticField at = *magnetic_field(place, year);
    if (at.zone == FieldZone::blackout) continue;
    const auto slope = [](double later, double earlier) { return (later - earlier) / (2 * k_step_years); };
    CHECK(std::abs(slope(after.declination_deg, before.declination_deg) - at.declination_deg_per_year) <= 1e-5);
    CHECK(std::abs(slope(after.inclination_deg, before.inclination_deg) - at.inclination_deg_per_year) <= 1e-6);
    CHECK(std::abs(slope(after.horizontal_nt, before.horizontal_nt) - at.horizontal_nt_per_year) <= 1e-3);
    CHECK(std::abs(slope(after.total_nt, before.total_nt) - at.total_nt_per_year) <= 1e-3);
    CHECK(std::abs(slope(after.down_nt, before.down_nt) - at.down_nt_per_year) <= 1e-3);
  }
}

TEST_CASE("the field is the same all round 180 and over the pole") {
  const MagneticField west = *magnetic_field({.lat_deg = -18, .lon_deg = -180}, 2026);
  const MagneticField east = *magnetic_field({.lat_deg = -18, .lon_deg = 180}, 2026);
  CHECK(std::abs(west.north_nt - east.north_nt) <= 1e-6);
  const MagneticField pole = *magnetic_field({.lat_deg = 90, .lon_deg = 0}, 2026);
  const MagneticField turned = *magnetic_field({.lat_deg = 90, .lon_deg = 90}, 2026);
  CHECK(std::abs(pole.horizontal_nt - turned.horizontal_nt) <= 1e-6);
  CHECK(std::abs(pole.east_nt - -turned.north_nt) <= 1e-6);
}

TEST_CASE("zones and uncertainty follow the horizontal field") {
  // Source: WMM2025 technical report, error model and blackout zones; values at sea computed from it.
  const MagneticField adelie = *magnetic_field({.lat_deg = -66, .lon_deg = 140}, decimal_year({2026, 1, 15}));
  CHECK(adelie.zone == FieldZone::blackout);
  CHECK(std::abs(adelie.declination_sd_deg - 2.938) <= 0.0006);
  const MagneticField baffin = *magnetic_field({.lat_deg = 75, .lon_deg = -70}, decimal_year({2026, 8, 1}));
  CHECK(baffin.zone == FieldZone::caution);
  const MagneticField solent = *magnetic_field({.lat_deg = 50.75, .lon_deg = -1.3}, decimal_year({2026, 11, 25}));
  CHECK(solent.zone == FieldZone::normal);
  CHECK(std::abs(solent.declination_sd_deg - 0.376) <= 0.0006);
}

TEST_CASE("declination alone is the field's own") {
  Random random(1900);
  for (int i = 0; i < 2000; ++i) {
    const Position place{.lat_deg = random.uniform(-75, 75), .lon_deg = random.uniform(-180, 180)};
    const double year = random.uniform(1900, 2030);
    const double height_km = random.uniform(0, 10);
    const MagneticField field = *magnetic_field(place, year, height_km);
    if (field.horizontal_nt < 500) continue;
    CHECK(std::abs(*declination_deg(place, year, height_km) - field.declination_deg) <= 1e-9);
  }
  CHECK(declination_deg({.lat_deg = 50, .lon_deg = -4}, 2031).problem().fault == Fault::date_outside_models);
}
