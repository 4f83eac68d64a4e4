// Commands on passages and the way they are run.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> passage_commands();
std::vector<Command> under_way_commands();

/// Why not now: there is no passage in hand.
std::optional<Fault> no_passage(const Session& session);

}  // namespace fogsheet
