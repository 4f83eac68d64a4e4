#include "core/sheet/projection.h"

#include <cmath>

#include "core/base/check.h"
#include "core/base/units.h"
#include "core/earth/mercator.h"

namespace fogsheet {
namespace {

constexpr double k_radian_deg = 1 / k_degree_rad;
constexpr double k_mm_per_m = 1000;

}  // namespace

Projection::Projection(Position middle, double scale, Paper paper)
    : mm_per_radian_(k_mm_per_m / scale * parallel_radius_m(middle.lat_deg)),
      middle_psi_(isometric_latitude(middle.lat_deg)),
      middle_lon_deg_(reduce_longitude_deg(middle.lon_deg)),
      neat_line_(fogsheet::neat_line(paper)),
      scale_(scale),
      middle_lat_deg_(middle.lat_deg) {
  SHEET_CHECK(scale > 0, "a sheet needs a scale");
  centre_ = {(neat_line_.left_mm + neat_line_.right_mm) / 2, (neat_line_.top_mm + neat_line_.bottom_mm) / 2};
  limits_ = {.north_deg = to_position({centre_.x_mm, neat_line_.top_mm}).lat_deg,
             .south_deg = to_position({centre_.x_mm, neat_line_.bottom_mm}).lat_deg,
             .west_deg = continuous_longitude_deg(neat_line_.left_mm),
             .east_deg = continuous_longitude_deg(neat_line_.right_mm)};
}

double Projection::x_mm(double continuous_longitude_deg) const {
  return centre_.x_mm + mm_per_radian_ * (continuous_longitude_deg - middle_lon_deg_) / k_radian_deg;
}

double Projection::y_mm(double lat_deg) const { return centre_.y_mm - mm_per_radian_ * (isometric_latitude(lat_deg) - middle_psi_); }

double Projection::continuous_longitude_deg(double x_mm) const {
  return middle_lon_deg_ + (x_mm - centre_.x_mm) / mm_per_radian_ * k_radian_deg;
}

SheetPoint Projection::to_sheet(Position position) const {
  const double from_middle_deg = reduce_longitude_deg(position.lon_deg - middle_lon_deg_);
  return {x_mm(middle_lon_deg_ + from_middle_deg), y_mm(position.lat_deg)};
}

Position Projection::to_position(SheetPoint point) const {
  return {.lat_deg = latitude_from_isometric_deg(middle_psi_ + (centre_.y_mm - point.y_mm) / mm_per_radian_),
          .lon_deg = reduce_longitude_deg(continuous_longitude_deg(point.x_mm))};
}

double Projection::mm_per_nm(double lat_deg) const {
  return k_metres_per_nm * k_mm_per_m / scale_ * parallel_radius_m(middle_lat_deg_) / parallel_radius_m(lat_deg);
}

bool sheet_within_bounds(Position middle, double scale, Paper paper) {
  const SheetLimits limits = Projection(middle, scale, paper).limits();
  return limits.north_deg <= k_max_sheet_latitude_deg && limits.south_deg >= -k_max_sheet_latitude_deg;
}

}  // namespace fogsheet
