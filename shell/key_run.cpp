#include "shell/key_run.h"

#include <utility>

#include "shell/direction.h"
#include "shell/dividers.h"
#include "shell/things.h"
#include "shell/tools/target.h"
#include "shell/words_of_things.h"

namespace fogsheet {
namespace {

/// Where a point comes to lie, and on which mark.
FirstEnd caught(const Session& session, std::optional<MarkId>& free_of_mark, SheetPoint at) {
  std::optional<MarkId> mark = mark_to_snap_to(session, session.desk.camera.to_screen(at));
  if (mark && mark == free_of_mark) mark.reset();
  else free_of_mark.reset();
  return {mark ? place_of(session, *mark) : at, mark};
}

void move_end(Session& session, KeyRun& run, EdgeEnd end, SheetVector by) {
  const StraightEdge& edge = *session.desk.edge;
  const bool is_a = end == EdgeEnd::a;
  std::optional<MarkId>& free_of_mark = run.free_of_marks[0];
  if (const std::optional<MarkId>& on = is_a ? edge.on_a : edge.on_b) free_of_mark = on;
  const FirstEnd to = caught(session, free_of_mark, (is_a ? edge.a : edge.b) + by);
  session.set_edge(with_end_at(edge, end, to.at, to.on));
}

void slide_body(Session& session, KeyRun& run, SheetVector by) {
  const StraightEdge& edge = *session.desk.edge;
  if (edge.settled_on) run.free_of_rose = edge.settled_on;
  StraightEdge moved = slid(edge, by);
  const RoseInReach* rose = rose_in_reach(moved, session.facts().roses, settle_reach_mm(session));
  if (rose && rose->id != run.free_of_rose) {
    moved = slid_onto(moved, rose->centre);
    moved.settled_on = rose->id;
  }
  if (!rose) run.free_of_rose.reset();
  session.set_edge(slid_to_mark(session, moved));
}

/// Both points by one vector; the first that is caught takes the other along.
void carry_dividers(const Session& session, KeyRun& run, DividersPlace& lie, SheetVector by) {
  const Dividers was = lie.points;
  std::optional<MarkId>* const on[] = {&lie.on_a, &lie.on_b};
  // Leaving one mark they leave the other's too, which the second point may have come back to.
  if (lie.on_a || lie.on_b) run.free_of_marks = {mark_near(session, session.desk.camera.to_screen(was.a)), mark_near(session, session.desk.camera.to_screen(was.b))};
  lie.on_a.reset();
  lie.on_b.reset();
  for (std::size_t i = 0; i < 2; ++i) {
    const SheetPoint point = i == 0 ? was.a : was.b;
    const FirstEnd to = caught(session, run.free_of_marks[i], point + by);
    if (!to.on) continue;
    by = to.at - point;
    *on[i] = to.on;
    break;
  }
  lie.points = {was.a + by, was.b + by};
}

void move_dividers(Session& session, KeyRun& run, DividersPart part, SheetVector by) {
  DividersOnSheet now{.lie = session.desk.dividers->lie};
  DividersPlace& lie = now.lie;
  if (part == DividersPart::hinge) {
    carry_dividers(session, run, lie, by);
  } else {
    const bool is_a = part == DividersPart::leg_a;
    std::optional<MarkId>& on = is_a ? lie.on_a : lie.on_b;
    std::optional<MarkId>& free_of_mark = run.free_of_marks[0];
    if (on) free_of_mark = on;
    const FirstEnd to = caught(session, free_of_mark, (is_a ? lie.points.a : lie.points.b) + by);
    (is_a ? lie.points.a : lie.points.b) = to.at;
    on = to.on;
    if (opening_mm(lie.points) == 0) return;
  }
  session.desk.dividers = now;
}

}  // namespace

bool nudge(Session& session, const Thing& thing, ScreenPoint by_px) {
  if (session.run && session.run->thing != thing) end_run(session);
  const std::optional<SheetPoint> hold = hold_of(session, thing);
  if (!hold) return false;
  const Desk& desk = session.desk;
  if (!session.run) session.run = KeyRun{.thing = thing, .at = *hold, .before = {desk.tool, desk.edge, desk.laid_on, desk.direction, desk.dividers}, .free_of_marks = {}, .free_of_rose = {}};
  KeyRun& run = *session.run;
  const SheetVector by = desk.camera.to_sheet(by_px) - desk.camera.to_sheet(ScreenPoint{});
  if (const auto* part = std::get_if<EdgePart>(&thing)) {
    if (*part == EdgePart::body) slide_body(session, run, by);
    else move_end(session, run, *part == EdgePart::end_a ? EdgeEnd::a : EdgeEnd::b, by);
    session.desk.tool = ToolId::straight_edge;
  } else if (const auto* leg = std::get_if<DividersPart>(&thing)) {
    move_dividers(session, run, *leg, by);
    session.desk.tool = ToolId::dividers;
  }
  const bool in_document = !std::holds_alternative<EdgePart>(thing) && !std::holds_alternative<DividersPart>(thing);
  run.at = in_document ? run.at + by : *hold_of(session, thing);
  session.bring_into_view(run.at);
  session.touch();
  return true;
}

void end_run(Session& session) {
  const std::optional<KeyRun> run = std::exchange(session.run, std::nullopt);
  if (!run || !place_among_things(session, run->thing)) return;
  const bool in_document = !std::holds_alternative<EdgePart>(run->thing) && !std::holds_alternative<DividersPart>(run->thing);
  session.touch();
  if (in_document && !move_thing(session, run->thing, run->at)) return;
  session.read_aloud(words::thing(session, run->thing));
}

bool cancel_run(Session& session) {
  const std::optional<KeyRun> run = std::exchange(session.run, std::nullopt);
  if (!run) return false;
  session.desk.tool = run->before.tool;
  session.desk.edge = run->before.edge;
  session.desk.laid_on = run->before.laid_on;
  session.desk.direction = run->before.direction;
  session.desk.dividers = run->before.dividers;
  session.touch();
  session.read_aloud(words::thing(session, run->thing));
  return true;
}

}  // namespace fogsheet
