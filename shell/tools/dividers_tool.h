// The dividers under the hand: two presses open them, a leg is moved by its point or anywhere along it, the hinge carries
// both with the opening held. Points snap to marks and lie down on legs.
#pragma once

#include "shell/tools/target.h"
#include "shell/tools/tool.h"

namespace fogsheet {

class DividersTool : public Tool {
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
  FirstEnd point_at(const Session& session, ScreenPoint at) const;
  void carry(const Session& session, SheetVector by, DividersPlace& lie) const;

  /// The leg's point, where the hand has it: it keeps its distance from the finger, which may hold the leg anywhere.
  SheetPoint held_point(const Session& session) const;

  std::optional<DividersPart> part_;
  ScreenPoint from_;
  ScreenPoint at_;
  std::optional<DividersOnSheet> before_;
};

}  // namespace fogsheet
