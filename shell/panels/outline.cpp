// The outline: what is on the sheet, beside the canvas, for who works by keys or by ear. While it is shut it is one button,
// so that nothing of it is made anew with each stroke; open, it shows a part of a long sheet at a time.
#include <algorithm>

#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/things.h"
#include "shell/words_of_things.h"

namespace fogsheet {
namespace {

ButtonItem page_button(const char* name, std::string label, std::size_t from) {
  return {.name = name, .label = std::move(label), .look = ButtonLook::plain, .on_press = {"page-outline", Value::object({{"from", static_cast<double>(from)}})}};
}

ButtonItem thing_button(const Session& session, const Thing& thing) {
  const Value named = Value::object({{"thing", thing_name(thing)}});
  return {.name = thing_name(thing), .label = words::thing(session, thing), .look = ButtonLook::thing, .on_press = {"press-thing", named}, .on_focus = {"focus-thing", named}};
}

}  // namespace

Panel outline_panel(const Session& session) {
  Panel panel{.name = "outline", .label = words::outline_label(), .place = PanelPlace::outline};
  const std::size_t count = thing_count(session);
  if (!session.outline.open) {
    panel.items.push_back(ButtonItem{.name = "outline", .label = words::things_count(count), .pressed = false, .on_press = {"outline"}});
    return panel;
  }
  const std::size_t from = first_shown(session), to = std::min(from + k_things_shown, count);
  panel.items.push_back(HeadingItem{.text = words::outline_label(), .beside = words::things_shown(from, to, count)});
  panel.items.push_back(ButtonItem{.name = "outline", .label = "Close", .icon = "close", .look = ButtonLook::cross, .on_press = {"outline"}});
  panel.items.push_back(LineItem{.text = words::outline_hint(), .tone = LineTone::soft});
  if (from > 0) panel.items.push_back(page_button("things-before", words::things_before(std::min(from, k_things_shown)), from - std::min(from, k_things_shown)));
  for (std::size_t i = from; i < to; ++i) panel.items.push_back(thing_button(session, thing_at(session, i)));
  if (to < count) panel.items.push_back(page_button("things-after", words::things_after(std::min(count - to, k_things_shown)), to));
  if (session.in_focus) panel.in_focus = thing_name(*session.in_focus);
  panel.on_leave = {"leave-things"};
  return panel;
}

}  // namespace fogsheet
