#include "shell/tools/dividers_tool.h"

#include "shell/canvas/overlay.h"
#include "shell/dividers.h"
#include "shell/words.h"

namespace fogsheet {

FirstEnd DividersTool::point_at(const Session& session, ScreenPoint at) const {
  if (const std::optional<MarkId> mark = mark_to_snap_to(session, at)) return {place_of(session, *mark), mark};
  const SheetPoint free = session.desk.camera.to_sheet(at);
  return {foot_on_leg_near(session, at).value_or(free), std::nullopt};
}

void DividersTool::press(Session& session, ScreenPoint at) {
  if (!session.desk.first_point && std::holds_alternative<DividersTarget>(target_at(session, at))) return;
  const FirstEnd point = point_at(session, at);
  if (session.desk.first_point) {
    const Result<Done> opened = open_dividers(session, *session.desk.first_point, point);
    if (!opened) return session.refuse(opened.problem());
    session.slip = SlipId::dividers;
  } else {
    // What stood before stays until the second leg is down: a stray drop of rain takes no reading away.
    session.desk.first_point = point;
  }
  session.touch();
}

bool DividersTool::take(Session& session, ScreenPoint from, double) {
  const Target target = target_at(session, from);
  const auto* held = std::get_if<DividersTarget>(&target);
  if (!held) return false;
  part_ = held->part;
  from_ = at_ = from;
  before_ = session.desk.dividers;
  session.desk.first_point.reset();
  return true;
}

/// Both points by one vector; one that comes near a mark is set down on it, and takes the other along.
void DividersTool::carry(const Session& session, SheetVector by, DividersPlace& lie) const {
  const Dividers was = lie.points;
  lie.on_a.reset();
  lie.on_b.reset();
  for (const bool first : {true, false}) {
    const SheetPoint point = first ? was.a : was.b;
    const std::optional<MarkId> mark = mark_to_snap_to(session, session.desk.camera.to_screen(point + by));
    if (!mark) continue;
    by = place_of(session, *mark) - point;
    (first ? lie.on_a : lie.on_b) = mark;
    break;
  }
  lie.points = {was.a + by, was.b + by};
}

void DividersTool::move(Session& session, ScreenPoint at) {
  at_ = at;
  const Camera& camera = session.desk.camera;
  DividersOnSheet now{.lie = before_->lie};
  if (*part_ == DividersPart::hinge) {
    carry(session, camera.to_sheet(at) - camera.to_sheet(from_), now.lie);
  } else {
    const bool is_a = *part_ == DividersPart::leg_a;
    const FirstEnd point = point_at(session, camera.to_screen(held_point(session)));
    (is_a ? now.lie.points.a : now.lie.points.b) = point.at;
    (is_a ? now.lie.on_a : now.lie.on_b) = point.on;
  }
  session.desk.dividers = now;
  session.touch();
}

void DividersTool::release(Session& session, ScreenPoint at) {
  move(session, at);
  if (opening_mm(session.desk.dividers->lie.points) == 0) {
    session.desk.dividers = before_;
    session.refuse({.fault = Fault::dividers_shut});
  }
  part_.reset();
  session.slip = SlipId::dividers;
  session.touch();
}

void DividersTool::cancel(Session& session) {
  session.desk.dividers = before_;
  part_.reset();
  session.touch();
}

SheetPoint DividersTool::held_point(const Session& session) const {
  const Camera& camera = session.desk.camera;
  const Dividers& was = before_->lie.points;
  return (*part_ == DividersPart::leg_a ? was.a : was.b) + (camera.to_sheet(at_) - camera.to_sheet(from_));
}

std::optional<Aimed> DividersTool::aimed(const Session& session) const {
  if (!part_ || *part_ == DividersPart::hinge) return std::nullopt;
  const DividersPlace& lie = session.desk.dividers->lie;
  return Aimed{held_point(session), *part_ == DividersPart::leg_a ? lie.on_a : lie.on_b};
}

void DividersTool::draw_preview(const Session& session, Overlay& overlay) const {
  if (!session.desk.first_point) return;
  const ScreenPoint at = session.desk.camera.to_screen(session.desk.first_point->at);
  overlay.snap_ticks(at);
  overlay.brush().disc(at, 3, Ink::edge, Ink::paper, 1);
}

std::string DividersTool::status(const Session& session) const { return words::status_dividers(session.desk.first_point.has_value(), session.desk.dividers.has_value()); }

}  // namespace fogsheet
