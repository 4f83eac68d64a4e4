// One soft line above the tray: what to do next, what was done, or why something could not be.
#include "shell/panels/panels.h"
#include "shell/words.h"

namespace fogsheet {

Panel margin_panel(const Session& session, const Tool& tool) {
  Panel margin{.name = "margin", .label = "Notes", .place = PanelPlace::margin};
  if (session.message.is_caution) margin.items.push_back(CautionItem{.text = session.message.text});
  else if (!session.message.text.empty()) margin.items.push_back(LineItem{.text = session.message.text});
  // A slip that is open says its own, and on a small screen leaves no room for more.
  else if (session.desk.tool != ToolId::none && session.slip == SlipId::none) margin.items.push_back(LineItem{.text = tool.status(session)});
  if (session.sheets.undo_label()) margin.items.push_back(LineItem{.text = "Not kept on this device yet: copy the link.", .tone = LineTone::soft});
  return margin;
}

}  // namespace fogsheet
