#include "core/positions/position.h"

#include <cmath>

#include "core/directions/directions.h"

namespace fogsheet {

namespace {

constexpr std::int32_t k_grid_half_circle = 108'000'000;

}  // namespace

double reduce_longitude_deg(double lon_deg) { return reduce_difference_deg(lon_deg); }

GridPosition quantise(Position position) {
  SHEET_CHECK(std::isfinite(position.lat_deg) && std::isfinite(position.lon_deg), "a position that is not a number");
  SHEET_CHECK(std::abs(position.lat_deg) <= k_max_sheet_latitude_deg, "a position beyond the latitudes of a sheet");
  const auto lat = std::lround(position.lat_deg * k_grid_per_degree);
  const auto lon = std::lround(reduce_longitude_deg(position.lon_deg) * k_grid_per_degree);
  return {.lat = static_cast<std::int32_t>(lat), .lon = static_cast<std::int32_t>(lon >= k_grid_half_circle ? -k_grid_half_circle : lon)};
}

Position unquantise(GridPosition grid) { return {.lat_deg = grid.lat / k_grid_per_degree, .lon_deg = grid.lon / k_grid_per_degree}; }

Result<GridPosition> checked_position(double lat_deg, double lon_deg) {
  if (!std::isfinite(lat_deg)) return Problem{.fault = Fault::number_missing, .texts = {"latitude"}};
  if (!std::isfinite(lon_deg)) return Problem{.fault = Fault::number_missing, .texts = {"longitude"}};
  if (std::abs(lat_deg) > k_max_sheet_latitude_deg)
    return Problem{.fault = Fault::latitude_out_of_range, .numbers = {lat_deg, k_max_sheet_latitude_deg}};
  if (std::abs(lon_deg) > 180) return Problem{.fault = Fault::longitude_out_of_range, .numbers = {lon_deg, 180}};
  return quantise({.lat_deg = lat_deg, .lon_deg = lon_deg});
}

}  // namespace fogsheet
