// The passage in hand as it is drawn on the sheet, on screen and on paper.
#pragma once

#include "core/figure/passage_figure.h"

namespace fogsheet {

struct Session;

/// Nothing where no passage was made.
PlottedPassage plotted_passage(const Session& session);

}  // namespace fogsheet
