#include "shell/tools/no_tool.h"

#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {

void NoTool::press(Session& session, ScreenPoint at) { select_at(session, at); }

bool NoTool::take(Session& session, ScreenPoint from, double held_s) { return held_s >= k_hold_s && (drag_.take_mark(session, from) || drag_.take_note(session, from)); }

std::string NoTool::status(const Session&) const { return words::status_no_tool(); }

namespace {

bool select(Session& session, const Target& target) {
  if (const auto* mark = std::get_if<MarkTarget>(&target)) select_mark(session, mark->id);
  else if (const auto* leg = std::get_if<LegTarget>(&target)) select_leg(session, leg->id);
  else if (const auto* note = std::get_if<NoteTarget>(&target)) select_note(session, note->id);
  else if (const auto* rose = std::get_if<RoseTarget>(&target)) select_rose(session, rose->id);
  else if (const auto* size = std::get_if<RoseSizeTarget>(&target)) select_rose(session, size->id);
  else return false;
  return true;
}

}  // namespace

void select_at(Session& session, ScreenPoint at) {
  if (select(session, target_at(session, at))) return;
  if (session.slip == SlipId::mark || session.slip == SlipId::leg || session.slip == SlipId::note) session.slip = SlipId::none;
  let_go_of_selection(session);
}

bool select_thing_at(Session& session, ScreenPoint at) {
  const Target target = thing_at(session, at);
  if (std::holds_alternative<NothingTarget>(target)) return false;
  if (std::holds_alternative<BodyTarget>(target)) {
    session.desk.tool = ToolId::straight_edge;
    session.slip = SlipId::straight_edge;
  } else {
    select(session, target);
  }
  session.touch();
  return true;
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
