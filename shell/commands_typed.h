// Commands that fields send when they are left: what was typed becomes part of the sheet, or is kept with the reason why
// it can't.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> typed_commands();

}  // namespace fogsheet
