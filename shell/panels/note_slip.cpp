// Words on the sheet: being written where a place was pressed, or changed.
#include "core/positions/position_figures.h"
#include "shell/form_fields.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"

namespace fogsheet {

Panel note_slip(const Session& session) {
  const TextNote* note = session.desk.selected_note ? session.document().text_notes.find(*session.desk.selected_note) : nullptr;
  Panel slip{.name = "note", .label = "Note"};
  slip.items.push_back(HeadingItem{.text = "A note on the sheet"});
  slip.items.push_back(parts::close_button());
  const Value id = note ? Value::object({{"id", std::to_string(note->id.value)}}) : Value::object();
  const auto field = [&](FieldItem standing) {
    Value arguments = id;
    arguments.set("field", standing.name);
    standing.on_leave = {"type-note", arguments};
    const std::string key = (note ? entry_prefix(note->id) : std::string("note/new/")) + standing.name;
    return parts::field(session.desk.entries, key, std::move(standing));
  };
  slip.items.push_back(field({.name = "words", .label = "Words", .text = note ? note->text : "", .multiline = true}));
  if (note) slip.items.push_back(field({.name = "place", .label = "Where they begin", .text = position_figures(unquantise(note->at), 2), .pad = Pad::position}));
  slip.items.push_back(ButtonItem{.name = "write-note", .label = note ? "Done" : "Write it", .look = ButtonLook::main, .on_press = {"finish-note"}});
  if (note) slip.items.push_back(ButtonItem{.name = "remove-note", .label = "Rub it out", .on_press = {"remove-note", id}});
  return slip;
}

}  // namespace fogsheet
