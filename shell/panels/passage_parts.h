// The fields of a passage on its slips.
#pragma once

#include <string>

#include "shell/panels/parts.h"
#include "shell/passage_entries.h"

namespace fogsheet {

/// Where what is typed into a passage's fields is kept, before the field's name.
inline std::string entry_prefix(PassageId passage) { return "passage/" + std::to_string(passage.value) + "/"; }

class PassageFields {
 public:
  PassageFields(Panel& slip, const Session& session, const Passage& passage) : slip_(slip), session_(session), passage_(passage) {}

  void field(const std::string& name, const char* label, FieldItem like = {}) {
    like.name = name;
    like.label = label;
    like.text = field_text(passage_, name);
    like.on_leave = press(name);
    slip_.items.push_back(parts::field(session_.desk.entries, entry_prefix(passage_.id) + name, std::move(like)));
  }
  void choice(const std::string& name, const char* label, std::vector<ChoiceItem::Option> options) {
    slip_.items.push_back(ChoiceItem{.name = name, .label = label, .options = std::move(options), .chosen = field_text(passage_, name), .argument = "text", .on_choose = press(name)});
  }
  void mark(const std::string& name, const char* label) {
    ChoiceItem choice = parts::mark_choice(session_.document(), name, label, field_text(passage_, name), press(name));
    choice.options.front().value = "none";
    slip_.items.push_back(std::move(choice));
  }
  /// Set and drift, or by the hour, or not entered; `prefix` is the leg's, or empty. A leg's own may be the passage's.
  void stream(const std::string& prefix, StreamEntry entry, bool of_leg);

  static Press press(const std::string& name) { return {"type-passage", Value::object({{"field", name}})}; }

 private:
  Panel& slip_;
  const Session& session_;
  const Passage& passage_;
};

}  // namespace fogsheet
