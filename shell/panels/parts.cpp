#include "shell/panels/parts.h"

#include "core/directions/direction_figures.h"
#include "shell/words.h"

namespace fogsheet::parts {

ButtonItem close_button() { return {.name = "close", .label = "Close", .icon = "close", .look = ButtonLook::cross, .on_press = {"close-slip"}}; }

LineItem status_line(std::string text) { return {.text = std::move(text)}; }

void add_variation(Panel& panel, const Session& session) {
  const VariationInUse& variation = session.facts().variation;
  panel.items.push_back(LineItem{.text = "variation", .value = words::variation_figures(variation)});
  panel.items.push_back(LineItem{.text = words::variation_source(session.document(), variation), .tone = LineTone::soft});
  if (both_variations_shown(variation)) {
    const bool printed_leads = variation.source == VariationSource::printed;
    const Variation other = printed_leads ? *variation.model_value : *variation.printed_value;
    panel.items.push_back(LineItem{.text = printed_leads ? "the model has" : "your chart's note has", .value = degrees_minutes_text(other.deg)});
  }
  add_variation_caution(panel, variation);
}

void add_variation_caution(Panel& panel, const VariationInUse& variation) {
  const std::string text = words::variation_caution(variation);
  if (text.empty()) return;
  panel.items.push_back(CautionItem{.text = variation.value ? "Weak field" : "No variation here", .advice = text});
}

void add_standing_cautions(Panel& panel) {
  panel.items.push_back(HeadingItem{.text = "Before you rely on it", .level = 3});
  panel.items.push_back(LineItem{.text = "This sheet knows only what you put on it: no depths, no rocks, no coast. Use official charts, notices, tide tables and the rules of the place, up to date, and a second way of knowing where you are."});
  panel.items.push_back(LineItem{.text = "Keep a lookout by eye and ear, go at a speed you can stop in, make your fog signal, keep out of shipping lanes. A compass out by more than 5° should be adjusted by someone licensed."});
}

}  // namespace fogsheet::parts
