// A mark put in by typing: what it is, and where it stands by its position, by bearing and distance, or by two lines.
#include "shell/form_fields.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/form_words.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

Press fill(const char* field) { return {"fill-new-mark", Value::object({{"field", field}})}; }

void add_place(Panel& slip, const Document& document, const Form& form, const std::string& how) {
  const auto field = [&](const char* name, std::string label, Pad pad, const char* unit = "") {
    const bool direction = pad == Pad::direction;
    slip.items.push_back(parts::field(form, name, {.name = name, .label = std::move(label), .unit = unit, .completes_at = direction ? 3 : 0, .pad = pad, .letter = direction ? "T" : "", .on_leave = fill(name)}));
  };
  const auto mark = [&](const char* name, std::string label) {
    slip.items.push_back(parts::mark_choice(document, name, std::move(label), form.text(name), fill(name)));
  };
  if (how == "bearing") {
    mark("from", words::from_mark());
    field("bearing", words::bearing_from_it(), Pad::direction);
    field("distance", words::distance_label(), Pad::quantity, "nm");
  } else if (how == "crossing") {
    mark("from", words::line_through(1));
    field("bearing", words::bearing_of_line(1), Pad::direction);
    mark("second", words::line_through(2));
    field("second-bearing", words::bearing_of_line(2), Pad::direction);
  } else {
    field("position", words::position_label(), Pad::position);
  }
}

}  // namespace

Panel new_mark_slip(const Session& session) {
  const Form& form = session.desk.new_mark;
  const Document& document = session.document();
  const std::string kind = form.text("kind", "landmark"), how = form.text("how", "position");
  Panel slip{.name = "new-mark", .label = words::new_mark_title()};
  slip.items.push_back(HeadingItem{.text = words::new_mark_title(), .beside = words::new_mark_beside()});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(parts::kind_choice(kind, fill("kind")));
  slip.items.push_back(parts::field(form, "name", {.name = "name", .label = words::name_label(), .on_leave = fill("name")}));
  if (kind == "danger") slip.items.push_back(parts::field(form, "radius", {.name = "radius", .label = words::radius_label(), .unit = "nm", .pad = Pad::quantity, .on_leave = fill("radius")}));
  slip.items.push_back(ChoiceItem{.name = "how", .label = words::where_question(), .options = {{"position", words::by_position()}, {"bearing", words::by_bearing()}, {"crossing", words::by_crossing()}}, .chosen = how, .argument = "text", .on_choose = fill("how")});
  add_place(slip, document, form, how);
  slip.items.push_back(parts::field(form, "height", {.name = "height", .label = words::height_label(), .unit = "m", .pad = Pad::quantity, .on_leave = fill("height")}));
  slip.items.push_back(parts::field(form, "note", {.name = "note", .label = words::note_label(), .multiline = true, .on_leave = fill("note")}));
  slip.items.push_back(ButtonItem{.name = "make-new-mark", .label = words::add_the_mark(), .look = ButtonLook::main, .on_press = {"make-new-mark"}});
  slip.items.push_back(ButtonItem{.name = "lists", .label = words::marks_and_legs(), .on_press = {"open-slip", Value::object({{"slip", "lists"}})}});
  return slip;
}

}  // namespace fogsheet
