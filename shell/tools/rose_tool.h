// The rose under the hand: a press where nothing is moves the nearest one there, a drag moves it, its handle sizes it. What
// a drag would do is shown on a scratch copy, and committed once.
#pragma once

#include "shell/tools/tool.h"

namespace fogsheet {

class RoseTool : public Tool {
 public:
  void press(Session& session, ScreenPoint at) override;
  bool take(Session& session, ScreenPoint from, double held_s) override;
  void move(Session& session, ScreenPoint at) override;
  void release(Session& session, ScreenPoint at) override;
  void cancel(Session& session) override;
  void draw_preview(const Session& session, Overlay& overlay) const override;
  std::string status(const Session& session) const override;

 private:
  enum class Drag { none, move, size };
  Drag drag_ = Drag::none;
  ScreenPoint from_;
  RoseInReach before_;
  RoseInReach scratch_;
};

/// The rose that the slip speaks of: the one selected, else the nearest to the middle of the view. Null when there is none.
const RoseInReach* rose_in_hand(const Session& session);

}  // namespace fogsheet
