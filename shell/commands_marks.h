// Commands that change, copy, place and order marks and legs.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> mark_commands();
std::vector<Command> leg_commands();

}  // namespace fogsheet
