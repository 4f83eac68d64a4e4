// What lies ready at the first visit: what to try, and what this is not.
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"

namespace fogsheet {

Panel first_run_slip(const Session&) {
  Panel slip{.name = "first-run", .label = "A sheet to try"};
  slip.items.push_back(HeadingItem{.text = "A sheet to try"});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(LineItem{.text = "Lay the straight-edge along the middle leg, slide it down to the rose, and read both rings."});
  slip.items.push_back(LineItem{.text = "An invented place. It stays on this device. It is not a chart.", .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "take-edge", .label = "Put the edge on", .look = ButtonLook::main, .on_press = {"take-edge"}});
  slip.items.push_back(ButtonItem{.name = "sheet-of-mine", .label = "A sheet of mine", .on_press = {"open-slip", Value::object({{"slip", "new-sheet"}})}});
  return slip;
}

}  // namespace fogsheet
