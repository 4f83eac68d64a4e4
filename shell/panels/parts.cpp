#include "shell/panels/parts.h"

#include "shell/words.h"

namespace fogsheet::parts {

ButtonItem close_button() { return {.name = "close", .label = "Close", .icon = "close", .look = ButtonLook::cross, .on_press = {"close-slip"}}; }

LineItem status_line(std::string text) { return {.text = std::move(text)}; }

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
