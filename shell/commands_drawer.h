// The commands of the drawer of sheets: take one in hand, copy, throw away and put back, save as a file and open one; and
// going back to any step of a sheet's past.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> drawer_commands();

/// A sheet's key as commands take it.
std::string key_text(SheetKey key);

}  // namespace fogsheet
