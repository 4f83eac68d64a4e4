// Presses, drags, two fingers, palms and rain.
#include "shell/tools/gestures.h"

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

struct Log : GestureTarget {
  int presses = 0, begins = 0, ends = 0, cancels = 0;
  double factor = 1;
  void press(ScreenPoint, PointerKind) override { ++presses; }
  void drag_begin(ScreenPoint, PointerKind, double) override { ++begins; }
  void drag_to(ScreenPoint) override {}
  void drag_end(ScreenPoint) override { ++ends; }
  void drag_cancel() override { ++cancels; }
  void pan_zoom(ScreenPoint, ScreenPoint, double by) override { factor *= by; }
  void hover(std::optional<ScreenPoint>) override {}
};

PointerEvent touch(PointerPhase phase, int id, double x, double ms) {
  return {.phase = phase, .kind = PointerKind::touch, .id = id, .at = {x, 100}, .buttons = 1, .time_ms = ms};
}

PointerEvent pen(PointerPhase phase, double x, double ms) {
  return {.phase = phase, .kind = PointerKind::pen, .id = 90, .at = {x, 100}, .buttons = 1, .time_ms = ms};
}

}  // namespace

TEST_CASE("under 8 px of movement it is a press, from 8 px on a drag") {
  for (const auto& [moved, presses] : {std::pair{7.9, 1}, std::pair{8.0, 0}}) {
    Log log;
    Gestures gestures(log);
    gestures.event(touch(PointerPhase::down, 1, 100, 0));
    gestures.event(touch(PointerPhase::move, 1, 100 + moved, 50));
    gestures.event(touch(PointerPhase::up, 1, 100 + moved, 100));
    CHECK(log.presses == presses);
    CHECK(log.begins == 1 - presses);
    CHECK(log.ends == 1 - presses);
  }
}

TEST_CASE("a second finger cancels a drag and zooms; no press comes of the fingers' lifting") {
  Log log;
  Gestures gestures(log);
  gestures.event(touch(PointerPhase::down, 1, 100, 0));
  gestures.event(touch(PointerPhase::move, 1, 120, 50));
  gestures.event(touch(PointerPhase::down, 2, 220, 60));
  CHECK(log.cancels == 1);
  gestures.event(touch(PointerPhase::move, 2, 320, 90));
  CHECK(log.factor == doctest::Approx(2));
  gestures.event(touch(PointerPhase::up, 2, 320, 100));
  gestures.event(touch(PointerPhase::up, 1, 120, 110));
  CHECK(log.presses == 0);
  CHECK(log.ends == 0);
}

TEST_CASE("a shower of short contacts does nothing lasting, a finger in it does") {
  Log log;
  Gestures gestures(log);
  double now = 0;
  for (int drop = 0; drop < 10; ++drop, now += 60) {
    gestures.event(touch(PointerPhase::down, drop, 30.0 * drop, now));
    gestures.event(touch(PointerPhase::up, drop, 30.0 * drop, now + 20));
  }
  CHECK(log.presses == 3);  // the first three can't be told from quick presses
  gestures.event(touch(PointerPhase::down, 50, 10, now));
  gestures.event(touch(PointerPhase::up, 50, 10, now + 90));
  CHECK(log.presses == 4);
}

TEST_CASE("five contacts at once are no press") {
  Log log;
  Gestures gestures(log);
  for (int id = 1; id <= 5; ++id) gestures.event(touch(PointerPhase::down, id, 20.0 * id, id));
  for (int id = 1; id <= 5; ++id) gestures.event(touch(PointerPhase::up, id, 20.0 * id, 100 + id));
  CHECK(log.presses == 0);
}

TEST_CASE("while a pen is down, and for half a second after, fingers do nothing") {
  Log log;
  Gestures gestures(log);
  gestures.event(pen(PointerPhase::down, 100, 0));
  gestures.event(touch(PointerPhase::down, 1, 300, 10));
  gestures.event(pen(PointerPhase::move, 150, 20));
  CHECK(log.begins == 1);
  CHECK(log.cancels == 0);
  gestures.event(touch(PointerPhase::move, 1, 340, 30));
  gestures.event(pen(PointerPhase::up, 150, 40));
  CHECK(log.ends == 1);
  gestures.event(touch(PointerPhase::up, 1, 340, 60));
  gestures.event(touch(PointerPhase::down, 2, 300, 400));
  gestures.event(touch(PointerPhase::up, 2, 300, 480));
  CHECK(log.presses == 0);
  gestures.event(touch(PointerPhase::down, 3, 300, 600));
  gestures.event(touch(PointerPhase::up, 3, 300, 680));
  CHECK(log.presses == 1);
}

TEST_CASE("a hand that came down before the pen takes back what it began") {
  Log log;
  Gestures gestures(log);
  gestures.event(touch(PointerPhase::down, 1, 300, 0));
  gestures.event(touch(PointerPhase::move, 1, 330, 30));
  CHECK(log.begins == 1);
  gestures.event(pen(PointerPhase::down, 100, 60));
  CHECK(log.cancels == 1);
  gestures.event(pen(PointerPhase::up, 100, 120));
  gestures.event(touch(PointerPhase::up, 1, 330, 140));
  CHECK(log.presses == 1);
  CHECK(log.ends == 0);
}
