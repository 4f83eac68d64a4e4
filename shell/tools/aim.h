// Where a drag points, for where the pointer is: the one place that stands between the two, for all tools. While the loupe is
// up, what is dragged moves a third as far as the finger, and falls behind by the rest. A finger that makes haste is not
// aiming yet: then it moves as far as the finger and catches up with it, so that far places are reached in one drag.
#pragma once

#include <optional>
#include <vector>

#include "shell/pointer.h"

namespace fogsheet {

class Aim {
 public:
  void begin(ScreenPoint from, double now_ms);
  /// The pointer is there now. @param fine  the loupe is up
  /// @return where it points
  ScreenPoint follow(ScreenPoint pointer, double now_ms, bool fine);
  void end() { loupe_at_.reset(); }

  /// The pointer, while the loupe is up.
  std::optional<ScreenPoint> loupe_at() const { return loupe_at_; }

 private:
  struct Sample {
    ScreenPoint at;
    double ms = 0;
  };
  /// In [0, 1]: from aiming to going somewhere.
  double haste(ScreenPoint pointer, double now_ms);

  std::vector<Sample> samples_;  // of a moment, the last one always
  ScreenPoint behind_;  // the pointer less where it points
  std::optional<ScreenPoint> loupe_at_;
};

}  // namespace fogsheet
