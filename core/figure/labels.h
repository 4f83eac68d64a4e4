// Labels as they stand on a sheet: level beside a sign, or turned along a line. Each is placed by the LabelPlacer, or left out.
#pragma once

#include "core/figure/figure.h"
#include "core/figure/label_placer.h"

namespace fogsheet {

/// The turn of a text along a line of that direction: never upside down, in (-90, 90].
double upright_turn_deg(double direction_deg);

/// Beside what a sign covers: to its right, above, below, to its left, slantwise, else, where it may, a line further off.
/// @param label  its text, height, face and ink; where it stands is found. @return false: all places are taken.
bool add_label_beside(Figure& figure, LabelPlacer& placer, const Box& sign, Text label, bool further_off = true);

/// Above a line or below it, near its middle. @param weight_mm the line's; most_part of it that the label may
/// take. @return false: no place, or the line is too short.
bool add_label_along(Figure& figure, LabelPlacer& placer, SheetPoint from, SheetPoint to, double weight_mm, bool above, Text label, double most_part = 0.56);

}  // namespace fogsheet
