// Soft lines above the tray: what to do next, what was done, or why something could not be; and whether it is kept.
#include "shell/panels/panels.h"
#include "shell/form_words.h"
#include "shell/words.h"
#include "shell/words_of_backup.h"
#include "shell/words_of_room.h"

namespace fogsheet {
namespace {

/// Good news is one soft line; what is not kept is said before it can be lost, with what is safe.
void add_keeping(Panel& margin, const Session& session) {
  const Keeper& keeper = session.keeper;
  const Keeping keeping = keeper.keeping();
  if (keeping == Keeping::kept && keeper.kept_ms() != 0) margin.items.push_back(LineItem{.text = words::kept_at(keeper.kept_ms(), session.platform.minutes_east(keeper.kept_ms())), .tone = LineTone::soft});
  if (keeping == Keeping::writing) margin.items.push_back(LineItem{.text = words::being_kept(), .tone = LineTone::soft});
  if (keeper.follows(session.sheets.in_hand().key)) margin.items.push_back(LineItem{.text = words::follows(), .tone = LineTone::soft});
  // Above a slip that has risen there is no room for more than the bold line; the drawer has the buttons too.
  const bool has_room = session.slip == SlipId::none || session.wide();
  if (keeping == Keeping::kept || keeping == Keeping::writing) {
    if (session.room.is_short()) {
      margin.items.push_back(CautionItem{.text = words::room_short(session.room), .advice = has_room ? words::room_short_advice() : ""});
      if (has_room) margin.items.push_back(ButtonItem{.name = "save-all", .label = words::save_all(), .look = ButtonLook::main, .on_press = {"save-all"}});
    } else if (session.room.is_small() && session.slip == SlipId::none) {
      margin.items.push_back(LineItem{.text = words::room_small(), .tone = LineTone::soft});
    }
  }
  if (keeping != Keeping::failed && keeping != Keeping::off) return;
  if (session.nothing_to_lose()) {
    margin.items.push_back(LineItem{.text = words::not_kept(keeper.fault()), .tone = LineTone::soft});
    return;
  }
  margin.items.push_back(CautionItem{.text = words::not_kept(keeper.fault()), .advice = has_room ? words::not_kept_advice(keeper.fault()) : ""});
  if (!has_room) return;
  margin.items.push_back(ButtonItem{.name = "save-sheet", .label = "Save as a file", .look = ButtonLook::main, .on_press = {"save-sheet"}});
  margin.items.push_back(ButtonItem{.name = "copy-link", .label = "Copy the link", .on_press = {"copy-link"}});
}

}  // namespace

Panel margin_panel(const Session& session, const Tool& tool) {
  Panel margin{.name = "margin", .label = "Notes", .place = PanelPlace::margin};
  if (session.message.is_caution) margin.items.push_back(CautionItem{.text = session.message.text});
  else if (!session.message.text.empty()) margin.items.push_back(LineItem{.text = session.message.text});
  // A slip that is open says its own, and on a small screen leaves no room for more.
  else if (session.desk.tool != ToolId::none && session.slip == SlipId::none) margin.items.push_back(LineItem{.text = tool.status(session)});
  else if (session.phone() && (session.slip == SlipId::none || session.slip == SlipId::first_run)) margin.items.push_back(LineItem{.text = words::sheet_title(session.document()), .tone = LineTone::strong});  // its own is often out of view
  add_keeping(margin, session);
  if (session.offline_state == "waiting" && session.slip == SlipId::none) margin.items.push_back(LineItem{.text = words::newer_version_waits(), .tone = LineTone::soft});
  return margin;
}

Panel touch_lock_panel() {
  Panel bar{.name = "touch-lock", .label = words::touch_is_locked(), .place = PanelPlace::margin};
  bar.items.push_back(ButtonItem{.name = "unlock-touch", .label = words::hold_to_unlock(), .look = ButtonLook::main, .hold = true, .on_press = {"unlock-touch"}});
  return bar;
}

}  // namespace fogsheet
