// The commands that change the document, or open another.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> sheet_commands();

}  // namespace fogsheet
