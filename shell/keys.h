// The keys that are no tool's and no command's own: what they are called, what they do. The slip of keys shows this table
// with those of tools and commands.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shell/pointer.h"

namespace fogsheet {

struct Command;

enum class KeyAct { put_down, later, move, earlier, rub_out, press, turn };

struct KeyRow {
  KeyAct act;
  std::vector<const char*> keys;  // as the browser names them
  const char* shown;
  const char* does;
};

const std::vector<KeyRow>& key_table();

/// What a key does of those.
std::optional<KeyAct> key_act(const KeyEvent& event);

/// How far a key that turns does: clockwise to the right, with Shift ten times as far.
double turn_by_deg(const KeyEvent& event);

/// A command's key as the user knows it: "Ctrl+Z".
std::string shown_key(const Command& command);
/// Undo and redo have theirs with Control.
bool wants_control(const Command& command);

}  // namespace fogsheet
