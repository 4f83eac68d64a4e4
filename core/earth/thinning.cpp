#include "core/earth/thinning.h"

#include <algorithm>
#include <cmath>
#include <queue>

#include "core/base/units.h"
#include "core/earth/mercator.h"

namespace fogsheet {
namespace {

// On Mercator's projection of a globe of radius 1; the projection is conformal, so a short length there is that many radii
// of the parallel, whichever way it runs.
struct Spot {
  double x = 0, y = 0;
  double radius_m = 0;
};

std::vector<Spot> on_projection(std::span<const GridPosition> points) {
  std::vector<Spot> spots;
  spots.reserve(points.size());
  double x = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Position at = unquantise(points[i]);
    if (i > 0) x += reduce_longitude_deg(at.lon_deg - unquantise(points[i - 1]).lon_deg) * k_degree_rad;
    spots.push_back({x, isometric_latitude(at.lat_deg), parallel_radius_m(at.lat_deg)});
  }
  return spots;
}

double distance_m(const Spot& spot, const Spot& from, const Spot& to) {
  const double along_x = to.x - from.x, along_y = to.y - from.y, length2 = along_x * along_x + along_y * along_y;
  const double share = length2 > 0 ? std::clamp(((spot.x - from.x) * along_x + (spot.y - from.y) * along_y) / length2, 0.0, 1.0) : 0;
  return std::hypot(spot.x - from.x - share * along_x, spot.y - from.y - share * along_y) * spot.radius_m;
}

// A piece between two kept points, and the point in it that lies farthest off.
struct Piece {
  std::uint32_t first = 0, last = 0, worst = 0;
  double off_m = 0;
  bool operator<(const Piece& other) const { return off_m != other.off_m ? off_m < other.off_m : first > other.first; }
};

Piece piece_between(const std::vector<Spot>& spots, std::uint32_t first, std::uint32_t last) {
  Piece piece{first, last, first, 0};
  for (std::uint32_t i = first + 1; i < last; ++i) {
    const double off_m = distance_m(spots[i], spots[first], spots[last]);
    if (off_m > piece.off_m) piece = {first, last, i, off_m};
  }
  return piece;
}

}  // namespace

Thinned thinned(std::span<const GridPosition> points, double tolerance_m, std::size_t most) {
  Thinned result;
  const auto count = static_cast<std::uint32_t>(points.size());
  if (count < 3) {
    for (std::uint32_t i = 0; i < count; ++i) result.kept.push_back(i);
    return result;
  }
  const std::vector<Spot> spots = on_projection(points);
  std::priority_queue<Piece> pieces;
  pieces.push(piece_between(spots, 0, count - 1));
  result.kept = {0, count - 1};
  while (pieces.top().off_m > tolerance_m && result.kept.size() < most) {
    const Piece piece = pieces.top();
    pieces.pop();
    result.kept.push_back(piece.worst);
    pieces.push(piece_between(spots, piece.first, piece.worst));
    pieces.push(piece_between(spots, piece.worst, piece.last));
  }
  result.within_m = pieces.top().off_m;
  std::sort(result.kept.begin(), result.kept.end());
  return result;
}

}  // namespace fogsheet
