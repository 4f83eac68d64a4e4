#include "shell/canvas/overlay.h"

#include <cmath>

#include "core/sheet/sheet_point.h"

namespace fogsheet {
ScreenPoint Overlay::moved(ScreenPoint p, double direction, double px) const {
  const SheetVector v = towards(direction);
  return {p.x_px + brush_.apart(px) * v.x_mm, p.y_px + brush_.apart(px) * v.y_mm};
}

void Overlay::snap_ticks(ScreenPoint at) {
  for (const double direction : {0.0, 90.0, 180.0, 270.0}) brush_.line(moved(at, direction, 11), moved(at, direction, 19), Ink::focus, 2.6);
}

void Overlay::grip(ScreenPoint at, double direction_deg, double radius_px) {
  brush_.disc(at, radius_px, Ink::paper, Ink::edge, 1.5);
  for (const double side : {-0.24, 0.24}) {
    const ScreenPoint middle = moved(at, direction_deg + 90, side * radius_px);
    brush_.line(moved(middle, direction_deg, 0.46 * radius_px), moved(middle, direction_deg + 180, 0.46 * radius_px), Ink::edge, 1.7);
  }
}

void Overlay::parallel_sign(ScreenPoint at, double direction_deg) {
  for (const double along : {-3.0, 3.0}) {
    const ScreenPoint middle = moved(at, direction_deg, along);
    brush_.line(moved(middle, direction_deg + 60, 8), moved(middle, direction_deg + 240, 8), Ink::ink, 1.8);
  }
}

void Overlay::cut_dot(ScreenPoint at) {
  brush_.disc(at, 4.6, Ink::ink, Ink::paper, 1.3);
}

void Overlay::settle_mark(ScreenPoint at) {
  const auto cross = [&](Ink ink, double width_px) {
    for (const double direction : {0.0, 90.0}) brush_.line(moved(at, direction, 9), moved(at, direction + 180, 9), ink, width_px);
  };
  cross(Ink::paper, 4);
  cross(Ink::ink, 1.5);
  brush_.disc(at, 3.7, Ink::ink, Ink::paper, 1.2);
}

}  // namespace fogsheet
