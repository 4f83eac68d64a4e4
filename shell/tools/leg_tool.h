// The leg tool: presses lead from turn to turn; a drag from a mark draws one leg. Where nothing is, a turning point is made.
#pragma once

#include "shell/tools/tool.h"

namespace fogsheet {

class LegTool : public Tool {
 public:
  void press(Session& session, ScreenPoint at) override;
  bool take(Session& session, ScreenPoint from, double held_s) override;
  void move(Session& session, ScreenPoint at) override;
  void release(Session& session, ScreenPoint at) override;
  void cancel(Session& session) override;
  std::optional<Aimed> aimed(const Session& session) const override;
  void draw_preview(const Session& session, Overlay& overlay) const override;
  std::string status(const Session& session) const override;

 private:
  /// From `from` to the mark at a point, or to a turning point made there.
  void draw_leg(Session& session, MarkId from, ScreenPoint to);

  std::optional<MarkId> dragged_from_;
  ScreenPoint at_;
};

}  // namespace fogsheet
