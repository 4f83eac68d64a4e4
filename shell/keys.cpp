#include "shell/keys.h"

#include <string_view>

#include "shell/commands.h"

namespace fogsheet {

const std::vector<KeyRow>& key_table() {
  static const std::vector<KeyRow> table = {
      {KeyAct::move, {"ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"}, "Arrows", "Move what has the focus or is selected by 1 px, with Shift by 10; else the paper"},
      {KeyAct::press, {"Enter"}, "Enter", "Put down what the arrows moved; in the list of things: press it with the tool in hand, else open its slip"},
      {KeyAct::rub_out, {"Delete", "Backspace"}, "Delete", "Rub out what has the focus or is selected"},
      {KeyAct::turn, {"[", "]", "{", "}"}, "[ and ]", "Turn the straight-edge in hand by 0.1°, with Shift by 1°"},
      {KeyAct::put_down, {"Escape"}, "Esc", "Throw away what is being moved, else put down the instrument, the tool, the slip; back to the sheet"},
      {KeyAct::later, {"PageDown", "End"}, "Page down, End", "In the list of things: the next part, the last"},
      {KeyAct::earlier, {"PageUp", "Home"}, "Page up, Home", "In the list of things: the part before, the first"},
  };
  return table;
}

std::optional<KeyAct> key_act(const KeyEvent& event) {
  for (const KeyRow& row : key_table())
    for (const char* key : row.keys)
      if (event.key == key) return row.act;
  return std::nullopt;
}

double turn_by_deg(const KeyEvent& event) {
  const bool back = event.key == "[" || event.key == "{", far = event.key == "{" || event.key == "}";
  return (back ? -1 : 1) * (far ? 1 : 0.1);
}

bool wants_control(const Command& command) { return std::string_view(command.name) == "undo" || std::string_view(command.name) == "redo"; }

std::string shown_key(const Command& command) {
  std::string key = command.key;
  if (key.size() == 1 && key[0] >= 'a' && key[0] <= 'z') key[0] = static_cast<char>(key[0] - 'a' + 'A');
  return wants_control(command) ? "Ctrl+" + key : key;
}

}  // namespace fogsheet
