#include "shell/tools/note_drag.h"

#include "core/document/actions.h"
#include "core/figure/note_figure.h"
#include "shell/canvas/overlay.h"
#include "shell/tools/target.h"

namespace fogsheet {

bool NoteDrag::take(const Session& session, ScreenPoint from) {
  note_ = note_near(session, from);
  from_ = at_ = from;
  return note_.has_value();
}

void NoteDrag::move(Session& session, ScreenPoint at) {
  at_ = at;
  session.frame_wanted = true;
}

// The words keep their distance from the finger.
SheetPoint NoteDrag::place_for(const Session& session, ScreenPoint at) const {
  const SheetPoint was = session.facts().projection->to_sheet(unquantise(session.document().text_notes.find(*note_)->at));
  return was + (session.desk.camera.to_sheet(at) - session.desk.camera.to_sheet(from_));
}

void NoteDrag::release(Session& session, ScreenPoint at) {
  const Position to = session.facts().projection->to_position(place_for(session, at));
  const Document before = session.document();
  const Result<Done> moved = change_text_note(session.history(), *note_, {.at = to});
  note_.reset();
  if (!moved) return session.refuse(moved.problem());
  session.settle_desk(before);
}

void NoteDrag::cancel(Session& session) {
  note_.reset();
  session.frame_wanted = true;
}

void NoteDrag::draw(const Session& session, Overlay& overlay) const {
  if (!note_) return;
  const Camera& camera = session.desk.camera;
  const SheetPoint at = place_for(session, at_);
  const Legibility legibility = legibility_of(session.settings.palette, session.settings.bold_lines, camera.px_per_mm);
  const std::optional<LaidNote> laid = lay_note(at, session.document().text_notes.find(*note_)->text, legibility);
  if (!laid) return;
  // Drawn as it will stand; the list's own millimetres begin at the canvas, not at the paper.
  Figure figure;
  const ScreenPoint on_canvas = camera.to_screen(at);
  add_note(figure, {on_canvas.x_px / camera.px_per_mm, on_canvas.y_px / camera.px_per_mm}, *laid);
  overlay.brush().shapes(figure.on(Layer::labels), camera.px_per_mm);
  const ScreenPoint left{on_canvas.x_px, on_canvas.y_px + 4};
  overlay.dashed_line(left, {left.x_px + laid->covers.width_mm() * camera.px_per_mm, left.y_px}, Ink::focus, 1.4);
}

}  // namespace fogsheet
