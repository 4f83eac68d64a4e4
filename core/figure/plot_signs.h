// The signs that a plot wears: positions (dead reckoning, estimated, fix) and heads of lines, as the two schools draw them.
// Source: the signs of set A are those taught in British and South African schools, of set B in American ones (common
// practice, no source).
#pragma once

#include "core/document/document.h"
#include "core/figure/figure.h"
#include "core/figure/legibility.h"

namespace fogsheet {

enum class PlotSign { dead_reckoning, estimated_position, fix };

/// @param track_deg  the direction of the track it lies on, deg clockwise from north on the paper.
void add_position_sign(std::vector<Shape>& layer, PlotSign sign, SheetPoint at, double track_deg, SignSet set, const Legibility& legibility);

/// Arrowheads along a line: one for a water track, two for a ground track, three for a stream. The foremost has its point at `at`.
/// @param room_mm  of the line: where it is shorter than they are, they are drawn smaller.
void add_heads(std::vector<Shape>& layer, SheetPoint at, double direction_deg, int count, Ink ink, const Legibility& legibility, double room_mm = 1e9);

/// What so many of them take along a line that has room.
double heads_length_mm(int count, const Legibility& legibility);

}  // namespace fogsheet
