// The straight-edge under the hand: two presses or one drag put it on, an end's handle turns it, its body slides with the
// angle locked until a rose takes it, its arrow turns the direction of travel round.
#pragma once

#include "core/instruments/straight_edge.h"
#include "shell/tools/tool.h"

namespace fogsheet {

class StraightEdgeTool : public Tool {
 public:
  void press(Session& session, ScreenPoint at) override;
  bool take(Session& session, ScreenPoint from, double held_s) override;
  void move(Session& session, ScreenPoint at) override;
  void release(Session& session, ScreenPoint at) override;
  void cancel(Session& session) override;
  std::optional<Aimed> aimed(const Session& session) const override;
  bool sliding() const override { return drag_ == Drag::slide; }
  void draw_preview(const Session& session, Overlay& overlay) const override;
  std::string status(const Session& session) const override;

 private:
  enum class Drag { none, put_on, turn_end, turn_at_rose, slide, line_end };
  /// An end at a point of the screen: on the mark that it snaps to, else where it is.
  FirstEnd end_at(const Session& session, ScreenPoint at) const;
  void put_on(Session& session, const FirstEnd& a, const FirstEnd& b);
  void turn_at_rose(Session& session, ScreenPoint at);
  /// The end that is being turned, where the hand has it.
  SheetPoint turned_end(const Session& session, ScreenPoint at) const;
  SheetVector travelled(const Session& session, ScreenPoint at) const;

  Drag drag_ = Drag::none;
  ScreenPoint from_;
  ScreenPoint at_;
  EdgeEnd end_ = EdgeEnd::a;
  std::optional<StraightEdge> before_;  // the edge as it lay when the drag began, and what it had been laid on
  std::optional<EdgeMarks> laid_on_before_;
  std::optional<DirectionSet> direction_before_;
  std::optional<Slide> slide_;
};

/// The direction of travel the other way round; its line still comes from the same marks.
void turn_edge_round(Session& session);

}  // namespace fogsheet
