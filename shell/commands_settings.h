// The commands by which the user says how things are shown on this device, and what the page does with the device. None of
// them touches the sheet.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> settings_commands();

}  // namespace fogsheet
