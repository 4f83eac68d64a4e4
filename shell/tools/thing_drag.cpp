#include "shell/tools/thing_drag.h"

#include <utility>

#include "core/figure/note_figure.h"
#include "shell/canvas/overlay.h"
#include "shell/things.h"
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
  return take(mark_near(session, from), from);
}

bool ThingDrag::take_note(const Session& session, ScreenPoint from) {
  return take(note_near(session, from), from);
}

bool ThingDrag::take(std::optional<Thing> thing, ScreenPoint from) {
  thing_ = thing;
  from_ = at_ = from;
  return thing_.has_value();
}

void ThingDrag::move(Session& session, ScreenPoint at) {
  at_ = at;
  session.frame_wanted = true;
}

SheetPoint ThingDrag::place_before(const Session& session) const {
  return *hold_of(session, *thing_);
}

// The thing keeps its distance from the finger, so that taking it off its middle does not move it.
SheetPoint ThingDrag::place_for(const Session& session, ScreenPoint at) const {
  return place_before(session) + (session.desk.camera.to_sheet(at) - session.desk.camera.to_sheet(from_));
}

void ThingDrag::release(Session& session, ScreenPoint at) {
  const SheetPoint to = place_for(session, at);
  move_thing(session, *std::exchange(thing_, std::nullopt), to);
}

void ThingDrag::cancel(Session& session) {
  thing_.reset();
  session.frame_wanted = true;
}

std::optional<Aimed> ThingDrag::aimed(const Session& session) const {
  if (!thing_ || !std::holds_alternative<MarkId>(*thing_)) return std::nullopt;
  return Aimed{place_for(session, at_), std::nullopt};
}

void ThingDrag::draw(const Session& session, Overlay& overlay) const {
  if (!thing_) return;
  const SheetPoint at = place_for(session, at_);
  if (const NoteId* note = std::get_if<NoteId>(&*thing_)) return draw_note(session, *note, at, overlay);
  const Camera& camera = session.desk.camera;
  overlay.dashed_line(camera.to_screen(place_before(session)), camera.to_screen(at), Ink::focus, 1.4);
  overlay.snap_ticks(camera.to_screen(at));
}

}  // namespace fogsheet
