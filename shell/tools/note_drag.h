// Moving a note's words under the hand: previewed on the sheet, committed once, on release.
#pragma once

#include "shell/session.h"

namespace fogsheet {

class Overlay;

class NoteDrag {
 public:
  /// Takes the note under `from`, if there is one.
  bool take(const Session& session, ScreenPoint from);
  void move(Session& session, ScreenPoint at);
  void release(Session& session, ScreenPoint at);
  void cancel(Session& session);
  void draw(const Session& session, Overlay& overlay) const;
  bool active() const { return note_.has_value(); }

 private:
  SheetPoint place_for(const Session& session, ScreenPoint at) const;

  std::optional<NoteId> note_;
  ScreenPoint from_;
  ScreenPoint at_;
};

}  // namespace fogsheet
