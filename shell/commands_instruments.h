// The commands of the dividers and of the rough method. Only the mark at a last step changes the document.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> instrument_commands();

}  // namespace fogsheet
