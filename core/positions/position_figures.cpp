#include "core/positions/position_figures.h"

#include <cmath>
#include <cstdio>

#include "core/base/check.h"

namespace fogsheet {
namespace {

std::string arc_figures(double deg, int decimals, int degree_digits, char positive, char negative) {
  SHEET_CHECK(decimals >= 0 && decimals <= 4, "minutes have up to four decimals");
  long parts = 1;
  for (int i = 0; i < decimals; ++i) parts *= 10;
  const long all = std::lround(std::abs(deg) * 60 * static_cast<double>(parts));
  const long minutes = all / parts;
  char text[48];
  int length = std::snprintf(text, sizeof text, "%0*ld°%02ld", degree_digits, minutes / 60, minutes % 60);
  if (decimals > 0) length += std::snprintf(text + length, sizeof text - static_cast<std::size_t>(length), ".%0*ld", decimals, all % parts);
  return std::string(text) + "′" + (deg < 0 && all != 0 ? negative : positive);
}

}  // namespace

std::string latitude_figures(double lat_deg, int decimals) { return arc_figures(lat_deg, decimals, 2, 'N', 'S'); }

std::string longitude_figures(double lon_deg, int decimals) { return arc_figures(reduce_longitude_deg(lon_deg), decimals, 3, 'E', 'W'); }

std::string position_figures(Position position, int decimals) {
  return latitude_figures(position.lat_deg, decimals) + " " + longitude_figures(position.lon_deg, decimals);
}

}  // namespace fogsheet
