// The commands by which a sheet goes to somebody else, and one that came by a link is opened.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> send_commands();

/// The sheet in hand as it goes: without its card where that is to stay here.
Document sent_document(const Session& session);

}  // namespace fogsheet
