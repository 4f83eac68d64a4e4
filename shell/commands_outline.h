// Commands of the outline and of what the keys do to one thing of the sheet.
#pragma once

#include <vector>

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> outline_commands();

/// The keys are on that thing: it is in the part of the outline that is shown, and in view on the sheet.
void focus_on(Session& session, const Thing& thing);

/// Rubs out what the keys are on; they go on to what stands there then.
void rub_out_under_keys(Session& session, const Thing& thing);

/// Shows another part of the outline, with the keys on its first thing.
void page_outline(Session& session, std::size_t from);

}  // namespace fogsheet
