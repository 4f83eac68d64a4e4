// Core as a module for scripts, so that node can set it beside other programs: calculator.mjs wraps it. Results of several
// numbers are left in the array that `results` points to.
#include <emscripten/emscripten.h>

#include "core/earth/geodesy.h"
#include "core/earth/rhumb.h"
#include "core/magnetic/field.h"

namespace {

double g_results[4];

}  // namespace

extern "C" {

EMSCRIPTEN_KEEPALIVE const double* results() { return g_results; }

/// azimuths [0, 360), metres
EMSCRIPTEN_KEEPALIVE void geodesic_between(double lat1, double lon1, double lat2, double lon2) {
  const fogsheet::GeodesicLeg leg = fogsheet::geodesic_inverse({lat1, lon1}, {lat2, lon2});
  g_results[0] = leg.departure.deg();
  g_results[1] = leg.arrival.deg();
  g_results[2] = leg.distance_m;
}

/// latitude, longitude, azimuth
EMSCRIPTEN_KEEPALIVE void geodesic_onwards(double lat1, double lon1, double azimuth, double metres) {
  const fogsheet::GeodesicEnd end = fogsheet::geodesic_direct({lat1, lon1}, fogsheet::TrueDirection(azimuth), metres);
  g_results[0] = end.position.lat_deg;
  g_results[1] = end.position.lon_deg;
  g_results[2] = end.arrival.deg();
}

/// course, nautical miles
EMSCRIPTEN_KEEPALIVE void rhumb_between(double lat1, double lon1, double lat2, double lon2) {
  const fogsheet::RhumbLeg leg = fogsheet::rhumb_inverse({lat1, lon1}, {lat2, lon2});
  g_results[0] = leg.course.deg();
  g_results[1] = leg.distance_nm;
}

/// latitude, longitude; whether there is an end
EMSCRIPTEN_KEEPALIVE int rhumb_onwards(double lat1, double lon1, double course, double nm) {
  const fogsheet::Result<fogsheet::Position> end = fogsheet::rhumb_direct({lat1, lon1}, fogsheet::TrueDirection(course), nm);
  if (!end.ok()) return 0;
  g_results[0] = end->lat_deg;
  g_results[1] = end->lon_deg;
  return 1;
}

/// declination and horizontal field; whether the year is within the models
EMSCRIPTEN_KEEPALIVE int field_at(double lat, double lon, double year) {
  const fogsheet::Result<fogsheet::MagneticField> field = fogsheet::magnetic_field({lat, lon}, year);
  if (!field.ok()) return 0;
  g_results[0] = field->declination_deg;
  g_results[1] = field->horizontal_nt;
  return 1;
}

/// for a year within the models
EMSCRIPTEN_KEEPALIVE double declination_at(double lat, double lon, double year) { return *fogsheet::declination_deg({lat, lon}, year); }

}  // extern "C"
