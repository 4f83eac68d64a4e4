#include "shell/tools/no_tool.h"

#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {

void NoTool::press(Session& session, ScreenPoint at) { select_at(session, at); }

bool NoTool::take(Session& session, ScreenPoint from, double held_s) { return held_s >= k_hold_s && drag_.take(session, from); }

std::string NoTool::status(const Session&) const { return words::status_no_tool(); }

void select_at(Session& session, ScreenPoint at) {
  const Target target = target_at(session, at);
  if (const auto* mark = std::get_if<MarkTarget>(&target)) return select_mark(session, mark->id);
  if (const auto* leg = std::get_if<LegTarget>(&target)) return select_leg(session, leg->id);
  if (session.slip == SlipId::mark || session.slip == SlipId::leg) session.slip = SlipId::none;
  session.desk.selected_mark.reset();
  session.desk.selected_leg.reset();
  session.touch();
}

void select_mark(Session& session, MarkId mark) {
  session.desk.selected_mark = mark;
  session.desk.selected_leg.reset();
  session.slip = SlipId::mark;
  session.touch();
}

void select_leg(Session& session, LegId leg) {
  session.desk.selected_leg = leg;
  session.desk.selected_mark.reset();
  session.slip = SlipId::leg;
  session.touch();
}

}  // namespace fogsheet
