// Dividers as pure geometry on the paper: opened between two points, carried to the latitude scale level with the work,
// read there, or walked along a line. Carrying and walking never change the opening.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/directions/directions.h"
#include "core/positions/position.h"
#include "core/sheet/projection.h"
#include "core/sheet/sheet_point.h"

namespace fogsheet {

struct Dividers {
  SheetPoint a;
  SheetPoint b;

  bool operator==(const Dividers&) const = default;
};

double opening_mm(const Dividers& dividers);

/// Opened or closed to that many mm about `a`, in the direction they lie; to the east where they are shut.
Dividers opened_to(const Dividers& dividers, double opening_mm);

/// Where the hinge stands, seen flat: over the middle of the opening, that far off it, to the left or the right of the way
/// from `a` to `b`. Shut dividers have it above them.
SheetPoint hinge(const Dividers& dividers, bool to_the_left, double off_mm);

/// Whether the hinge is on the left when it stands on the upper side, away from what is read below; of dividers that stand
/// upright, on the side of `inward`, the sheet's middle.
bool hinge_is_left(const Dividers& dividers, SheetPoint inward);

/// Swung about one point onto a line: `b` comes to lie from `a` towards that point, as far off as before. A point on `a`
/// itself leaves them as they were.
Dividers swung_towards(const Dividers& dividers, SheetPoint point);

/// Walked one step on in the direction they lie: the old `b` is the new `a`.
Dividers walked(const Dividers& dividers);

/// Set upright on a latitude scale at that x, level with the work: their middle at the height it had; `b` to the north.
Dividers at_latitude_scale(const Dividers& dividers, double scale_x_mm);

/// What dividers read level with their work.
struct DividersReading {
  double scale_minutes = 0;  // minutes of the latitude scale between the points: miles, as the hand takes them
  double distance_nm = 0;    // miles of 1852 m by the scale of the sheet at that height
};

/// The opening read on the latitude scale about the height of their middle. On one sheet a minute is 1843 m at the equator
/// and 1861 m at 75 degrees, which is what the two figures differ by.
DividersReading read_dividers(const Dividers& dividers, const Projection& projection);

/// The opening for so many minutes of the latitude scale about that latitude, mm. @param minutes at least 0.
double opening_for_minutes_mm(double minutes, double lat_deg, const Projection& projection);

/// The same for so many miles of 1852 m. @param distance_nm at least 0.
double opening_for_distance_mm(double distance_nm, double lat_deg, const Projection& projection);

/// A line measured by walking: whole steps, where they end, and the rest to close on.
struct SteppedLine {
  int steps = 0;
  SheetPoint last;     // the end of the last whole step
  double rest_mm = 0;  // from there to the end of the line, less than the opening
};

/// Faults: number_out_of_range for an opening under 1 mm, or one that takes over 10 000 steps.
Result<SteppedLine> step_along(SheetPoint from, SheetPoint to, double step_mm);

/// Where `steps` steps from a point lie, one after another towards another point and, if need be, on past it. None when the
/// points are one.
std::vector<SheetPoint> steps_towards(SheetPoint from, SheetPoint towards, double step_mm, int steps);

/// A mark set by bearing and distance from another: the end of that rhumb line, as documents keep positions.
/// Faults: latitude_out_of_range, number_out_of_range ("distance": given, 0, most).
Result<GridPosition> mark_by_bearing_and_distance(Position from, TrueDirection bearing, double distance_nm);

}  // namespace fogsheet
