// The sheet on screen. What does not move is drawn into two lists once a revision, palette and zoom, below and above the
// straight-edge's tint; panning changes only where they are laid. The rest is drawn each frame. What the loupe shows is
// drawn by the same steps for the zoom it is seen at, so that lines and names have their proper weight there too.
#pragma once

#include "shell/app.h"
#include "shell/canvas/brush.h"
#include "shell/session.h"
#include "shell/tools/tool.h"

namespace fogsheet {

class Canvas {
 public:
  Canvas();

  GlyphAtlas& glyphs() { return kit_.glyphs; }
  const GlyphAtlas& glyphs() const { return kit_.glyphs; }

  /// @param tool  the one in hand; loupe_at: the pointer, while the loupe is up; now_ms of the pointers' clock.
  const DrawnFrame& frame(const Session& session, const Tool& tool, std::optional<ScreenPoint> loupe_at, double now_ms);

  /// Whether another frame would differ though nothing happened: an edge on its way to a rose, or a zoom just ended.
  bool moving() const { return moving_; }

 private:
  void draw_tint(const Session& session, const std::optional<StraightEdge>& edge);
  void draw_above(const Session& session, const Tool& tool, const std::optional<StraightEdge>& edge, ImDrawList& list, View view);
  void draw_loupe(const Session& session, const Tool& tool, const std::optional<StraightEdge>& edge, ScreenPoint loupe_at);
  /// The edge as shown: on its way when it has just settled.
  std::optional<StraightEdge> edge_shown(const Session& session, double now_ms);

  /// What the static lists were drawn for.
  struct Drawn {
    std::uint64_t revision = 0;
    Palette palette = Palette::day;
    Rounding rounding = Rounding::whole_degrees;
    bool bold_lines = false;
    int dim_step = 0;
    double px_per_mm = 0;
    double pixel_ratio = 0;
    bool operator==(const Drawn&) const = default;
  };
  struct SheetLists {
    DrawKit::List paper, below, sheet;  // the photograph lies between the first two
    Drawn drawn;
    std::uint64_t revision = 0;
  };
  void draw_sheet(const Session& session, const Drawn& wanted, SheetLists& lists);

  DrawKit kit_;
  SheetLists sheet_, in_loupe_;
  DrawKit::List tint_, above_, above_in_loupe_, loupe_rim_;
  bool loupe_to_the_right_ = true;
  DrawnFrame frame_;
  double last_px_per_mm_ = 0;
  double zoomed_at_ms_ = -1e9;
  std::optional<StraightEdge> last_edge_;
  std::optional<StraightEdge> settle_from_;
  double settled_at_ms_ = -1e9;
  bool settled_now_ = false;  // a moment ago
  bool moving_ = false;
};

}  // namespace fogsheet
