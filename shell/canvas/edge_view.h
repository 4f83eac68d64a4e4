// The straight-edge on the sheet: its tint, which lies under the rose's figures, and its lines, handles and readings, which
// lie above.
#pragma once

#include "shell/canvas/overlay.h"
#include "shell/session.h"

namespace fogsheet {

void draw_edge_tint(const Session& session, const StraightEdge& edge, Brush& brush);
void draw_edge(const Session& session, const StraightEdge& edge, bool sliding, Overlay& overlay);

}  // namespace fogsheet
