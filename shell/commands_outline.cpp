#include "shell/commands_outline.h"

#include <algorithm>

#include "shell/arguments.h"
#include "shell/things.h"
#include "shell/words.h"
#include "shell/words_of_things.h"

namespace fogsheet {
namespace {

Result<Thing> thing_argument(const Session& session, const Value& arguments) {
  const Result<std::string> name = text_argument(arguments, "thing");
  if (!name) return name.problem();
  const std::optional<Thing> thing = thing_named(*name);
  if (!thing || !place_among_things(session, *thing)) return Problem{.fault = Fault::entry_unreadable, .texts = {"thing", *name}};
  return *thing;
}

Value run_outline(Session& session, const Value&) {
  session.outline.open = !session.outline.open;
  if (!session.outline.open) session.in_focus.reset();
  else focus_on(session, thing_under_keys(session).value_or(thing_at(session, first_shown(session))));
  return done();
}

Value run_page_outline(Session& session, const Value& arguments) {
  const Result<double> from = number_argument(arguments, "from");
  if (!from) return refused(from.problem());
  page_outline(session, static_cast<std::size_t>(std::clamp(*from, 0.0, static_cast<double>(thing_count(session) - 1))));
  return done();
}

Value run_focus_thing(Session& session, const Value& arguments) {
  const Result<Thing> thing = thing_argument(session, arguments);
  if (!thing) return refused(thing.problem());
  focus_on(session, *thing);
  return done();
}

Value run_press_thing(Session& session, const Value& arguments) {
  const Result<Thing> thing = thing_argument(session, arguments);
  if (!thing) return refused(thing.problem());
  session.message = {};
  press_thing(session, *thing);
  return done();
}

Value run_leave_things(Session& session, const Value&) {
  session.in_focus.reset();
  return done();
}

Value run_nudge_thing(Session& session, const Value& arguments) {
  const Result<Thing> thing = thing_argument(session, arguments);
  if (!thing) return refused(thing.problem());
  const Result<double> right = number_argument(arguments, "right_px"), down = number_argument(arguments, "down_px");
  for (const Result<double>* each : {&right, &down})
    if (!*each) return refused(each->problem());
  if (!nudge(session, *thing, {*right, *down})) return refused({.fault = Fault::entry_unreadable, .texts = {"move", words::thing(session, *thing)}});
  end_run(session);
  return done();
}

Value run_rub_out_thing(Session& session, const Value& arguments) {
  const Result<Thing> thing = thing_argument(session, arguments);
  if (!thing) return refused(thing.problem());
  rub_out_under_keys(session, *thing);
  return done();
}

}  // namespace

void focus_on(Session& session, const Thing& thing) {
  const std::size_t place = *place_among_things(session, thing), from = first_shown(session);
  session.outline.from = place < from || place >= from + k_things_shown ? place / k_things_shown * k_things_shown : from;
  session.in_focus = thing;
  if (const std::optional<SheetPoint> at = hold_of(session, thing)) session.bring_into_view(*at);
  session.touch();
}

void page_outline(Session& session, std::size_t from) {
  session.in_focus.reset();  // what the keys were on holds nothing back
  session.outline.from = from;
  focus_on(session, thing_at(session, from));
}

void rub_out_under_keys(Session& session, const Thing& thing) {
  const std::size_t place = place_among_things(session, thing).value_or(0);
  rub_out(session, thing);
  if (place_among_things(session, thing)) return;  // it could not be
  if (session.outline.open) focus_on(session, thing_at(session, std::min(place, thing_count(session) - 1)));
  else session.in_focus.reset();
}

std::vector<Command> outline_commands() {
  return {
      {"outline", "Open or shut the list of what is on the sheet", "i", {}, nullptr, run_outline},
      {"page-outline", "Show another part of the list", "", {{"from", "from 0"}}, nullptr, run_page_outline},
      {"focus-thing", "Put the keys on a thing of the sheet", "", {{"thing", "sheet, edge/body, edge/end-a, edge/end-b, dividers/leg-a, dividers/leg-b, dividers/hinge, or mark, leg, rose, note and /id"}}, nullptr, run_focus_thing},
      {"press-thing", "Press a thing of the sheet with the tool in hand", "", {{"thing", "as focus-thing has it"}}, nullptr, run_press_thing},
      {"leave-things", "Take the keys off it", "", {}, nullptr, run_leave_things},
      {"nudge-thing", "Move a thing by pixels", "", {{"thing", "as focus-thing has it"}, {"right_px", "CSS px"}, {"down_px", "CSS px"}}, nullptr, run_nudge_thing},
      {"rub-out-thing", "Rub a thing out", "", {{"thing", "as focus-thing has it"}}, nullptr, run_rub_out_thing},
  };
}

}  // namespace fogsheet
