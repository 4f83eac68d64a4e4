// Where the paper lies on the screen.
#include "shell/camera.h"

#include <cmath>

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("zooming keeps the place under the finger") {
  const Camera before{3, {40, -20}};
  const ScreenPoint finger{411, 283};
  const SheetPoint under = before.to_sheet(finger);
  for (const double factor : {0.2, 0.9, 1.25, 3.0, 100.0}) {
    const ScreenPoint after = zoomed(before, finger, factor).to_screen(under);
    CHECK(std::hypot(after.x_px - finger.x_px, after.y_px - finger.y_px) < 1e-9);
  }
}

TEST_CASE("to the sheet and back") {
  const Camera camera{2.7, {-130.5, 44.25}};
  const ScreenPoint p{123.4, 567.8};
  CHECK(std::abs(camera.to_screen(camera.to_sheet(p)).x_px - p.x_px) < 1e-9);
}

TEST_CASE("a fitted paper lies whole in the free area") {
  for (const FreeArea area : {FreeArea{390, 700}, FreeArea{1180, 742}, FreeArea{800, 300}}) {
    const Camera camera = fitted({297, 210}, area);
    CHECK(camera.to_screen({0, 0}).x_px >= 0);
    CHECK(camera.to_screen({297, 210}).x_px <= area.width_px);
    CHECK(camera.to_screen({0, 0}).y_px >= 0);
    CHECK(camera.to_screen({297, 210}).y_px <= area.height_px);
  }
}

TEST_CASE("a first view keeps the work in the free area, and a paper can't be lost") {
  const SheetRect focus{87, 63, 180, 172};
  const struct { FreeArea canvas, clear; } views[] = {{{1180, 742}, {850, 742}}, {{820, 1102}, {820, 551}}, {{390, 768}, {390, 384}}, {{1440, 822}, {1110, 822}}};
  for (const auto& view : views) {
    const Camera camera = opening({297, 210}, view.canvas, view.clear, focus);
    CHECK(camera.to_screen({focus.left_mm, focus.top_mm}).x_px >= -1e-9);
    CHECK(camera.to_screen({focus.left_mm, focus.top_mm}).y_px >= -1e-9);
    CHECK(camera.to_screen({focus.right_mm, focus.bottom_mm}).x_px <= view.clear.width_px + 1e-9);
    CHECK(camera.to_screen({focus.right_mm, focus.bottom_mm}).y_px <= view.clear.height_px + 1e-9);
    const Camera away = held(panned(camera, {1e6, -1e6}), {297, 210}, view.clear);
    CHECK(away.to_screen({0, 0}).x_px < view.clear.width_px);
    CHECK(away.to_screen({297, 210}).y_px > 0);
  }
}
