// The sheet's projection: Mercator on WGS84, true to scale at the middle latitude, with the middle position at the middle
// of the neat line. A sheet across 180 degrees is one continuous sheet: longitudes are taken the short way from the middle.
#pragma once

#include "core/positions/position.h"
#include "core/sheet/paper.h"
#include "core/sheet/sheet_point.h"

namespace fogsheet {

inline constexpr double k_least_scale = 25'000;      // 1:25 000
inline constexpr double k_greatest_scale = 1'000'000;  // 1:1 000 000

/// What the neat line encloses. East may pass 180: east_deg > west_deg always.
struct SheetLimits {
  double north_deg = 0;
  double south_deg = 0;
  double west_deg = 0;
  double east_deg = 0;
};

class Projection {
 public:
  /// @param middle latitude within +-75; scale the number after 1:.
  Projection(Position middle, double scale, Paper paper);

  /// Where a position lies on the paper. Positions off the sheet lie off the paper; latitude in (-90, 90).
  SheetPoint to_sheet(Position position) const;

  /// The position of a point; longitude reduced to [-180, 180).
  Position to_position(SheetPoint point) const;

  /// The longitude of a point without reducing it, so that it grows eastward across 180.
  double continuous_longitude_deg(double x_mm) const;
  double x_mm(double continuous_longitude_deg) const;
  double y_mm(double lat_deg) const;

  const SheetLimits& limits() const { return limits_; }
  const SheetRect& neat_line() const { return neat_line_; }

  /// Length on the paper of a nautical mile of 1852 m at a latitude, mm: Mercator's scale grows with the latitude.
  double mm_per_nm(double lat_deg) const;

 private:
  double mm_per_radian_;
  double middle_psi_;
  double middle_lon_deg_;
  SheetPoint centre_;
  SheetRect neat_line_;
  SheetLimits limits_;
  double scale_;
  double middle_lat_deg_;
};

/// The middle latitude's band that a sheet of that scale and paper may have, so that no edge passes +-75 deg.
/// True when the whole sheet lies within it.
bool sheet_within_bounds(Position middle, double scale, Paper paper);

}  // namespace fogsheet
