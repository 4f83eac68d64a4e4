// Presses, drags, two fingers, palms and rain.
#include "shell/tools/gestures.h"

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

struct Log : GestureTarget {
  int presses = 0, begins = 0, ends = 0, cancels = 0, asked = 0;
  bool something_there = true;
  double factor = 1;
  void press(ScreenPoint, PointerKind) override { ++presses; }
  bool ask(ScreenPoint) override { ++asked; return something_there; }
  void drag_begin(ScreenPoint, double, double) override { ++begins; }
  void drag_to(const PointerEvent&) override {}
  void drag_end(const PointerEvent&) override { ++ends; }
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

TEST_CASE("a right button asks at once, a hold of 0.8 s as well, and neither is a press") {
  Log log;
  Gestures gestures(log);
  gestures.event({.phase = PointerPhase::down, .at = {100, 100}, .buttons = 2, .time_ms = 0});
  gestures.event({.phase = PointerPhase::up, .at = {100, 100}, .buttons = 0, .time_ms = 50});
  CHECK(log.asked == 1);
  gestures.event(touch(PointerPhase::down, 1, 100, 1000));
  gestures.event(touch(PointerPhase::move, 1, 103, 1799));
  CHECK(log.asked == 1);
  gestures.event(touch(PointerPhase::move, 1, 103, 1800));
  CHECK(log.asked == 2);
  gestures.event(touch(PointerPhase::move, 1, 104, 2300));
  gestures.event(touch(PointerPhase::up, 1, 104, 2400));
  CHECK(log.asked == 2);
  CHECK(log.presses == 0);
  // Told of nothing in between, it is the same.
  gestures.event(touch(PointerPhase::down, 2, 100, 3000));
  gestures.event(touch(PointerPhase::up, 2, 100, 3900));
  CHECK(log.asked == 3);
  CHECK(log.presses == 0);
}

TEST_CASE("held and then moved it is a drag; held where nothing is it is a press of any length") {
  Log log;
  Gestures gestures(log);
  gestures.event(touch(PointerPhase::down, 1, 100, 0));
  gestures.event(touch(PointerPhase::move, 1, 100, 900));
  gestures.event(touch(PointerPhase::move, 1, 130, 950));
  gestures.event(touch(PointerPhase::up, 1, 130, 1000));
  CHECK(log.asked == 1);
  CHECK(log.begins == 1);
  CHECK(log.ends == 1);
  log.something_there = false;
  gestures.event(touch(PointerPhase::down, 2, 100, 2000));
  gestures.event(touch(PointerPhase::move, 2, 100, 2900));
  gestures.event(touch(PointerPhase::up, 2, 100, 4000));
  CHECK(log.presses == 1);
}

TEST_CASE("a pen that comes down with its button held is the pen all the same") {
  Log log;
  Gestures gestures(log);
  gestures.event({.phase = PointerPhase::down, .kind = PointerKind::pen, .id = 9, .at = {100, 100}, .buttons = 2, .time_ms = 0});
  gestures.event({.phase = PointerPhase::move, .kind = PointerKind::pen, .id = 9, .at = {140, 100}, .buttons = 2, .time_ms = 40});
  CHECK(log.begins == 1);
  CHECK(log.asked == 0);
}

TEST_CASE("a palm of five that lifts finger by finger leaves nothing behind, whichever goes first") {
  for (int first = 1; first <= 5; ++first) {
    Log log;
    Gestures gestures(log);
    for (int id = 1; id <= 5; ++id) gestures.event(touch(PointerPhase::down, id, 20.0 * id, id));
    for (int k = 0; k < 5; ++k) gestures.event(touch(PointerPhase::up, 1 + (first - 1 + k) % 5, 20, 700 + 10 * k));
    CHECK(log.presses + log.asked + log.begins == 0);
    // The glass is free again.
    gestures.event(touch(PointerPhase::down, 9, 100, 2000));
    gestures.event(touch(PointerPhase::up, 9, 100, 2100));
    CHECK(log.presses == 1);
  }
}

TEST_CASE("long apart, short contacts are presses") {
  Log log;
  Gestures gestures(log);
  for (int i = 0; i < 8; ++i) {
    gestures.event(touch(PointerPhase::down, i, 100, 400.0 * i));
    gestures.event(touch(PointerPhase::up, i, 100, 400.0 * i + 15));
  }
  CHECK(log.presses == 8);
}

TEST_CASE("a contact that the browser takes away ends a drag and a press without a trace") {
  Log log;
  Gestures gestures(log);
  gestures.event(touch(PointerPhase::down, 1, 100, 0));
  gestures.event(touch(PointerPhase::cancel, 1, 100, 50));
  gestures.event(touch(PointerPhase::up, 1, 100, 60));
  CHECK(log.presses == 0);
  gestures.event(touch(PointerPhase::down, 2, 100, 100));
  gestures.event(touch(PointerPhase::move, 2, 150, 150));
  gestures.event(touch(PointerPhase::cancel, 2, 150, 160));
  CHECK(log.cancels == 1);
  CHECK(log.ends == 0);
}
