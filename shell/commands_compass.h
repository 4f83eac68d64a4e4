// Commands on boats, their compasses, and the card that a sheet is steered by.
#pragma once

#include "shell/commands.h"

namespace fogsheet {

std::vector<Command> compass_commands();

/// On the entries of a compass's log (commands_log.cpp).
std::vector<Command> log_commands();

/// Runs an action on the boat in hand, then brings the desk in line with her.
template <class Action>
auto acted_on_boat(Session& session, Action action) {
  auto result = action(boat_in_hand(session)->history);
  if (result) {
    settle_compass_desk(session);
    session.compass_desk.last_step_here = true;
  }
  return result;
}

std::optional<Fault> no_boat(const Session& session);

}  // namespace fogsheet
