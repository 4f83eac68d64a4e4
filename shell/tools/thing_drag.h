// Moving a mark, or a note's words, under the hand: previewed on the sheet, committed once, on release.
#pragma once

#include "shell/session.h"
#include "shell/tools/tool.h"

namespace fogsheet {

class Overlay;

class ThingDrag {
 public:
  /// Takes the mark, or the note, under `from`, if there is one.
  bool take_mark(const Session& session, ScreenPoint from);
  bool take_note(const Session& session, ScreenPoint from);
  void move(Session& session, ScreenPoint at);
  void release(Session& session, ScreenPoint at);
  void cancel(Session& session);
  /// While a mark is on its way.
  std::optional<Aimed> aimed(const Session& session) const;
  void draw(const Session& session, Overlay& overlay) const;

 private:
  bool take(std::optional<Thing> thing, ScreenPoint from);
  SheetPoint place_before(const Session& session) const;
  SheetPoint place_for(const Session& session, ScreenPoint at) const;

  std::optional<Thing> thing_;
  ScreenPoint from_;
  ScreenPoint at_;
};

}  // namespace fogsheet
