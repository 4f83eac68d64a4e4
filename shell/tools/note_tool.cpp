#include "shell/tools/note_tool.h"

#include "shell/canvas/overlay.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {

void NoteTool::press(Session& session, ScreenPoint at) {
  if (const std::optional<NoteId> there = note_near(session, at)) return select_note(session, *there);
  let_go_of_selection(session);
  session.desk.new_note = session.facts().projection->to_position(session.desk.camera.to_sheet(at));
  session.slip = SlipId::note;
}

void NoteTool::draw_preview(const Session& session, Overlay& overlay) const {
  drag_.draw(session, overlay);
  if (!session.desk.new_note) return;
  // Where the first word will begin.
  const ScreenPoint at = session.desk.camera.to_screen(session.facts().projection->to_sheet(*session.desk.new_note));
  overlay.brush().line({at.x_px, at.y_px + 3}, {at.x_px, at.y_px - 15}, Ink::focus, 2);
}

std::string NoteTool::status(const Session&) const { return words::status_note_tool(); }

}  // namespace fogsheet
