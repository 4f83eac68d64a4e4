#include "shell/commands.h"

#include <iterator>

#include "shell/arguments.h"
#include "shell/commands_backup.h"
#include "shell/commands_compass.h"
#include "shell/commands_desk.h"
#include "shell/commands_drawer.h"
#include "shell/commands_files.h"
#include "shell/commands_forms.h"
#include "shell/commands_instruments.h"
#include "shell/commands_roses.h"
#include "shell/commands_send.h"
#include "shell/commands_settings.h"
#include "shell/commands_marks.h"
#include "shell/commands_outline.h"
#include "shell/commands_own_position.h"
#include "shell/commands_passage.h"
#include "shell/commands_photograph.h"
#include "shell/commands_print.h"
#include "shell/commands_sheet.h"
#include "shell/commands_typed.h"
#include "shell/words.h"

namespace fogsheet {

const std::vector<Command>& command_table() {
  static const std::vector<Command> table = [] {
    std::vector<Command> all = sheet_commands();
    for (std::vector<Command> more : {mark_commands(), leg_commands(), desk_commands(), settings_commands(), drawer_commands(), file_commands(), backup_commands(), photograph_commands(), send_commands(), instrument_commands(), rose_commands(), note_commands(), form_commands(), typed_commands(), outline_commands(), compass_commands(), log_commands(), passage_commands(), under_way_commands(), print_commands(), own_position_commands()})
      std::move(more.begin(), more.end(), std::back_inserter(all));
    return all;
  }();
  return table;
}

Value run_command(Session& session, const std::string& name, const Value& arguments) {
  for (const Command& command : command_table()) {
    if (name != command.name) continue;
    if (command.refusal)
      if (const std::optional<Fault> fault = command.refusal(session)) {
        session.refuse({.fault = *fault});
        session.message.refused = name;
        return refused({.fault = *fault});
      }
    session.slip_entered = false;
    Value answer = command.run(session, arguments);
    // What was refused stands in the margin too, as after a press, until the same is done.
    if (const std::string* error = answer["error"].text()) session.message = {*error, true, name};
    else if (session.message.refused == name) session.message = {};
    session.touch();
    return answer;
  }
  return Value::object({{"error", words::no_such_command(name)}});
}

Value describe_commands(const Session& session) {
  Value list = Value::list();
  for (const Command& command : command_table()) {
    Value arguments = Value::list();
    for (const Argument& argument : command.arguments)
      arguments.add(Value::object({{"name", argument.name}, {"unit", argument.unit}, {"optional", argument.optional}}));
    list.add(Value::object({{"name", command.name},
                            {"label", command.label},
                            {"key", command.key},
                            {"arguments", arguments},
                            {"enabled", !command.refusal || !command.refusal(session)}}));
  }
  return list;
}

}  // namespace fogsheet
