// The dividers on the sheet, seen flat: two thin legs from their hinge to fine points, what lies between these, and the
// steps of a leg they were walked along.
#pragma once

#include "shell/canvas/overlay.h"
#include "shell/session.h"

namespace fogsheet {

/// @param with_handles  while they are in hand; else they lie there as they are.
void draw_dividers(const Session& session, const DividersOnSheet& dividers, bool with_handles, Overlay& overlay);

}  // namespace fogsheet
