#include "core/sheet/sheet_fit.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogsheet {
namespace {

constexpr double k_scale_of_one_place = 50'000;
constexpr double k_trial_scale = 100'000;

double rounded_up(double scale) {
  const double step = scale <= 200'000 ? 5'000 : scale <= 500'000 ? 10'000 : 50'000;
  return std::ceil(scale / step - 1e-9) * step;
}

// Where the shortest arc of longitudes that holds all of them begins: after the widest gap between neighbours.
double westernmost_deg(std::span<const Position> places) {
  std::vector<double> sorted;
  for (const Position& place : places) sorted.push_back(reduce_longitude_deg(place.lon_deg));
  std::sort(sorted.begin(), sorted.end());
  double west_deg = sorted.front(), widest_deg = sorted.front() + 360 - sorted.back();
  for (std::size_t i = 1; i < sorted.size(); ++i) {
    const double gap_deg = sorted[i] - sorted[i - 1];
    if (gap_deg <= widest_deg) continue;
    widest_deg = gap_deg;
    west_deg = sorted[i];
  }
  return west_deg;
}

}  // namespace

Result<FittedSheet> sheet_holding(std::span<const Position> places, Paper paper, double margin_mm) {
  if (places.empty()) return Problem{.fault = Fault::entry_empty, .texts = {"position"}};
  const double west_deg = westernmost_deg(places);
  double east_by_deg = 0, south_deg = places.front().lat_deg, north_deg = south_deg;
  for (const Position& place : places) {
    const double by_deg = reduce_longitude_deg(place.lon_deg) - west_deg;
    east_by_deg = std::max(east_by_deg, by_deg < 0 ? by_deg + 360 : by_deg);
    south_deg = std::min(south_deg, place.lat_deg);
    north_deg = std::max(north_deg, place.lat_deg);
  }
  // The middle is the middle on paper: on Mercator's latitude scale, not in degrees.
  const double middle_lon_deg = reduce_longitude_deg(west_deg + east_by_deg / 2);
  const Projection about_mean({(south_deg + north_deg) / 2, middle_lon_deg}, k_trial_scale, paper);
  const double middle_y_mm = (about_mean.y_mm(south_deg) + about_mean.y_mm(north_deg)) / 2;
  const Position middle{about_mean.to_position({0, middle_y_mm}).lat_deg, middle_lon_deg};

  const Projection trial(middle, k_trial_scale, paper);
  const double wide_mm = trial.x_mm(trial.continuous_longitude_deg(0) + east_by_deg) - trial.x_mm(trial.continuous_longitude_deg(0));
  const double high_mm = trial.y_mm(south_deg) - trial.y_mm(north_deg);
  const SheetRect& neat = trial.neat_line();
  const double share = std::max(wide_mm / (neat.width_mm() - 2 * margin_mm), high_mm / (neat.height_mm() - 2 * margin_mm));
  const double wanted = share * k_trial_scale;
  if (wanted > k_greatest_scale) return Problem{.fault = Fault::sheet_too_wide, .numbers = {rounded_up(wanted), k_greatest_scale}};
  if (wanted < 1) return FittedSheet{middle, k_scale_of_one_place};
  return FittedSheet{middle, std::max(k_least_scale, rounded_up(wanted))};
}

}  // namespace fogsheet
