// All that has no well of its own: palette, link, lists, what a narrow tray leaves out, and the cautions.
#include "shell/commands.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/form_words.h"
#include "shell/words.h"
#include "shell/words_of_own_position.h"
#include "shell/words_of_passage.h"
#include "shell/words_of_photographs.h"
#include "shell/words_of_print.h"
#include "shell/words_of_sending.h"
#include "shell/words_of_things.h"

namespace fogsheet {

namespace {

/// A tool that has no well in the tray.
ButtonItem tool_button(const Session& session, ToolId tool, const char* word) {
  const ToolRow& row = tool_row(tool);
  return {.name = std::string("tool/") + row.name, .label = word, .icon = row.icon, .key = row.key, .pressed = session.desk.tool == tool,
          .on_press = {"tool", Value::object({{"tool", row.name}})}};
}

}  // namespace

Panel more_slip(const Session& session) {
  Panel slip{.name = "more", .label = "More"};
  slip.items.push_back(HeadingItem{.text = "More"});
  slip.items.push_back(parts::close_button());
  if (session.phone()) {
    slip.items.push_back(ButtonItem{.name = "drawer", .label = "Drawer", .icon = "sheet", .on_press = {"open-slip", Value::object({{"slip", "drawer"}})}});
    slip.items.push_back(ButtonItem{.name = "closer", .label = "Closer", .icon = "plus", .on_press = {"closer"}});
    slip.items.push_back(ButtonItem{.name = "wider", .label = "Wider", .icon = "minus", .on_press = {"wider"}});
  }
  if (!session.wide()) {
    const bool can = redo_label(session) != nullptr;
    slip.items.push_back(ButtonItem{.name = "redo", .label = "Redo", .icon = "redo", .enabled = can,
                                    .reason = can ? "" : words::sentence({.fault = Fault::no_redo}), .on_press = {"redo"}});
  }
  if (session.phone()) slip.items.push_back(tool_button(session, ToolId::dividers, "Dividers"));
  slip.items.push_back(tool_button(session, ToolId::note, "Write a note"));
  slip.items.push_back(ButtonItem{.name = "compass", .label = "Compass", .on_press = {"open-slip", Value::object({{"slip", "compass"}})}});
  slip.items.push_back(ButtonItem{.name = "stream", .label = words::stream_title(session.document()), .on_press = {"open-slip", Value::object({{"slip", "stream"}})}});
  slip.items.push_back(ButtonItem{.name = "rough-method", .label = "Rough method", .on_press = {"open-slip", Value::object({{"slip", "rough-method"}})}});
  slip.items.push_back(ButtonItem{.name = "own-position", .label = words::own_position_title(), .on_press = {"open-slip", Value::object({{"slip", "own-position"}})}});
  slip.items.push_back(ButtonItem{.name = "fit", .label = "The whole sheet", .on_press = {"fit"}});
  add_palette(slip, session);
  slip.items.push_back(ButtonItem{.name = "keys", .label = words::keys_title(), .on_press = {"keys"}});
  slip.items.push_back(ButtonItem{.name = "show-outline", .label = words::outline_label(), .pressed = session.outline.open, .on_press = {"outline"}});
  slip.items.push_back(ButtonItem{.name = "lock-touch", .label = words::lock_touch(), .on_press = {"lock-touch"}});
  slip.items.push_back(ButtonItem{.name = "settings", .label = words::settings_title(), .on_press = {"open-slip", Value::object({{"slip", "settings"}})}});

  slip.items.push_back(HeadingItem{.text = "This sheet", .level = 3});
  parts::add_variation(slip, session);
  slip.items.push_back(ButtonItem{.name = "send", .label = words::send_title(), .on_press = {"open-slip", Value::object({{"slip", "send"}})}});
  slip.items.push_back(ButtonItem{.name = "sheet", .label = words::change_the_sheet(), .on_press = {"open-slip", Value::object({{"slip", "sheet"}})}});
  slip.items.push_back(ButtonItem{.name = "photograph", .label = words::photograph_title(), .on_press = {"open-slip", Value::object({{"slip", "photograph"}})}});
  slip.items.push_back(ButtonItem{.name = "print", .label = words::print_title(), .on_press = {"open-slip", Value::object({{"slip", "print"}})}});
  slip.items.push_back(ButtonItem{.name = "new-mark", .label = words::new_mark_title(), .on_press = {"open-slip", Value::object({{"slip", "new-mark"}})}});
  slip.items.push_back(ButtonItem{.name = "lists", .label = "Marks and legs", .on_press = {"open-slip", Value::object({{"slip", "lists"}})}});
  slip.items.push_back(FieldItem{.name = "open-text", .label = "Open a link or a sheet's text", .text = session.open_text, .error = session.open_text_error, .multiline = true, .on_leave = {"open-typed-text"}});
  slip.items.push_back(ButtonItem{.name = "new-sheet", .label = "A sheet of mine", .on_press = {"open-slip", Value::object({{"slip", "new-sheet"}})}});
  slip.items.push_back(ButtonItem{.name = "open-demo", .label = "The sheet to try", .on_press = {"open-demo"}});

  slip.items.push_back(HeadingItem{.text = "This page", .level = 3});
  slip.items.push_back(LineItem{.text = words::offline_line(session.offline_state), .tone = LineTone::soft});
  if (session.offline_state == "waiting")
    slip.items.push_back(ButtonItem{.name = "use-new-version", .label = "Use the newer version", .enabled = session.nothing_to_lose(), .reason = words::not_while_unkept(), .on_press = {"use-new-version"}});
  parts::add_standing_cautions(slip);
  return slip;
}

}  // namespace fogsheet
