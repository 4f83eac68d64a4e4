// The commands of the drawer of sheets: take one in hand, copy, throw away and put back, save as a file; and going
// back to any step of a sheet's past.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> drawer_commands();

/// A sheet's key as commands take it.
std::string key_text(SheetKey key);

/// The sheet that argument `key` names; the one in hand where it is left out. Faults: sheet_unknown, entry_empty.
Result<SheetKey> sheet_argument(const Session& session, const Value& arguments);

}  // namespace fogsheet
