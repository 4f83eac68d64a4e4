#include "shell/tools/no_tool.h"

#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {

void NoTool::press(Session& session, ScreenPoint at) { select_at(session, at); }

bool NoTool::take(Session& session, ScreenPoint from, double held_s) { return held_s >= k_hold_s && (drag_.take_mark(session, from) || drag_.take_note(session, from)); }

std::string NoTool::status(const Session&) const { return words::status_no_tool(); }

void select_at(Session& session, ScreenPoint at) {
  const Target target = target_at(session, at);
  if (const auto* mark = std::get_if<MarkTarget>(&target)) return select_mark(session, mark->id);
  if (const auto* leg = std::get_if<LegTarget>(&target)) return select_leg(session, leg->id);
  if (const auto* note = std::get_if<NoteTarget>(&target)) return select_note(session, note->id);
  if (const auto* rose = std::get_if<RoseTarget>(&target)) return select_rose(session, rose->id);
  if (const auto* size = std::get_if<RoseSizeTarget>(&target)) return select_rose(session, size->id);
  if (session.slip == SlipId::mark || session.slip == SlipId::leg || session.slip == SlipId::note) session.slip = SlipId::none;
  let_go_of_selection(session);
}

void let_go_of_selection(Session& session) {
  session.desk.selected_mark.reset();
  session.desk.selected_leg.reset();
  session.desk.selected_rose.reset();
  session.desk.selected_note.reset();
  session.desk.new_note.reset();
  session.touch();
}

void select_rose(Session& session, RoseId rose) {
  let_go_of_selection(session);
  session.desk.selected_rose = rose;
  session.slip = SlipId::rose;
}

void select_note(Session& session, NoteId note) {
  let_go_of_selection(session);
  session.desk.selected_note = note;
  session.slip = SlipId::note;
}

void select_mark(Session& session, MarkId mark) {
  let_go_of_selection(session);
  session.desk.selected_mark = mark;
  session.slip = SlipId::mark;
}

void select_leg(Session& session, LegId leg) {
  let_go_of_selection(session);
  session.desk.selected_leg = leg;
  session.slip = SlipId::leg;
}

}  // namespace fogsheet
