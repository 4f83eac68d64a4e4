// No tool in hand: a press selects, a drag moves the paper, and a mark or a note moves after it was held.
#pragma once

#include "shell/tools/thing_drag.h"
#include "shell/tools/tool.h"

namespace fogsheet {

class NoTool : public Tool {
 public:
  void press(Session& session, ScreenPoint at) override;
  bool take(Session& session, ScreenPoint from, double held_s) override;
  void move(Session& session, ScreenPoint at) override { drag_.move(session, at); }
  void release(Session& session, ScreenPoint at) override { drag_.release(session, at); }
  void cancel(Session& session) override { drag_.cancel(session); }
  std::optional<Aimed> aimed(const Session& session) const override { return drag_.aimed(session); }
  void draw_preview(const Session& session, Overlay& overlay) const override { drag_.draw(session, overlay); }
  std::string status(const Session& session) const override;

 private:
  ThingDrag drag_;
};

/// Selects what lies at a point, whatever the tool in hand, and opens its slip. False where nothing does.
bool select_thing_at(Session& session, ScreenPoint at);

/// Selects what is at a point and opens its slip; lets go of the selection where nothing is.
void select_at(Session& session, ScreenPoint at);
void let_go_of_selection(Session& session);
void select_mark(Session& session, MarkId mark);
void select_rose(Session& session, RoseId rose);
void select_note(Session& session, NoteId note);
void select_leg(Session& session, LegId leg);

}  // namespace fogsheet
