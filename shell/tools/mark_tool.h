// The mark tool: a press where nothing is makes a landmark there; a mark under the hand is selected or moved.
#pragma once

#include "shell/tools/thing_drag.h"
#include "shell/tools/tool.h"

namespace fogsheet {

class MarkTool : public Tool {
 public:
  void press(Session& session, ScreenPoint at) override;
  bool take(Session& session, ScreenPoint from, double) override { return drag_.take_mark(session, from); }
  void move(Session& session, ScreenPoint at) override { drag_.move(session, at); }
  void release(Session& session, ScreenPoint at) override { drag_.release(session, at); }
  void cancel(Session& session) override { drag_.cancel(session); }
  std::optional<Aimed> aimed(const Session& session) const override { return drag_.aimed(session); }
  void draw_preview(const Session& session, Overlay& overlay) const override { drag_.draw(session, overlay); }
  std::string status(const Session& session) const override;

 private:
  ThingDrag drag_;
};

}  // namespace fogsheet
