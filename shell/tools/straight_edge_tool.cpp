#include "shell/tools/straight_edge_tool.h"

#include "core/directions/direction_figures.h"
#include "shell/canvas/overlay.h"
#include "shell/direction.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {

FirstEnd StraightEdgeTool::end_at(const Session& session, ScreenPoint at) const {
  if (const std::optional<MarkId> mark = mark_to_snap_to(session, at)) return {place_of(session, *mark), mark};
  return {session.desk.camera.to_sheet(at), std::nullopt};
}

void StraightEdgeTool::put_on(Session& session, const FirstEnd& a, const FirstEnd& b) {
  if (distance_mm(a.at, b.at) < k_least_edge_mm) return session.refuse({.fault = Fault::edge_of_no_length});
  session.set_edge(StraightEdge{.a = a.at, .b = b.at, .on_a = a.on, .on_b = b.on});
  session.slip = SlipId::straight_edge;
  session.touch();
}

void StraightEdgeTool::press(Session& session, ScreenPoint at) {
  if (session.desk.edge) {
    if (std::holds_alternative<ArrowTarget>(target_at(session, at))) turn_edge_round(session);
    return;
  }
  const FirstEnd end = end_at(session, at);
  if (session.desk.first_end) return put_on(session, *session.desk.first_end, end);
  session.desk.first_end = end;
  session.touch();
}

bool StraightEdgeTool::take(Session& session, ScreenPoint from, double) {
  from_ = at_ = from;
  before_ = session.desk.edge;
  laid_on_before_ = session.desk.laid_on;
  direction_before_ = session.desk.direction;
  if (!session.desk.edge) {
    session.desk.first_end = end_at(session, from);
    drag_ = Drag::put_on;
    return true;
  }
  const Target target = target_at(session, from);
  if (const auto* grip = std::get_if<HandleTarget>(&target)) {
    drag_ = session.desk.direction && settled_rose(session, *session.desk.edge) ? Drag::turn_at_rose : Drag::turn_end;
    end_ = grip->end;
    return true;
  }
  if (std::holds_alternative<LineEndTarget>(target)) {
    drag_ = Drag::line_end;
    return true;
  }
  if (std::holds_alternative<BodyTarget>(target) || std::holds_alternative<ArrowTarget>(target)) {
    drag_ = Drag::slide;
    slide_.emplace(*session.desk.edge, session.facts().roses, settle_reach_mm(session));
    return true;
  }
  return false;
}

SheetVector StraightEdgeTool::travelled(const Session& session, ScreenPoint at) const {
  return session.desk.camera.to_sheet(at) - session.desk.camera.to_sheet(from_);
}

/// An edge that is being set stays on its rose and turns about it, from one whole figure of the ring to the next.
void StraightEdgeTool::turn_at_rose(Session& session, ScreenPoint at) {
  const RoseInReach* rose = settled_rose(session, *before_);
  const DirectionSet& was = *direction_before_;
  const SheetPoint grip = handle(edge_strip(session, *before_), end_);
  const double turned_deg = direction_deg(grip + travelled(session, at) - rose->centre) - direction_deg(grip - rose->centre);
  const double deg = round_direction_deg(was.deg + turned_deg, session.settings.rounding);
  session.direction_form.text = direction_figures(deg, session.settings.rounding);
  session.direction_form.error.clear();
  const Result<Done> set = set_direction(session, deg, was.reference);
  if (!set) session.refuse(set.problem());
}

// It keeps its distance from the finger: handles stand clear of the ends.
SheetPoint StraightEdgeTool::turned_end(const Session& session, ScreenPoint at) const { return (end_ == EdgeEnd::a ? before_->a : before_->b) + travelled(session, at); }

std::optional<Aimed> StraightEdgeTool::aimed(const Session& session) const {
  if (drag_ == Drag::put_on) return Aimed{session.desk.camera.to_sheet(at_), end_at(session, at_).on};
  if (drag_ == Drag::turn_end) return Aimed{turned_end(session, at_), end_ == EdgeEnd::a ? session.desk.edge->on_a : session.desk.edge->on_b};
  const std::optional<LineAlongEdge> line = drag_ == Drag::line_end ? line_along_edge(session) : std::nullopt;
  return line ? std::optional(Aimed{line->end, std::nullopt}) : std::nullopt;
}

void StraightEdgeTool::move(Session& session, ScreenPoint at) {
  at_ = at;
  if (drag_ == Drag::turn_end) {
    const FirstEnd snapped = end_at(session, session.desk.camera.to_screen(turned_end(session, at)));
    session.set_edge(with_end_at(*before_, end_, snapped.at, snapped.on));
  } else if (drag_ == Drag::slide) {
    session.set_edge(slid_to_mark(session, slide_->at(travelled(session, at))));
  } else if (drag_ == Drag::turn_at_rose) {
    turn_at_rose(session, at);
  } else if (drag_ == Drag::line_end) {
    take_line_end(session, session.desk.camera.to_sheet(at));
  }
  session.touch();
}

void StraightEdgeTool::release(Session& session, ScreenPoint at) {
  move(session, at);
  if (drag_ == Drag::put_on) {
    const FirstEnd start = *session.desk.first_end;
    put_on(session, start, end_at(session, at));
    if (!session.desk.edge) session.desk.first_end.reset();
  } else if (drag_ == Drag::slide) {
    session.set_edge(slid_to_mark(session, slide_->released(travelled(session, at))));
  }
  drag_ = Drag::none;
  slide_.reset();
  session.touch();
}

void StraightEdgeTool::cancel(Session& session) {
  session.desk.edge = before_;
  session.desk.laid_on = laid_on_before_;
  session.desk.direction = direction_before_;
  session.desk.first_end.reset();
  drag_ = Drag::none;
  slide_.reset();
  session.touch();
}

void StraightEdgeTool::draw_preview(const Session& session, Overlay& overlay) const {
  const Camera& camera = session.desk.camera;
  if (drag_ == Drag::put_on) {
    const FirstEnd end = end_at(session, at_);
    const ScreenPoint to = camera.to_screen(end.at);
    overlay.dashed_line(camera.to_screen(session.desk.first_end->at), to, Ink::edge, 2);
    if (end.on) overlay.snap_ticks(to);
    overlay.grip(to, direction_deg(end.at - session.desk.first_end->at), k_handle_radius_px);
  }
  if (drag_ == Drag::slide && before_) {
    const EdgeOutline lay = outline(*before_);
    overlay.ghost(camera.to_screen(lay.reading_start), camera.to_screen(lay.reading_end));
    const SheetPoint was = midpoint(before_->a, before_->b), is = midpoint(session.desk.edge->a, session.desk.edge->b);
    overlay.dotted_line(camera.to_screen(was), camera.to_screen(is), Ink::edge, 1.2);
    overlay.parallel_sign(camera.to_screen(was), bearing(*before_).deg());
    overlay.parallel_sign(camera.to_screen(is), bearing(*session.desk.edge).deg());
  }
}

void turn_edge_round(Session& session) {
  session.desk.edge = turned_round(*session.desk.edge);
  if (session.desk.laid_on) std::swap(session.desk.laid_on->from, session.desk.laid_on->to);
  if (session.desk.direction) {
    turn_direction_round(*session.desk.direction);
    session.direction_form.text = direction_figures(session.desk.direction->deg, session.settings.rounding);
  }
  session.touch();
}

std::string StraightEdgeTool::status(const Session& session) const {
  const std::optional<StraightEdge>& edge = session.desk.edge;
  if (session.direction_form.open || session.desk.direction) {
    const std::optional<DirectionSet>& direction = session.desk.direction;
    const Mark* through = direction && direction->through ? session.document().marks.find(*direction->through) : nullptr;
    return words::status_direction(direction.has_value(), through ? through->name : "");
  }
  if (!edge) return words::status_edge_off(session.desk.first_end.has_value());
  return edge->settled_on ? words::status_edge_settled() : words::status_edge_on();
}

}  // namespace fogsheet
