// A plotted passage as it is drawn on its sheet: lines with the heads that tell them apart, or what American schools write on
// them instead; signs of positions with their times.
#pragma once

#include "core/directions/rounding.h"
#include "core/figure/figure.h"
#include "core/figure/label_placer.h"
#include "core/figure/legibility.h"
#include "core/figure/passage_plot.h"

namespace fogsheet {

struct SheetNotes;
struct FigureSettings;

/// Lines and signs. Labels keep clear of them.
void add_passage(Figure& figure, LabelPlacer& placer, const PlottedPassage& plot, SignSet set, const Legibility& legibility);

/// What stands beside them, as far as there is room: triangles, then times.
void add_passage_labels(Figure& figure, LabelPlacer& placer, const PlottedPassage& plot, SignSet set, Rounding rounding, const Legibility& legibility);

/// "½ h", "20 min", "2 h".
std::string laid_off_for(int minutes);

/// The figure of a whole sheet with a passage plotted on it.
Figure sheet_figure(const Document& document, const SheetNotes& notes, const FigureSettings& settings, const PlottedPassage& plot);

}  // namespace fogsheet
