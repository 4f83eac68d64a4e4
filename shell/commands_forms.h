// The commands that the forms of panels send: what was typed is kept until it could be used.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> form_commands();

}  // namespace fogsheet
