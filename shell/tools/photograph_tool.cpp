#include "shell/tools/photograph_tool.h"

#include <utility>

#include "shell/canvas/overlay.h"
#include "shell/words_of_photographs.h"

namespace fogsheet {

void PhotographTool::press(Session& session, ScreenPoint at) {
  session.slip = SlipId::photograph;
  if (!is_shown(session.photograph)) return;
  if (const std::optional<std::size_t> point = photograph_point_near(session, at)) {
    session.photograph->selected = point;
    return;
  }
  const PicturePoint on_picture = laid(session, *session.photograph).transform.to_picture(session.desk.camera.to_sheet(at));
  if (const Result<Done> added = add_photograph_point(session, on_picture); !added) session.refuse(added.problem());
}

bool PhotographTool::take(Session& session, ScreenPoint from, double) {
  dragged_ = photograph_point_near(session, from);
  from_ = at_ = from;
  if (dragged_) session.photograph->selected = dragged_;
  return dragged_.has_value();
}

void PhotographTool::move(Session& session, ScreenPoint at) {
  at_ = at;
  session.frame_wanted = true;
}

// The point keeps its distance from the finger, so that taking it off its middle does not move it.
SheetPoint PhotographTool::place_for(const Session& session) const {
  const Camera& camera = session.desk.camera;
  return laid(session, *session.photograph).transform.to_sheet(session.photograph->placing.points[*dragged_].at) + (camera.to_sheet(at_) - camera.to_sheet(from_));
}

void PhotographTool::release(Session& session, ScreenPoint at) {
  at_ = at;
  const PicturePoint to = laid(session, *session.photograph).transform.to_picture(place_for(session));
  if (const Result<Done> moved = move_photograph_point(session, *std::exchange(dragged_, std::nullopt), to); !moved) session.refuse(moved.problem());
  session.touch();
}

void PhotographTool::cancel(Session& session) {
  dragged_.reset();
  session.touch();
}

std::optional<Aimed> PhotographTool::aimed(const Session& session) const {
  if (!dragged_) return std::nullopt;
  return Aimed{place_for(session), std::nullopt};
}

void PhotographTool::draw_preview(const Session& session, Overlay& overlay) const {
  if (!is_shown(session.photograph)) return;
  const Photograph& photograph = *session.photograph;
  const LaidPhotograph lies = laid(session, photograph);
  const Camera& camera = session.desk.camera;
  for (std::size_t i = 0; i < photograph.placing.points.size(); ++i) {
    const PhotographPoint& point = photograph.placing.points[i];
    const ScreenPoint at = camera.to_screen(dragged_ == i ? place_for(session) : lies.transform.to_sheet(point.at));
    Brush& brush = overlay.brush();
    if (lies.fit && point.position && dragged_ != i) brush.line(at, camera.to_screen(session.facts().projection->to_sheet(unquantise(*point.position))), Ink::focus, 1.6);
    if (photograph.selected == i) overlay.snap_ticks(at);
    brush.ring(at, 7, Ink::paper, 4);
    brush.ring(at, 7, Ink::focus, 2);
    brush.disc(at, 1.6, Ink::focus, Ink::paper, 1);
    brush.text({at.x_px + brush.apart(11), at.y_px - brush.apart(7)}, std::to_string(i + 1), 14, Face::bold, Anchor::start, Ink::focus, true);
  }
}

std::string PhotographTool::status(const Session& session) const { return words::status_photograph_tool(session); }

}  // namespace fogsheet
