// The commands that put the sheet on paper, or into a file that others can read.
#pragma once

#include <vector>

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> print_commands();

}  // namespace fogsheet
