#include "shell/tools/leg_tool.h"

#include "core/document/actions.h"
#include "shell/canvas/overlay.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {

void LegTool::press(Session& session, ScreenPoint at) {
  if (session.desk.leg_from) return draw_leg(session, *session.desk.leg_from, at);
  std::optional<MarkId> start = mark_near(session, at);
  if (!start) {
    const Position position = session.facts().projection->to_position(session.desk.camera.to_sheet(at));
    const Document before = session.document();
    const Result<MarkId> made = add_mark(session.history(), {.name = words::unused_name(session.document(), MarkKind::turn),
                                                           .lat_deg = position.lat_deg, .lon_deg = position.lon_deg, .kind = MarkKind::turn});
    if (!made) return session.refuse(made.problem());
    session.settle_desk(before);
    start = *made;
  }
  session.desk.leg_from = start;
  session.touch();
}

void LegTool::draw_leg(Session& session, MarkId from, ScreenPoint to) {
  const Document before = session.document();
  const std::optional<MarkId> end = mark_near(session, to);
  Result<LegId> made = Fault::mark_unknown;
  if (end) {
    made = add_leg(session.history(), from, *end);
  } else {
    const Position position = session.facts().projection->to_position(session.desk.camera.to_sheet(to));
    made = add_leg_to_new_turn(session.history(), from, {.name = words::unused_name(session.document(), MarkKind::turn),
                                                       .lat_deg = position.lat_deg, .lon_deg = position.lon_deg, .kind = MarkKind::turn});
  }
  if (!made) return session.refuse(made.problem());
  session.settle_desk(before);
  session.desk.leg_from = session.document().legs.find(*made)->to;
  select_leg(session, *made);
}

bool LegTool::take(Session& session, ScreenPoint from, double) {
  dragged_from_ = mark_near(session, from);
  at_ = from;
  return dragged_from_.has_value();
}

void LegTool::move(Session& session, ScreenPoint at) {
  at_ = at;
  session.frame_wanted = true;
}

void LegTool::release(Session& session, ScreenPoint at) {
  const MarkId from = *dragged_from_;
  dragged_from_.reset();
  draw_leg(session, from, at);
}

void LegTool::cancel(Session& session) {
  dragged_from_.reset();
  session.frame_wanted = true;
}

std::optional<Aimed> LegTool::aimed(const Session& session) const {
  if (!dragged_from_) return std::nullopt;
  return Aimed{session.desk.camera.to_sheet(at_), mark_near(session, at_)};
}

void LegTool::draw_preview(const Session& session, Overlay& overlay) const {
  const Camera& camera = session.desk.camera;
  if (dragged_from_) {
    const std::optional<MarkId> end = mark_near(session, at_);
    const ScreenPoint to = end ? camera.to_screen(place_of(session, *end)) : at_;
    overlay.dashed_line(camera.to_screen(place_of(session, *dragged_from_)), to, Ink::ink, 2.2);
    if (end) overlay.snap_ticks(to);
  } else if (session.desk.leg_from) {
    overlay.snap_ticks(camera.to_screen(place_of(session, *session.desk.leg_from)));
  }
}

std::string LegTool::status(const Session& session) const { return words::status_leg_tool(session.desk.leg_from.has_value()); }

}  // namespace fogsheet
