// The sheet in hand on paper or as a file: what was chosen for it, its pages, and all of it as SVG at true size.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/figure/paper_pages.h"

namespace fogsheet {

struct Session;
struct Panel;

inline constexpr int k_picture_dots_an_inch[] = {150, 300, 600};

struct PrintChoice {
  std::optional<Paper> paper;   // none: the sheet's own
  bool blank = false;           // without what is plotted
  std::optional<bool> black;    // rose and lines, for a red torch; none: where the screen is dark
  int dots_an_inch = 300;       // of a picture
};

Paper print_paper(const Session& session);
bool prints_black(const Session& session);
PagePlan print_plan(const Session& session);

/// The sheet on its pages, small.
std::string print_picture(const Session& session);

/// The whole sheet as a file.
std::string sheet_as_svg(const Session& session);

/// What the browser prints: a figure a page.
Panel print_pages(const Session& session);

}  // namespace fogsheet
