// What is known of a mark or a leg that was pressed.
#include "core/directions/direction_figures.h"
#include "core/positions/position_figures.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"

namespace fogsheet {

Panel mark_slip(const Session& session) {
  const Mark& mark = *session.document().marks.find(*session.desk.selected_mark);
  Panel slip{.name = "mark", .label = "Mark"};
  slip.items.push_back(HeadingItem{.text = mark.name, .beside = words::kind_label(mark.kind)});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(LineItem{.text = "position", .value = position_figures(unquantise(mark.at), 2)});
  if (mark.kind == MarkKind::danger) slip.items.push_back(LineItem{.text = "keep out of", .value = distance_figures(mark.radius_nm) + " nm"});
  slip.items.push_back(ButtonItem{.name = "remove-mark", .label = "Rub it out", .on_press = {"remove-mark", Value::object({{"id", std::to_string(mark.id.value)}})}});
  return slip;
}

Panel leg_slip(const Session& session) {
  const Document& document = session.document();
  const Leg& leg = *document.legs.find(*session.desk.selected_leg);
  const VariationInUse& variation = session.variation_of(leg);
  const LegFacts facts = leg_facts(document, leg, variation, session.settings.rounding);
  Panel slip{.name = "leg", .label = "Leg"};
  slip.items.push_back(HeadingItem{.text = document.marks.find(leg.from)->name + " to " + document.marks.find(leg.to)->name, .beside = "leg"});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(LineItem{.text = "distance", .value = distance_figures(facts.rhumb.distance_nm) + " nm"});
  slip.items.push_back(words::chain_sum(facts.chain, session.settings.rounding, variation));
  parts::add_variation_caution(slip, variation);
  slip.items.push_back(LineItem{.text = "As drawn, in still water.", .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "edge-on-leg", .label = "Lay the edge on it", .look = ButtonLook::main,
                                  .on_press = {"lay-edge", Value::object({{"from", std::to_string(leg.from.value)}, {"to", std::to_string(leg.to.value)}})}});
  return slip;
}

}  // namespace fogsheet
