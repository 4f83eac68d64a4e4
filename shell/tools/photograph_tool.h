// Says where places that the user knows lie on the photograph under the sheet: a press puts a point on it, a drag moves one.
#pragma once

#include "shell/tools/tool.h"

namespace fogsheet {

class PhotographTool : public Tool {
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
  // The photograph stays where it is while a point of it is dragged, and goes to its new place on release.
  std::optional<std::size_t> dragged_;
  ScreenPoint from_;
  ScreenPoint at_;
  SheetPoint place_for(const Session& session) const;
};

}  // namespace fogsheet
