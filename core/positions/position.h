// Where something is on the earth: as computed (degrees) and as kept (whole 0.0001').
#pragma once

#include <compare>
#include <cstdint>

#include "core/base/result.h"

namespace fogsheet {

inline constexpr double k_max_sheet_latitude_deg = 75.0;  // beyond it a Mercator sheet stretches too fast to measure on

/// WGS84. @param lat_deg in (-90, 90), north positive; lon_deg east positive, any, reduced where it is used.
struct Position {
  double lat_deg = 0;
  double lon_deg = 0;

  bool operator==(const Position&) const = default;
};

/// Reduces to [-180, 180).
double reduce_longitude_deg(double lon_deg);

/// A position as documents keep it: whole 0.0001 minutes (0.19 m). Longitude in [-180, 180) degrees.
struct GridPosition {
  std::int32_t lat = 0;  // 0.0001', within +-45 000 000 (75 deg)
  std::int32_t lon = 0;  // 0.0001', within [-108 000 000, 108 000 000)

  auto operator<=>(const GridPosition&) const = default;
};

inline constexpr double k_grid_per_degree = 600'000.0;

/// The nearest grid position; halves away from zero; longitude reduced. `position` must be finite and within the sheet's latitudes.
GridPosition quantise(Position position);
Position unquantise(GridPosition grid);

/// A position that a document may hold: finite, latitude within +-75, longitude within +-180.
/// Faults: latitude_out_of_range, longitude_out_of_range, number_missing.
Result<GridPosition> checked_position(double lat_deg, double lon_deg);

}  // namespace fogsheet
