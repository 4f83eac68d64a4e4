// Commands of the photograph under the sheet.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> photograph_commands();

}  // namespace fogsheet
