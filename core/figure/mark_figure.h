// The signs of marks: a post for a landmark, a post with rays for a light, a diagonal cross for a turning point, a dotted ring
// with a cross for a danger, a dotted circle for any other. Landmarks stand on their place as INT 1 has it: a small
// position circle at the foot.
#pragma once

#include "core/document/document.h"
#include "core/figure/figure.h"
#include "core/figure/label_placer.h"
#include "core/figure/legibility.h"

namespace fogsheet {

/// @param danger_radius_mm the danger's ring on the paper; other kinds ignore it.
void add_mark_sign(Figure& figure, MarkKind kind, SheetPoint at, double danger_radius_mm, const Legibility& legibility);

/// What the sign itself covers, for labels to keep clear of.
Box sign_box(MarkKind kind, SheetPoint at, const Legibility& legibility);

}  // namespace fogsheet
