// The commands about where the device says it is.
#pragma once

#include <vector>

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> own_position_commands();

}  // namespace fogsheet
