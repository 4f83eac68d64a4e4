// When a slip comes to lie over what is in hand (the edge being read, dividers, the rose or mark whose slip it is), the
// camera gives way: the sheet is shifted by as little as brings it out. Where the hand itself has put it there, it stays.
#pragma once

#include "core/sheet/sheet_point.h"
#include "shell/session.h"

namespace fogsheet {

class GiveWay {
 public:
  /// After whatever happened. @param by_hand  a drag, or the camera moved by hand: nothing is shifted for that alone.
  void look(Session& session, bool by_hand);

 private:
  SlipId slip_ = SlipId::none;
  std::optional<SheetRect> thing_;
  double covered_right_px_ = 0;
  double covered_bottom_px_ = 0;
  bool waits_ = false;  // a slip has all the room: what comes after it is measured before anything is shifted
};

}  // namespace fogsheet
