// The dividers under the hand, on the desk and as commands.
#include "shell/dividers.h"

#include <cmath>

#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

struct Bench : Tabletop {
  void take() { ask("tool", Value::object({{"tool", "dividers"}})); }
  double opening_nm() { return *read("dividers")["distance_nm"].number(); }
  void lay(std::size_t from, std::size_t to) { done("open-dividers", Value::object({{"from", mark_id(from)}, {"to", mark_id(to)}})); }
};

}  // namespace

TEST_CASE("two presses on the ends of a leg read its distance") {
  Bench bench;
  bench.take();
  bench.press("mark/Off Sarn");
  CHECK(bench.read("dividers").is_null());
  CHECK(bench.says("Press the second point."));
  bench.press("mark/Off Gannet");
  const Value dividers = bench.read("dividers");
  CHECK(dividers["on"].items()->size() == 2);
  for (std::size_t i = 0; i < bench.app.read()["legs"].items()->size(); ++i) {
    const Value leg = bench.leg(i);
    if (*leg["from"].text() != bench.mark_id(0) || *leg["to"].text() != bench.mark_id(1)) continue;
    CHECK(*dividers["shown"]["distance"].text() == *leg["shown"]["distance"].text());
    CHECK(std::abs(*dividers["distance_nm"].number() - *leg["distance_nm"].number()) < 0.001);
  }
}

TEST_CASE("a leg of the dividers moves by its point, snaps, and the hinge carries both with the opening held") {
  Bench bench;
  bench.lay(0, 1);
  const double laid_nm = bench.opening_nm();
  const ScreenPoint sarn = bench.middle("sheet/44°10.0'N 031°22.0'W");
  bench.drag(bench.middle("dividers/leg-a"), sarn);
  CHECK(bench.read("dividers")["on"].items()->size() == 1);
  CHECK(std::abs(bench.opening_nm() - laid_nm) > 0.1);
  bench.drag(bench.middle("dividers/leg-a"), bench.middle("mark/#" + bench.mark_id(0)));
  CHECK(bench.opening_nm() == doctest::Approx(laid_nm));
  CHECK(bench.read("dividers")["on"].items()->size() == 2);

  // The same miles are more millimetres further north: what is held is the opening.
  const ScreenPoint hinge = bench.middle("dividers/hinge");
  bench.drag(hinge, hinge + ScreenPoint{-60, 90});
  CHECK(bench.read("dividers")["on"].items()->empty());
  const double carried_nm = bench.opening_nm();
  CHECK(carried_nm != laid_nm);
  CHECK(std::abs(carried_nm - laid_nm) < 0.01);
  const ScreenPoint back = bench.middle("dividers/hinge");
  bench.drag(back, back + ScreenPoint{60, -90});
  CHECK(bench.opening_nm() == doctest::Approx(laid_nm));
}

TEST_CASE("nothing else of the dividers pans, and Esc throws a drag away, then takes them off") {
  Bench bench;
  bench.lay(0, 1);
  const Value before = bench.read("dividers");
  const ScreenPoint mark = bench.middle("mark/Morna Perch");
  bench.drag({700, 620}, {640, 600});
  CHECK(bench.middle("mark/Morna Perch").x_px == doctest::Approx(mark.x_px - 60));
  CHECK(bench.read("dividers") == before);
  const ScreenPoint point = bench.middle("dividers/leg-b");
  bench.hold(point, point + ScreenPoint{40, 70});
  CHECK_FALSE(bench.read("dividers") == before);
  bench.app.key({.key = "Escape"});
  CHECK(bench.read("dividers") == before);
  bench.send(PointerPhase::up, point);
  bench.app.key({.key = "Escape"});
  CHECK(bench.read("dividers").is_null());
}

TEST_CASE("a press that begins anew leaves the reading until the second point is down") {
  Bench bench;
  bench.lay(0, 1);
  const Value before = bench.read("dividers");
  bench.press("mark/Morna Perch");
  CHECK(bench.read("dividers") == before);
  bench.app.key({.key = "Escape"});
  CHECK(bench.read("dividers") == before);
  bench.press("mark/Morna Perch");
  bench.press("mark/Morna Perch");
  CHECK(bench.read("dividers") == before);
  CHECK(bench.says("too close together"));
}

TEST_CASE("walked to the latitude scale and back they read the same") {
  Bench bench;
  bench.lay(0, 1);
  const double laid_nm = bench.opening_nm();
  bench.press_button("walk-dividers");
  CHECK(*bench.read("dividers")["on_scale"].flag());
  CHECK(bench.opening_nm() == doctest::Approx(laid_nm));
  // On the border they can be seen and taken, though it may have been off the screen.
  CHECK(bench.app.where("dividers/leg-a").is_object());
  CHECK(bench.app.where("dividers/hinge").is_object());
  bench.press_button("walk-dividers");
  CHECK_FALSE(*bench.read("dividers")["on_scale"].flag());
  CHECK(bench.read("dividers")["on"].items()->size() == 2);
}

TEST_CASE("set to a distance they step a leg off, and the last step can be marked") {
  Bench bench;
  bench.take();
  bench.type("distance", "1.0");
  CHECK(bench.opening_nm() == doctest::Approx(1));
  CHECK(*bench.read("dividers")["shown"]["distance"].text() == "1.0 nm");
  const std::string leg = bench.leg_id(0);
  const double whole_nm = *bench.leg(0)["distance_nm"].number();
  bench.done("step-off", Value::object({{"leg", leg}}));
  CHECK(*bench.read("dividers")["stepped"]["steps"].number() == std::floor(whole_nm));
  bench.type("steps", "2");
  CHECK(*bench.read("dividers")["stepped"]["steps"].number() == 2);
  bench.press_button("mark-last-step");
  const std::size_t count = bench.app.read()["marks"].items()->size();
  const Value start = bench.app.read()["marks"], made = bench.mark(count - 1);
  bench.done("add-leg", Value::object({{"from", *bench.leg(0)["from"].text()}, {"to", *made["id"].text()}}));
  const Value stepped = bench.leg(bench.app.read()["legs"].items()->size() - 1);
  CHECK(std::abs(*stepped["distance_nm"].number() - 2) < 0.002);
  CHECK(std::abs(*stepped["course_true_deg"].number() - *bench.leg(0)["course_true_deg"].number()) < 0.05);
  bench.done("undo");
  bench.done("undo");
  CHECK(bench.app.read()["marks"].items()->size() == count - 1);
}

TEST_CASE("wrong entries stay and say why") {
  Bench bench;
  bench.take();
  for (const char* text : {"abc", "-1", "0", "900", "2 furlongs"}) {
    CAPTURE(text);
    bench.type("distance", text);
    CHECK(bench.field("distance").text == text);
    CHECK(bench.field("distance").error.size() > 10);
    CHECK(bench.read("dividers").is_null());
  }
  bench.lay(0, 1);
  bench.press_button("step-off/" + bench.leg_id(0));
  for (const char* text : {"0", "x", "5000"}) {
    CAPTURE(text);
    bench.type("steps", text);
    CHECK(bench.field("steps").text == text);
    CHECK(bench.field("steps").error.size() > 10);
  }
  CHECK(bench.ask("step-off", Value::object({{"leg", "99999"}})).has("error"));
  CHECK(bench.ask("step-off", Value::object({{"steps", 1.5}})).has("error"));
  CHECK(bench.ask("open-dividers", Value::object({{"from", bench.mark_id(0)}, {"to", bench.mark_id(0)}})).has("error"));
  bench.done("lift-dividers");
  CHECK(bench.ask("lift-dividers").has("error"));
}

TEST_CASE("a point leaves its mark when the mark goes, and another sheet takes the dividers off") {
  Bench bench;
  bench.lay(0, 1);
  bench.done("remove-mark", Value::object({{"id", bench.mark_id(0)}}));
  CHECK(bench.read("dividers")["on"].items()->size() == 1);
  bench.done("new-sheet", Value::object({{"mid_lat_deg", 50}, {"mid_lon_deg", -4}, {"scale", 100000}, {"paper", "A4-upright"}}));
  CHECK(bench.read("dividers").is_null());
}
