// Where the device says it is: asked for, and let go.
#include "core/positions/position_figures.h"
#include "shell/own_position_on_sheet.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words_of_own_position.h"

namespace fogsheet {
namespace {

constexpr int k_minute_decimals = 3;

void add_where(Panel& slip, const Session& session) {
  const OwnPosition& own = session.own_position;
  const std::string time = time_found(session);
  const std::string figures = position_figures(own.at, k_minute_decimals);
  slip.items.push_back(LineItem{.text = figures, .tone = LineTone::strong});
  slip.items.push_back(LineItem{.text = words::within(own.accuracy_m)});
  slip.items.push_back(LineItem{.text = words::found_at(time, session.platform.now_ms() - own.at_ms)});
  const bool on_sheet = own_position_on_sheet(session).has_value();
  if (!on_sheet) slip.items.push_back(LineItem{.text = words::own_position_off_sheet(rhumb_inverse(unquantise(session.document().sheet.middle), own.at))});
  if (own.accuracy_m > k_coarse_accuracy_m) slip.items.push_back(CautionItem{.text = words::own_position_coarse(), .advice = words::own_position_coarse_advice()});
  if (session.document().sheet.datum != "WGS84") slip.items.push_back(CautionItem{.text = words::own_position_other_datum(), .advice = words::own_position_other_datum_advice()});
  if (!on_sheet) return;
  slip.items.push_back(ButtonItem{.name = "mark-own-position", .label = words::mark_here(), .look = ButtonLook::main, .on_press = {"mark-own-position"}});
  slip.items.push_back(ButtonItem{.name = "show-own-position", .label = words::show_own_position(), .on_press = {"show-own-position"}});
}

}  // namespace

Panel own_position_slip(const Session& session) {
  const OwnPositionState state = session.own_position.state;
  Panel slip{.name = "own-position", .label = words::own_position_title()};
  slip.items.push_back(HeadingItem{.text = words::own_position_title()});
  slip.items.push_back(parts::close_button());
  if (session.own_position.is_here()) add_where(slip, session);
  else if (const std::string line = words::own_position_line(state); !line.empty()) slip.items.push_back(LineItem{.text = line});
  const bool listens = is_listened_for(state);
  if (listens) slip.items.push_back(ButtonItem{.name = "let-own-position-go", .label = words::let_own_position_go(), .on_press = {"let-own-position-go"}});
  else slip.items.push_back(ButtonItem{.name = "ask-own-position", .label = words::ask_the_device(), .look = ButtonLook::main, .on_press = {"ask-own-position"}});
  slip.items.push_back(LineItem{.text = words::own_position_use(), .tone = LineTone::soft});
  slip.items.push_back(LineItem{.text = words::own_position_doubt(), .tone = LineTone::soft});
  return slip;
}

}  // namespace fogsheet
