// The drawer of instruments at the bottom edge, each with its word under it; zoom, undo and redo at its right end.
#include "shell/commands.h"
#include "shell/panels/panels.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

ButtonItem tool_well(const Session& session, const ToolRow& row, const char* word) {
  return {.name = std::string("tool/") + row.name,
          .label = word,
          .icon = row.icon,
          .key = row.key,
          .look = ButtonLook::well,
          .pressed = session.desk.tool == row.id,
          .on_press = {"tool", Value::object({{"tool", row.name}})}};
}

ButtonItem end_well(const char* name, const char* word, const char* icon, const char* key = "") {
  return {.name = name, .label = word, .icon = icon, .key = key, .look = ButtonLook::well, .at_end = true, .on_press = {name}};
}

bool is_drawer(SlipId slip) { return slip == SlipId::drawer || slip == SlipId::history || slip == SlipId::new_sheet || slip == SlipId::file; }

bool is_passage(SlipId slip) { return slip == SlipId::passage || slip == SlipId::passage_details || slip == SlipId::passage_leg || slip == SlipId::next_leg || slip == SlipId::deck_log; }

}  // namespace

Panel tray_panel(const Session& session) {
  Panel tray{.name = "tray", .label = "Instruments", .place = PanelPlace::tray};
  if (!session.phone()) tray.items.push_back(ButtonItem{.name = "drawer", .label = "Drawer", .icon = "sheet", .look = ButtonLook::well, .pressed = is_drawer(session.slip),
                                  .on_press = {"open-slip", Value::object({{"slip", "drawer"}})}});
  tray.items.push_back(tool_well(session, tool_row(ToolId::mark), "Mark"));
  tray.items.push_back(tool_well(session, tool_row(ToolId::leg), "Leg"));
  tray.items.push_back(tool_well(session, tool_row(ToolId::straight_edge), session.phone() ? "Edge" : "Straight-edge"));
  tray.items.push_back(tool_well(session, tool_row(ToolId::rose), "Rose"));
  if (!session.phone()) tray.items.push_back(tool_well(session, tool_row(ToolId::dividers), "Dividers"));
  tray.items.push_back(ButtonItem{.name = "passage", .label = session.wide() ? "Passage card" : "Card", .icon = "card", .look = ButtonLook::well, .pressed = is_passage(session.slip),
                                  .on_press = {"open-slip", Value::object({{"slip", "passage"}})}});
  tray.items.push_back(ButtonItem{.name = "more", .label = "More", .icon = "more", .look = ButtonLook::well, .pressed = session.slip == SlipId::more || session.slip == SlipId::lists || (session.phone() && is_drawer(session.slip)),
                                  .on_press = {"open-slip", Value::object({{"slip", "more"}})}});
  if (!session.phone()) {
    tray.items.push_back(end_well("closer", "Closer", "plus"));
    tray.items.push_back(end_well("wider", "Wider", "minus"));
  }
  ButtonItem undo = end_well("undo", "Undo", "undo");
  undo.enabled = undo_label(session) != nullptr;
  undo.reason = undo.enabled ? "Undo: " + words::label_of(*undo_label(session)) : words::sentence({.fault = Fault::no_undo});
  tray.items.push_back(undo);
  if (session.wide()) {
    ButtonItem redo = end_well("redo", "Redo", "redo");
    redo.enabled = redo_label(session) != nullptr;
    redo.reason = redo.enabled ? "Redo: " + words::label_of(*redo_label(session)) : words::sentence({.fault = Fault::no_redo});
    tray.items.push_back(redo);
  }
  return tray;
}

}  // namespace fogsheet
