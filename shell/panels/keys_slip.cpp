// All keys, as the tables of tools, of commands and of keys have them.
#include "shell/commands.h"
#include "shell/keys.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words_of_things.h"

namespace fogsheet {

Panel keys_slip(const Session& session) {
  Panel slip{.name = "keys", .label = words::keys_title()};
  slip.items.push_back(HeadingItem{.text = words::keys_title(), .beside = words::keys_beside()});
  slip.items.push_back(parts::close_button());
  if (!session.settings.single_keys) slip.items.push_back(LineItem{.text = words::single_keys_off(), .tone = LineTone::strong});
  TableItem table{.name = "keys", .caption = words::keys_title(), .columns = {{"key"}, {"what it does"}}};
  for (const ToolRow& row : tool_table())
    if (*row.key) table.rows.push_back({row.key, words::take_tool(row.name)});
  for (const Command& command : command_table())
    if (*command.key) table.rows.push_back({shown_key(command), command.label});
  for (const KeyRow& row : key_table()) table.rows.push_back({row.shown, row.does});
  slip.items.push_back(std::move(table));
  slip.items.push_back(ButtonItem{.name = "settings", .label = words::single_keys_question(), .on_press = {"open-slip", Value::object({{"slip", "settings"}})}});
  return slip;
}

}  // namespace fogsheet
