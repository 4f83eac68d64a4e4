// The one table of commands: tray, menus, keys, help and scripts all read it. A command checks its arguments, does what a
// press would do, and answers {ok: true, id?} or {error} with the sentence the user sees.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shell/session.h"
#include "shell/value.h"

namespace fogsheet {

struct Argument {
  const char* name;
  const char* unit;  // "deg", "1:", "name", "id", ...: what the value is, for help and scripts
  bool optional = false;
};

struct Command {
  const char* name;
  const char* label;
  const char* key;  // as the browser names it; empty for none
  std::vector<Argument> arguments;
  /// Why not now; none when it can be done.
  std::optional<Fault> (*refusal)(const Session& session);
  Value (*run)(Session& session, const Value& arguments);
};

const std::vector<Command>& command_table();

/// Runs a command of the table.
Value run_command(Session& session, const std::string& name, const Value& arguments);

/// The table as scripts see it: name, label, key, arguments with their units, whether enabled.
Value describe_commands(const Session& session);

std::string link_of(const Session& session);

}  // namespace fogsheet
