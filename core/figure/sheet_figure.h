// The figure of a whole sheet: paper, graticule, border, roses, dangers, legs, marks, labels, title. Placed, thinned and
// culled by its Legibility alone, never by the window it is looked at through, so that labels stay put while panning.
#pragma once

#include "core/document/facts.h"
#include "core/figure/check_line.h"
#include "core/figure/figure.h"
#include "core/figure/legibility.h"

namespace fogsheet {

/// What a rose shows: how its magnetic ring is turned, and what stands in it (value with year and change; value used).
struct RoseNote {
  std::optional<Variation> used;  // none: no magnetic ring
  std::vector<std::string> lines;
};

/// What the sheet's own margin says, in the user's words; made by shell.
struct SheetNotes {
  std::string title;
  std::string subtitle;    // italic; may be empty
  std::string made_as;     // "Mercator, WGS84 · 1 : 100 000 at 44°08.9'N"
  std::vector<std::string> remarks;  // the user's own note on the sheet, a line each
  std::vector<RoseNote> roses;       // in the order of the document's
  std::optional<PrintWords> print;   // on paper alone: a check line with its words, where they hide least
};

struct FigureSettings {
  Legibility legibility;
  Rounding rounding = Rounding::whole_degrees;
};

Figure sheet_figure(const Document& document, const SheetNotes& notes, const FigureSettings& settings);

}  // namespace fogsheet
