// The keypad under a field that takes figures, for who has no keys under the hand: figures at the left, what ends an entry
// in a column, then what changes it. A value like the rest of a panel: the painter lays the keys out and knows no field.
#pragma once

#include "shell/value.h"

namespace fogsheet {

enum class Pad { none, direction, position, variation, quantity, date, stream };

/// {label, columns, letters, keys: [...], more: [...], keyboard, done, no_paste}; null for none. A key that types what it shows is that text, another
/// {label, says, act, value} with act "type", "letter" (at the end, in place of another letter), "turn" (by degrees),
/// "delete", "clear", "paste" or "keyboard" (the system's own).
Value to_value(Pad pad);

}  // namespace fogsheet
