#include "shell/tools/thing_drag.h"

#include "core/document/actions.h"
#include "core/figure/note_figure.h"
#include "shell/canvas/overlay.h"
#include "shell/tools/target.h"

namespace fogsheet {
namespace {

void draw_note(const Session& session, NoteId note, SheetPoint at, Overlay& overlay) {
  const Camera& camera = session.desk.camera;
  const Legibility legibility = session.settings.legibility(camera.px_per_mm);
  const std::optional<LaidNote> laid = lay_note(at, session.document().text_notes.find(note)->text, legibility);
  if (!laid) return;
  // Drawn as it will stand; the list's own millimetres begin at the canvas, not at the paper.
  Figure figure;
  const ScreenPoint on_canvas = camera.to_screen(at);
  add_note(figure, {on_canvas.x_px / camera.px_per_mm, on_canvas.y_px / camera.px_per_mm}, *laid);
  overlay.brush().shapes(figure.on(Layer::labels), camera.px_per_mm);
  const ScreenPoint left{on_canvas.x_px, on_canvas.y_px + 4};
  overlay.dashed_line(left, {left.x_px + laid->covers.width_mm() * camera.px_per_mm, left.y_px}, Ink::focus, 1.4);
}

}  // namespace

bool ThingDrag::take_mark(const Session& session, ScreenPoint from) {
  const std::optional<MarkId> mark = mark_near(session, from);
  return take(mark ? Thing(*mark) : Thing(), from);
}

bool ThingDrag::take_note(const Session& session, ScreenPoint from) {
  const std::optional<NoteId> note = note_near(session, from);
  return take(note ? Thing(*note) : Thing(), from);
}

bool ThingDrag::take(Thing thing, ScreenPoint from) {
  thing_ = thing;
  from_ = at_ = from;
  return !std::holds_alternative<std::monostate>(thing_);
}

void ThingDrag::move(Session& session, ScreenPoint at) {
  at_ = at;
  session.frame_wanted = true;
}

SheetPoint ThingDrag::place_before(const Session& session) const {
  if (const MarkId* mark = std::get_if<MarkId>(&thing_)) return place_of(session, *mark);
  return session.facts().projection->to_sheet(unquantise(session.document().text_notes.find(std::get<NoteId>(thing_))->at));
}

// The thing keeps its distance from the finger, so that taking it off its middle does not move it.
SheetPoint ThingDrag::place_for(const Session& session, ScreenPoint at) const {
  return place_before(session) + (session.desk.camera.to_sheet(at) - session.desk.camera.to_sheet(from_));
}

void ThingDrag::release(Session& session, ScreenPoint at) {
  const Position to = session.facts().projection->to_position(place_for(session, at));
  const Document before = session.document();
  const MarkId* mark = std::get_if<MarkId>(&thing_);
  const Result<Done> moved = mark ? move_mark(session.history(), *mark, to.lat_deg, to.lon_deg) : change_text_note(session.history(), std::get<NoteId>(thing_), {.at = to});
  thing_ = {};
  if (!moved) return session.refuse(moved.problem());
  session.settle_desk(before);
}

void ThingDrag::cancel(Session& session) {
  thing_ = {};
  session.frame_wanted = true;
}

void ThingDrag::draw(const Session& session, Overlay& overlay) const {
  if (std::holds_alternative<std::monostate>(thing_)) return;
  const SheetPoint at = place_for(session, at_);
  if (const NoteId* note = std::get_if<NoteId>(&thing_)) return draw_note(session, *note, at, overlay);
  const Camera& camera = session.desk.camera;
  overlay.dashed_line(camera.to_screen(place_before(session)), camera.to_screen(at), Ink::focus, 1.4);
  overlay.snap_ticks(camera.to_screen(at));
}

}  // namespace fogsheet
