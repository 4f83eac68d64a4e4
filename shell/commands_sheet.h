// The commands that change the document, or open another.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> sheet_commands();

/// Lays a sheet over the one in hand, as a step named so.
void lay_down(Session& session, Document document, Act act);

}  // namespace fogsheet
