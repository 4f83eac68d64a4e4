// What scripts read: the document and what follows from it, as one tree of values (README, "Scripting").
#pragma once

#include "shell/session.h"
#include "shell/value.h"

namespace fogsheet {

Value read_session(const Session& session);

/// Where a thing of the canvas lies: {x, y, width, height}, CSS px; null when off the canvas, or when a press at its middle
/// would reach another thing. Places ("rose/…", "sheet/…") are null only off the canvas.
Value where_on_canvas(const Session& session, const std::string& name);

}  // namespace fogsheet
