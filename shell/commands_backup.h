// Commands that save all that is kept as one file, and take such a file in.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> backup_commands();

}  // namespace fogsheet
