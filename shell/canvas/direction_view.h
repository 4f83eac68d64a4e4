// An edge that was set to a direction: its ghost with its dots on the rose it was set at, and the line that would be drawn
// along it from the mark it was slid to.
#pragma once

#include "shell/canvas/overlay.h"
#include "shell/session.h"

namespace fogsheet {

void draw_set_here(const Session& session, const DirectionSet& direction, Overlay& overlay);
void draw_line_along_edge(const Session& session, Overlay& overlay);

}  // namespace fogsheet
