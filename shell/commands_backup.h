// Commands that save all that is kept as one file, and take such a file in.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> backup_commands();

/// Saves all that is kept, with the photographs that the page has listed. @param were_read  whether it could read them
void save_everything(Session& session, bool were_read);

}  // namespace fogsheet
