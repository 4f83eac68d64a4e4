#include "shell/panels/keypad.h"

#include <algorithm>
#include <string>
#include <string_view>

#include "shell/form_words.h"

namespace fogsheet {
namespace {

struct Layout {
  int columns;
  const char* letters;  // that end an entry, one at a time
  const char* keys;     // by rows, a word each
  const char* more;     // what changes an entry
};

constexpr Layout k_layouts[] = {
    {},
    {4, "TMC", "1 2 3 T 4 5 6 M 7 8 9 C . 0 delete reciprocal", "back on paste clear"},
    {4, "", "1 2 3 N 4 5 6 S 7 8 9 E . 0 delete W", "° ′ paste clear"},
    {4, "EW", "1 2 3 E 4 5 6 W 7 8 9 ° . 0 delete ′", "paste clear"},
    {3, "", "1 2 3 4 5 6 7 8 9 . 0 delete", "paste clear"},
    {3, "", "1 2 3 4 5 6 7 8 9 - 0 delete", "paste clear"},
    {4, "", "1 2 3 / 4 5 6 . 7 8 9 delete 0", "paste clear"},
};

Value acting(std::string label, std::string says, const char* act, Value value = {}) {
  return Value::object({{"label", std::move(label)}, {"says", std::move(says)}, {"act", act}, {"value", std::move(value)}});
}

Value key(std::string_view word, std::string_view letters) {
  if (word == "delete") return acting(words::pad_delete(), words::pad_delete_says(), "delete");
  if (word == "clear") return acting(words::pad_clear(), "", "clear");
  if (word == "paste") return acting(words::pad_paste(), "", "paste");
  if (word == "reciprocal") return acting(words::pad_reciprocal(), words::pad_reciprocal_says(), "turn", 180);
  if (word == "back") return acting("−1°", words::pad_back_says(), "turn", -1);
  if (word == "on") return acting("+1°", words::pad_on_says(), "turn", 1);
  const std::string text(word);
  if (letters.find(word) != std::string_view::npos) return acting(text, words::pad_letter_says(text.front()), "letter", text);
  if (word == "N" || word == "S") return acting(text, words::pad_letter_says(text.front()), "type", text + " ");  // a latitude is done
  if (word == "E" || word == "W") return acting(text, words::pad_letter_says(text.front()), "type", text);
  return text;
}

Value keys(std::string_view row, std::string_view letters) {
  Value list = Value::list();
  while (!row.empty()) {
    const std::size_t end = std::min(row.find(' '), row.size());
    list.add(key(row.substr(0, end), letters));
    row.remove_prefix(std::min(end + 1, row.size()));
  }
  return list;
}

}  // namespace

Value to_value(Pad pad) {
  if (pad == Pad::none) return {};
  const Layout& layout = k_layouts[static_cast<int>(pad)];
  return Value::object({{"columns", layout.columns}, {"letters", layout.letters}, {"keys", keys(layout.keys, layout.letters)}, {"more", keys(layout.more, layout.letters)},
                        {"keyboard", acting(words::pad_keyboard(), words::pad_keyboard_says(), "keyboard")}, {"done", words::pad_done()}, {"label", words::pad_label()}, {"no_paste", words::pad_no_paste()}});
}

}  // namespace fogsheet
