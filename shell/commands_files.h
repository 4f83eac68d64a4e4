// The commands of files: what a file holds put on the sheet or on a new one, and the sheet saved for other programs.
#pragma once

#include "core/document/import_actions.h"
#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> file_commands();

/// What of it was not taken in is forgotten, and its reading ended.
void put_file_away(Session& session);

/// Why a new sheet of what the file in hand holds can't be made; none when it can.
std::optional<Problem> no_sheet_of_file(const Session& session);
/// What would come on the sheet in hand of it.
Import import_of_file(const Session& session);

}  // namespace fogsheet
