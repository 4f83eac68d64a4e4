// The sheet that lies ready at the first visit: an invented water, to try the straight-edge on.
#pragma once

#include "core/document/document.h"

namespace fogsheet {

/// Its first two marks are the ends of its middle leg.
Document demo_sheet();

}  // namespace fogsheet
