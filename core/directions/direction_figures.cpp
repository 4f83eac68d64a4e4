#include "core/directions/direction_figures.h"

#include <cmath>
#include <cstdio>

namespace fogsheet {
namespace {

/// Tenths written out of a whole number of them: no locale's decimal mark can slip in.
std::string with_tenths(long tenths, int least_digits) {
  char text[32];
  std::snprintf(text, sizeof text, "%0*ld.%ld", least_digits, tenths / 10, tenths % 10);
  return text;
}

std::string whole(long number, int least_digits) {
  char text[32];
  std::snprintf(text, sizeof text, "%0*ld", least_digits, number);
  return text;
}

}  // namespace

std::string direction_figures(double deg, Rounding rounding) {
  const double shown = round_direction_deg(deg, rounding);
  return rounding == Rounding::tenths ? with_tenths(std::lround(shown * 10), 3) : whole(std::lround(shown), 3);
}

std::string correction_figures(double deg, Rounding rounding) {
  const double shown = std::abs(round_correction_deg(deg, rounding));
  return rounding == Rounding::tenths ? with_tenths(std::lround(shown * 10), 1) : whole(std::lround(shown), 1);
}

std::string east_west(double deg, Rounding rounding) {
  const double shown = round_correction_deg(deg, rounding);
  return shown > 0 ? "E" : shown < 0 ? "W" : "";
}

std::string degrees_minutes_text(double deg) {
  const long minutes = std::lround(std::abs(deg) * 60);
  return whole(minutes / 60, 1) + "°" + whole(minutes % 60, 2) + "′" + (minutes == 0 ? "" : deg > 0 ? "E" : "W");
}

std::string distance_figures(double distance_nm) { return with_tenths(std::lround(distance_nm * 10), 1); }

}  // namespace fogsheet
