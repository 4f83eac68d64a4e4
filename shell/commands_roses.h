// The commands of roses and of the words written on the sheet.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> rose_commands();
std::vector<Command> note_commands();

}  // namespace fogsheet
