// The commands of the desk: instruments, camera, tools and slips. None of them changes the document.
#pragma once

#include <optional>
#include <string_view>

#include "shell/commands.h"

namespace fogsheet {

/// Slips by the names that open-slip takes, and those that open with what is selected: "mark", "leg", "note".
const char* slip_name(SlipId id);
std::optional<SlipId> slip_named(std::string_view name);

std::vector<Command> desk_commands();

}  // namespace fogsheet
