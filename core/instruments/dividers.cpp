#include "core/instruments/dividers.h"

#include <algorithm>
#include <cmath>

#include "core/base/quantity_text.h"
#include "core/earth/mercator.h"
#include "core/earth/rhumb.h"

namespace fogsheet {

namespace {

constexpr double k_least_opening_mm = 1;
constexpr double k_most_steps = 10'000;
constexpr double k_minutes_per_degree = 60;

// Over a whole number of steps the sum of their lengths misses it by its last bits.
constexpr double k_whole_reach = 1e-9;

}  // namespace

double opening_mm(const Dividers& dividers) { return distance_mm(dividers.a, dividers.b); }

Dividers swung_towards(const Dividers& dividers, SheetPoint point) {
  const double reach_mm = distance_mm(dividers.a, point);
  if (reach_mm == 0) return dividers;
  return {.a = dividers.a, .b = dividers.a + opening_mm(dividers) / reach_mm * (point - dividers.a)};
}

Dividers walked(const Dividers& dividers) { return {.a = dividers.b, .b = dividers.b + (dividers.b - dividers.a)}; }

Dividers at_latitude_scale(const Dividers& dividers, double scale_x_mm) {
  const double middle_y_mm = midpoint(dividers.a, dividers.b).y_mm;
  const double half_mm = opening_mm(dividers) / 2;
  return {.a = {.x_mm = scale_x_mm, .y_mm = middle_y_mm + half_mm}, .b = {.x_mm = scale_x_mm, .y_mm = middle_y_mm - half_mm}};
}

DividersReading read_dividers(const Dividers& dividers, const Projection& projection) {
  const Dividers upright = at_latitude_scale(dividers, 0);
  const double south_deg = projection.to_position(upright.a).lat_deg;
  const double north_deg = projection.to_position(upright.b).lat_deg;
  return {.scale_minutes = (north_deg - south_deg) * k_minutes_per_degree, .distance_nm = meridian_arc_m(south_deg, north_deg) / k_metres_per_nm};
}

double opening_for_minutes_mm(double minutes, double lat_deg, const Projection& projection) {
  // Mercator's scale grows northwards, so that minutes even about the latitude are not even about its height; the dividers
  // are set with their middle level with the work.
  const double middle_y_mm = projection.y_mm(lat_deg);
  double opening = minutes * projection.mm_per_nm(lat_deg);
  constexpr int k_rounds = 20;
  for (int i = 0; i < k_rounds; ++i) {
    const Dividers set{.a = {.x_mm = 0, .y_mm = middle_y_mm + opening / 2}, .b = {.x_mm = 0, .y_mm = middle_y_mm - opening / 2}};
    const double read = read_dividers(set, projection).scale_minutes;
    if (read == 0) break;
    opening *= minutes / read;
  }
  return opening;
}

Result<SteppedLine> step_along(SheetPoint from, SheetPoint to, double step_mm) {
  const double line_mm = distance_mm(from, to);
  if (!(step_mm >= k_least_opening_mm))
    return Problem{.fault = Fault::number_out_of_range, .texts = {"opening"}, .numbers = {step_mm, k_least_opening_mm, line_mm}};
  const double steps = std::floor(line_mm / step_mm + k_whole_reach);
  if (steps > k_most_steps)
    return Problem{.fault = Fault::number_out_of_range, .texts = {"opening"}, .numbers = {step_mm, line_mm / k_most_steps, line_mm}};
  SteppedLine line{.steps = static_cast<int>(steps), .last = from};
  if (steps > 0) line.last = from + steps * step_mm / line_mm * (to - from);
  line.rest_mm = std::max(0.0, line_mm - steps * step_mm);
  return line;
}

Result<GridPosition> mark_by_bearing_and_distance(Position from, TrueDirection bearing, double distance_nm) {
  if (!(distance_nm >= 0 && distance_nm <= k_longest_length_nm))
    return Problem{.fault = Fault::number_out_of_range, .texts = {"distance"}, .numbers = {distance_nm, 0, k_longest_length_nm}};
  const Result<Position> end = rhumb_direct(from, bearing, distance_nm);
  if (!end.ok()) return end.problem();
  return checked_position(end->lat_deg, end->lon_deg);
}

}  // namespace fogsheet
