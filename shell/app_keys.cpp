// What keys do: they move and press what they are on, put down what is in hand, take tools and run commands.
#include <algorithm>

#include "shell/app_inside.h"
#include "shell/commands.h"
#include "shell/commands_outline.h"
#include "shell/keys.h"
#include "shell/things.h"
#include "shell/tools/target.h"

namespace fogsheet {

bool App::key(const KeyEvent& event) {
  const bool ours = act_on_key(event);
  inside_->keep();
  return ours;
}

void App::keys_at_rest() {
  end_run(inside_->session);
  inside_->keep();
}

/// What Esc puts down, one thing a press.
void App::put_down() {
  Session& session = inside_->session;
  const bool dragging = inside_->tool_has_drag;
  if (cancel_run(session)) return;
  inside_->drop_gesture();
  if (dragging) return;  // throwing the drag away is all that this press does
  if (session.outline.open && session.in_focus) run_command(session, "outline", Value::object());
  else if (session.desk.first_end) session.desk.first_end.reset();
  else if (session.desk.first_point) session.desk.first_point.reset();
  else if (session.desk.dividers && session.desk.tool == ToolId::dividers) lift_dividers(session);
  else if (session.desk.edge && session.desk.tool == ToolId::straight_edge) session.set_edge(std::nullopt);
  else if (session.desk.tool != ToolId::none) run_command(session, "tool", Value::object({{"tool", "none"}}));
  else run_command(session, "close-slip", Value::object());
  session.touch();
}

/// An arrow moves what the keys are on, or else the paper.
void App::move_by_arrow(const KeyEvent& event) {
  if (inside_->tool_has_drag) return;  // what the hand holds follows the hand alone
  Session& session = inside_->session;
  constexpr double k_step_px = 1, k_shift_step_px = 10, k_pan_px = 40, k_shift_pan_px = 160;
  const ScreenPoint way = event.key == "ArrowLeft" ? ScreenPoint{-1, 0} : event.key == "ArrowRight" ? ScreenPoint{1, 0} : event.key == "ArrowUp" ? ScreenPoint{0, -1} : ScreenPoint{0, 1};
  const double step = event.shift ? k_shift_step_px : k_step_px, pan = event.shift ? k_shift_pan_px : k_pan_px;
  const std::optional<Thing> thing = thing_under_keys(session);
  if (!thing || !nudge(session, *thing, {step * way.x_px, step * way.y_px})) inside_->pan({-pan * way.x_px, -pan * way.y_px});
}

bool App::act_on_key(const KeyEvent& event) {
  Session& session = inside_->session;
  if (event.control && !event.alt && (event.key == "z" || event.key == "Z" || event.key == "y")) {
    inside_->drop_gesture();
    run_command(session, event.key == "z" && !event.shift ? "undo" : "redo", Value::object());
    return true;
  }
  if (event.control || event.alt) return false;
  const std::optional<Thing> thing = thing_under_keys(session);
  if (const std::optional<KeyAct> act = key_act(event)) {
    const bool in_outline = session.outline.open && session.in_focus;
    const std::size_t from = first_shown(session), count = thing_count(session);
    switch (*act) {
      case KeyAct::put_down: put_down(); return true;
      case KeyAct::move: move_by_arrow(event); return true;
      case KeyAct::press:
        if (!session.run) return false;  // the page presses what has its focus
        inside_->drop_gesture();
        return true;
      case KeyAct::rub_out:
        if (event.repeat) return true;  // held down it would rub out one thing after another
        if (!thing) return false;
        inside_->drop_gesture();
        rub_out_under_keys(session, *thing);
        return true;
      case KeyAct::turn:
        if (!session.settings.single_keys || !session.desk.edge || session.desk.tool != ToolId::straight_edge) return false;
        // While it is under the hand its angle is the hand's, and locked while it slides.
        if (!inside_->tool_has_drag) command("nudge-edge", Value::object({{"by_deg", turn_by_deg(event)}}));
        return true;
      case KeyAct::later:
        if (in_outline) page_outline(session, event.key == "End" ? count - 1 : std::min(from + k_things_shown, count - 1));
        return in_outline;
      case KeyAct::earlier:
        if (in_outline) page_outline(session, event.key == "Home" ? 0 : from - std::min(from, k_things_shown));
        return in_outline;
    }
  }
  if (event.key.size() == 1 && !session.settings.single_keys) return false;
  for (const ToolRow& row : tool_table())
    if (*row.key && (event.key == row.key || (event.key.size() == 1 && event.key[0] - 'a' + 'A' == row.key[0]))) {
      command("tool", Value::object({{"tool", row.name}}));
      return true;
    }
  for (const Command& each : command_table()) {
    if (!*each.key || wants_control(each) || event.key != each.key) continue;
    command(each.name, Value::object());
    return true;
  }
  return false;
}

}  // namespace fogsheet
