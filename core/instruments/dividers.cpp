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

// Mercator's scale grows northwards, so that miles even about a latitude are not even about its height; the dividers are
// set with their middle level with the work.
double opening_that_reads(double wanted, double lat_deg, const Projection& projection, double DividersReading::* figure) {
  const double middle_y_mm = projection.y_mm(lat_deg);
  double opening = wanted * projection.mm_per_nm(lat_deg);
  constexpr int k_rounds = 20;
  for (int i = 0; i < k_rounds; ++i) {
    const Dividers set{.a = {.x_mm = 0, .y_mm = middle_y_mm + opening / 2}, .b = {.x_mm = 0, .y_mm = middle_y_mm - opening / 2}};
    const double read = read_dividers(set, projection).*figure;
    if (read == 0) break;
    opening *= wanted / read;
  }
  return opening;
}

}  // namespace

double opening_mm(const Dividers& dividers) { return distance_mm(dividers.a, dividers.b); }

Dividers opened_to(const Dividers& dividers, double opening) {
  const double was_mm = opening_mm(dividers);
  const SheetVector run = was_mm == 0 ? SheetVector{.x_mm = 1, .y_mm = 0} : 1 / was_mm * (dividers.b - dividers.a);
  return {.a = dividers.a, .b = dividers.a + opening * run};
}

SheetPoint hinge(const Dividers& dividers, bool to_the_left, double off_mm) {
  const SheetPoint middle = midpoint(dividers.a, dividers.b);
  const double open_mm = opening_mm(dividers);
  if (open_mm == 0) return middle + SheetVector{.x_mm = 0, .y_mm = -off_mm};
  const SheetVector run = 1 / open_mm * (dividers.b - dividers.a);
  const SheetVector left{.x_mm = run.y_mm, .y_mm = -run.x_mm};
  return middle + (to_the_left ? off_mm : -off_mm) * left;
}

bool hinge_is_left(const Dividers& dividers, SheetPoint inward) {
  constexpr double k_upright = 0.2;  // of the opening: less of it across the paper, and neither side is the upper one
  const SheetVector run = dividers.b - dividers.a;
  if (std::abs(run.x_mm) >= k_upright * opening_mm(dividers)) return run.x_mm > 0;
  const SheetVector left{.x_mm = run.y_mm, .y_mm = -run.x_mm};
  return dot(left, inward - midpoint(dividers.a, dividers.b)) > 0;
}

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
  return opening_that_reads(minutes, lat_deg, projection, &DividersReading::scale_minutes);
}

double opening_for_distance_mm(double distance_nm, double lat_deg, const Projection& projection) {
  return opening_that_reads(distance_nm, lat_deg, projection, &DividersReading::distance_nm);
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

std::vector<SheetPoint> steps_towards(SheetPoint from, SheetPoint towards, double step_mm, int steps) {
  const double line_mm = distance_mm(from, towards);
  std::vector<SheetPoint> points;
  for (int i = 1; line_mm > 0 && i <= steps; ++i) points.push_back(from + i * step_mm / line_mm * (towards - from));
  return points;
}

Result<GridPosition> mark_by_bearing_and_distance(Position from, TrueDirection bearing, double distance_nm) {
  if (!(distance_nm >= 0 && distance_nm <= k_longest_length_nm))
    return Problem{.fault = Fault::number_out_of_range, .texts = {"distance"}, .numbers = {distance_nm, 0, k_longest_length_nm}};
  const Result<Position> end = rhumb_direct(from, bearing, distance_nm);
  if (!end.ok()) return end.problem();
  return checked_position(end->lat_deg, end->lon_deg);
}

}  // namespace fogsheet
