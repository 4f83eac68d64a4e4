// Where the loupe stands, when it is up, and what its window is told to show.
#include "shell/canvas/loupe.h"

#include <cmath>

#include "doctest/doctest.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

double distance_px(ScreenPoint a, ScreenPoint b) { return std::hypot(a.x_px - b.x_px, a.y_px - b.y_px); }

}  // namespace

TEST_CASE("the loupe stands above the finger, beside it near the top, never off the canvas and never under the finger") {
  for (const FreeArea area : {FreeArea{1180, 742}, FreeArea{820, 1102}, FreeArea{390, 768}, FreeArea{390, 400}, FreeArea{320, 568}}) {
    bool to_the_right = true;
    for (double y = 0; y <= area.height_px; y += 7)
      for (double x = 0; x <= area.width_px; x += 7) {
        const ScreenPoint finger{x, y}, middle = loupe_middle(finger, area, to_the_right);
        CAPTURE(area.width_px); CAPTURE(x); CAPTURE(y);
        CHECK(middle.x_px >= k_loupe_radius_px);
        CHECK(middle.y_px >= k_loupe_radius_px);
        CHECK(middle.x_px <= area.width_px - k_loupe_radius_px);
        CHECK(middle.y_px <= area.height_px - k_loupe_radius_px);
        CHECK(distance_px(middle, finger) >= k_loupe_radius_px + 24);  // a fingertip's half width
      }
    // Far from the top and the sides: straight above, its rim 96 px from the finger.
    const ScreenPoint finger{area.width_px / 2, area.height_px - 10}, middle = loupe_middle(finger, area, to_the_right);
    CHECK(middle.x_px == doctest::Approx(finger.x_px));
    CHECK(finger.y_px - middle.y_px == doctest::Approx(84 + 96));
  }
}

TEST_CASE("within 180 px of the top the loupe is beside the finger, and keeps its side") {
  bool to_the_right = true;
  const FreeArea area{820, 1102};
  for (double y = 0; y <= 180; y += 10) CHECK(loupe_middle({410, y}, area, to_the_right).x_px - 410 > 84);
  CHECK(to_the_right);
  CHECK(loupe_middle({700, 60}, area, to_the_right).x_px < 700 - 84);
  CHECK_FALSE(to_the_right);
  CHECK(loupe_middle({500, 60}, area, to_the_right).x_px < 500 - 84);  // it does not come back while there is room
}

TEST_CASE("what is aimed at lies in the middle of the loupe, three times as large") {
  const View view = loupe_view({300, 200}, {120, 340});
  CHECK(120 * view.scale + view.offset.x_px == doctest::Approx(300));
  CHECK(340 * view.scale + view.offset.y_px == doctest::Approx(200));
  CHECK(view.scale == 3);
}

namespace {

/// Whether the next frame has a loupe.
bool loupe_is_up(Tabletop& table) { return table.app.frame(table.now_ms).lens.has_value(); }

void lay_edge(Tabletop& table) { table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}})); }

}  // namespace

TEST_CASE("the loupe is up while a finger drags an end, and goes with it") {
  Tabletop table;
  lay_edge(table);
  table.hand = PointerKind::touch;
  const ScreenPoint from = table.middle("edge/end-b");
  CHECK_FALSE(loupe_is_up(table));
  table.hold(from, from + ScreenPoint{10, 60});
  CHECK(loupe_is_up(table));
  table.lift(from + ScreenPoint{10, 60});
  CHECK_FALSE(loupe_is_up(table));
}

TEST_CASE("each drag that aims has its loupe: a mark, a leg, dividers, an edge being put on; a slide and the paper have none") {
  struct Case {
    const char* tool;
    const char* from;
    bool up;
  };
  for (const Case& c : {Case{"mark", "mark/Off Sarn", true}, Case{"leg", "mark/Off Sarn", true}, Case{"straight-edge", "mark/Off Sarn", true}, Case{"none", "mark/Off Sarn", false}}) {
    CAPTURE(c.tool);
    Tabletop table;
    table.hand = PointerKind::touch;
    if (std::string(c.tool) != "none") table.done("tool", Value::object({{"tool", c.tool}}));
    const ScreenPoint from = table.middle(c.from);
    table.hold(from, from + ScreenPoint{50, 40});
    CHECK(loupe_is_up(table) == c.up);
    table.send(PointerPhase::cancel, from);
    CHECK_FALSE(loupe_is_up(table));
  }
  Tabletop table;
  table.done("tool", Value::object({{"tool", "dividers"}}));
  table.press("mark/Off Sarn");
  table.press("mark/Off Gannet");
  table.hand = PointerKind::touch;
  for (const auto& [part, up] : {std::pair{"dividers/leg-a", true}, std::pair{"dividers/hinge", false}}) {
    const ScreenPoint from = table.middle(part);
    table.hold(from, from + ScreenPoint{30, 30});
    CHECK(loupe_is_up(table) == up);
    table.send(PointerPhase::cancel, from);
  }
  Tabletop sliding;
  lay_edge(sliding);
  sliding.hand = PointerKind::touch;
  const ScreenPoint body = sliding.middle("edge/reading");
  sliding.hold(body, body + ScreenPoint{0, 60});
  CHECK_FALSE(loupe_is_up(sliding));
}

TEST_CASE("a mouse and a pen have the loupe while Alt or the pen's button is held; the setting turns it off") {
  Tabletop table;
  lay_edge(table);
  const ScreenPoint from = table.middle("edge/end-b");
  table.hold(from, from + ScreenPoint{0, 30});
  CHECK_FALSE(loupe_is_up(table));
  table.app.pointer({.phase = PointerPhase::move, .at = from + ScreenPoint{0, 36}, .buttons = 1, .alt = true, .time_ms = 900});
  CHECK(loupe_is_up(table));
  table.app.pointer({.phase = PointerPhase::move, .at = from + ScreenPoint{0, 40}, .buttons = 1, .time_ms = 920});
  CHECK_FALSE(loupe_is_up(table));
  table.lift(from);
  table.hand = PointerKind::pen;
  const ScreenPoint at = table.middle("edge/end-b");
  table.hold(at, at + ScreenPoint{0, 30});
  CHECK_FALSE(loupe_is_up(table));
  table.app.pointer({.phase = PointerPhase::move, .kind = PointerKind::pen, .at = at + ScreenPoint{0, 36}, .buttons = 3, .time_ms = table.now_ms + 20});
  CHECK(loupe_is_up(table));
  table.lift(at);
  table.now_ms += 1000;  // the hand that held the pen is off the glass
  table.hand = PointerKind::touch;
  table.done("set-loupe", Value::object({{"state", "off"}}));
  CHECK(table.platform.settings["loupe"] == "off");
  const ScreenPoint again = table.middle("edge/end-b");
  table.hold(again, again + ScreenPoint{0, 30});
  CHECK_FALSE(loupe_is_up(table));
}

TEST_CASE("no snap: an edge laid by eye next to a mark is not on it; kept as other settings are") {
  Tabletop table;
  table.done("set-snap", Value::object({{"state", "off"}}));
  CHECK(table.platform.settings["snap"] == "off");
  table.done("tool", Value::object({{"tool", "straight-edge"}}));
  table.press("mark/Off Sarn");
  table.press("mark/Off Gannet");
  CHECK(table.read("edge")["on"].items()->empty());
  CHECK(table.ask("set-snap", Value::object({{"state", "maybe"}})).has("error"));
}
