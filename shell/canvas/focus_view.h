// The ring about the thing that the keys are on, and what arrows have moved and not yet put down.
#pragma once

#include "shell/canvas/overlay.h"
#include "shell/session.h"

namespace fogsheet {

void draw_focus(const Session& session, const Thing& thing, Overlay& overlay);

}  // namespace fogsheet
