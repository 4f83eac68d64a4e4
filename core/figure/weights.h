// Line weights and text heights by role: on paper in millimetres, and how they give way to what can be seen.
#pragma once

#include <optional>

#include "core/figure/legibility.h"

namespace fogsheet {

enum class Stroke {
  graticule_minor, graticule_major, neat_line, border, ring, ring_1_deg, ring_5_deg, ring_10_deg, leg, turn, mark, danger, reading_edge, edge,
};

/// The weight of a stroke, mm: its own on paper, never less than its least on a screen.
double weight_mm(Stroke stroke, const Legibility& legibility);

/// A measure that has a size on paper and a least size in pixels (lines of weight 1): signs, offsets.
double measure_mm(double paper_mm, double least_px, const Legibility& legibility);

enum class Lettering { border_minor, border_major, ring_true, ring_magnetic, rose_note, name, course, title, note, scale_bar };

/// The em height of a text, mm: its own on paper, larger where it could not be read, but at most 1.6 times its own (titles
/// and whole minutes more). None where it can't be read even so: it is then left out.
std::optional<double> height_mm(Lettering lettering, const Legibility& legibility);

}  // namespace fogsheet
