// The sheet gives way to a slip that would lie over what is in hand, by as little as brings it out.
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

constexpr const char* k_place = "sheet/44°10.0'N 031°20.0'W";

Viewport covered_by(double right_px) { return {.width_px = 1180, .height_px = 742, .covered_right_px = right_px}; }

}  // namespace

TEST_CASE("a slip that comes over the instrument shifts the sheet, one that leaves it free does not") {
  Tabletop table;
  table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}}));
  const ScreenPoint before = table.middle(k_place);
  table.app.set_viewport(covered_by(100));
  CHECK(table.middle(k_place) == before);
  table.app.set_viewport(covered_by(700));
  CHECK(table.middle(k_place).x_px < before.x_px);
  CHECK(table.middle("edge/reading").x_px < 480);
}

TEST_CASE("after a slip that had all the room the next one is measured before anything is shifted") {
  Tabletop table;
  table.done("lay-edge", Value::object({{"from", table.mark_id(0)}, {"to", table.mark_id(1)}}));
  table.done("new-boat", Value::object({{"name", "Pipit"}}));
  table.done("begin-entry", Value::object({{"kind", "swing"}}));
  table.app.set_viewport(covered_by(1170));
  table.done("take-edge");
  table.app.set_viewport(covered_by(308));
  const ScreenPoint after = table.middle(k_place);
  CHECK(table.middle("edge/reading").x_px < 1180 - 308);
  // By as little as brings it out: where it was free it stays.
  Tabletop beside;
  beside.done("lay-edge", Value::object({{"from", beside.mark_id(0)}, {"to", beside.mark_id(1)}}));
  beside.app.set_viewport(covered_by(308));
  CHECK(after == beside.middle(k_place));
}
