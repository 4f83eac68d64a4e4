#include "shell/tools/mark_drag.h"

#include "core/document/actions.h"
#include "shell/canvas/overlay.h"
#include "shell/tools/target.h"

namespace fogsheet {

bool MarkDrag::take(const Session& session, ScreenPoint from) {
  mark_ = mark_near(session, from);
  from_ = at_ = from;
  return mark_.has_value();
}

void MarkDrag::move(Session& session, ScreenPoint at) {
  at_ = at;
  session.frame_wanted = true;
}

// The mark keeps its distance from the finger, so that taking it off its middle does not move it.
ScreenPoint MarkDrag::place_for(const Session& session, ScreenPoint at) const {
  return session.desk.camera.to_screen(place_of(session, *mark_)) + (at - from_);
}

void MarkDrag::release(Session& session, ScreenPoint at) {
  const Position to = session.facts().projection->to_position(session.desk.camera.to_sheet(place_for(session, at)));
  const Document before = session.document();
  const Result<Done> moved = move_mark(session.history(), *mark_, to.lat_deg, to.lon_deg);
  if (!moved) session.refuse(moved.problem());
  session.settle_desk(before);
  mark_.reset();
}

void MarkDrag::cancel(Session& session) {
  mark_.reset();
  session.frame_wanted = true;
}

void MarkDrag::draw(const Session& session, Overlay& overlay) const {
  if (!mark_) return;
  const ScreenPoint to = place_for(session, at_);
  overlay.dashed_line(session.desk.camera.to_screen(place_of(session, *mark_)), to, Ink::focus, 1.4);
  overlay.snap_ticks(to);
}

}  // namespace fogsheet
