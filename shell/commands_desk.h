// The commands of the desk: instruments, camera, tools, slips and settings. None of them changes the document.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> desk_commands();

}  // namespace fogsheet
