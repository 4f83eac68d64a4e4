// What is known of a mark or a leg that was pressed, and may be changed by typing.
#include "core/directions/direction_figures.h"
#include "core/positions/position_figures.h"
#include "core/base/quantity_text.h"
#include "shell/form_fields.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/form_words.h"
#include "shell/words.h"
#include "shell/words_of_sending.h"

namespace fogsheet {
namespace {

template <class RowId>
Value id_of(RowId id) { return Value::object({{"id", std::to_string(id.value)}}); }

Value id_and_place(const std::string& id, std::size_t place) { return Value::object({{"id", id}, {"place", static_cast<double>(place)}}); }

// Buttons that move a row of a list one place up or down.
void add_order_buttons(Panel& slip, const char* command, const std::string& id, std::size_t place, std::size_t count) {
  if (count < 2) return;
  const bool first = place == 0, last = place + 1 == count;
  slip.items.push_back(ButtonItem{.name = "earlier", .label = words::earlier(), .enabled = !first, .reason = first ? words::first_already() : "",
                                  .on_press = {command, id_and_place(id, first ? 0 : place - 1)}});
  slip.items.push_back(ButtonItem{.name = "later", .label = words::later(), .enabled = !last, .reason = last ? words::last_already() : "",
                                  .on_press = {command, id_and_place(id, place + 1)}});
}

}  // namespace

Panel mark_slip(const Session& session) {
  const Document& document = session.document();
  const Mark& mark = *document.marks.find(*session.desk.selected_mark);
  const Form& entries = session.desk.entries;
  const std::string prefix = entry_prefix(mark.id);
  const auto typed = [&](const char* field) { return Press{"type-mark", Value::object({{"id", std::to_string(mark.id.value)}, {"field", field}})}; };
  const auto field = [&](FieldItem standing) {
    standing.on_leave = typed(standing.name.c_str());
    const std::string key = prefix + standing.name;
    return parts::field(entries, key, std::move(standing));
  };
  const std::string kind = entries.text(prefix + "kind", std::string(mark_kind_name(mark.kind)));

  Panel slip{.name = "mark", .label = words::mark_slip_label()};
  slip.items.push_back(HeadingItem{.text = mark.name, .beside = words::kind_label(mark.kind)});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(field({.name = "name", .label = words::name_label(), .text = mark.name}));
  slip.items.push_back(field({.name = "position", .label = words::position_label(), .text = position_figures(unquantise(mark.at), 2), .pad = Pad::position}));
  slip.items.push_back(parts::kind_choice(kind, typed("kind")));
  if (kind == "danger") {
    FieldItem radius = field({.name = "radius", .label = words::radius_label(), .text = mark.radius_nm > 0 ? words::plain_number(mark.radius_nm) : "", .unit = "nm", .pad = Pad::quantity});
    if (mark.kind != MarkKind::danger && radius.error.empty()) radius.error = words::sentence({.fault = Fault::radius_missing});
    slip.items.push_back(radius);
  }
  slip.items.push_back(field({.name = "height", .label = words::height_label(), .text = mark.height_m > 0 ? words::plain_number(mark.height_m) : "", .unit = "m", .pad = Pad::quantity}));
  slip.items.push_back(field({.name = "note", .label = words::note_label(), .text = mark.note, .multiline = true}));
  add_order_buttons(slip, "reorder-mark", std::to_string(mark.id.value), document.marks.place_of(mark.id), document.marks.size());
  slip.items.push_back(LineItem{.text = words::legs_at_mark(document, mark.id), .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "copy-mark", .label = words::copy_it(), .on_press = {"copy-mark", id_of(mark.id)}});
  slip.items.push_back(ButtonItem{.name = "copy-place", .label = words::copy_its_place(), .on_press = {"copy-place", id_of(mark.id)}});
  slip.items.push_back(ButtonItem{.name = "remove-mark", .label = words::rub_it_out(), .on_press = {"remove-mark", id_of(mark.id)}});
  return slip;
}

Panel leg_slip(const Session& session) {
  const Document& document = session.document();
  const Leg& leg = *document.legs.find(*session.desk.selected_leg);
  const VariationInUse& variation = session.variation_of(leg);
  const LegFacts facts = session.facts_of(leg);
  const std::string id = std::to_string(leg.id.value);
  const std::size_t place = document.legs.place_of(leg.id);
  Panel slip{.name = "leg", .label = words::leg_slip_label()};
  slip.items.push_back(HeadingItem{.text = document.marks.find(leg.from)->name + " to " + document.marks.find(leg.to)->name, .beside = words::leg_number(place + 1)});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(LineItem{.text = words::distance_label(), .value = distance_figures(facts.rhumb.distance_nm) + " nm"});
  slip.items.push_back(words::chain_sum(facts.chain, session.settings.rounding, variation));
  parts::add_variation_caution(slip, variation);
  slip.items.push_back(LineItem{.text = "As drawn, in still water.", .tone = LineTone::soft});
  parts::add_written(slip, session, leg);
  if (leg.written) slip.items.push_back(ButtonItem{.name = "rub-out-reading", .label = words::rub_out_reading(), .on_press = {"rub-out-reading", Value::object({{"leg", id}})}});
  add_order_buttons(slip, "reorder-leg", id, place, document.legs.size());
  slip.items.push_back(ButtonItem{.name = "insert-mark", .label = words::put_turn_in(), .on_press = {"insert-mark", Value::object({{"leg", id}})}});
  slip.items.push_back(ButtonItem{.name = "reverse-leg", .label = words::turn_round(), .on_press = {"reverse-leg", id_of(leg.id)}});
  slip.items.push_back(LineItem{.text = words::leg_ends_hint(), .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "edge-on-leg", .label = "Lay the edge on it", .look = ButtonLook::main,
                                  .on_press = {"lay-edge", Value::object({{"from", std::to_string(leg.from.value)}, {"to", std::to_string(leg.to.value)}})}});
  slip.items.push_back(ButtonItem{.name = "remove-leg", .label = words::rub_it_out(), .on_press = {"remove-leg", id_of(leg.id)}});
  return slip;
}

}  // namespace fogsheet
