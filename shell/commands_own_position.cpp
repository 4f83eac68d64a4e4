#include "shell/commands_own_position.h"

#include "core/document/actions.h"
#include "shell/arguments.h"
#include "shell/own_position_on_sheet.h"
#include "shell/tools/no_tool.h"
#include "shell/words_of_own_position.h"

namespace fogsheet {
namespace {

std::optional<Fault> no_own_position(const Session& session) {
  if (session.own_position.is_here()) return std::nullopt;
  return Fault::no_own_position;
}

Value run_ask(Session& session, const Value&) {
  session.own_position = {.state = OwnPositionState::asked};
  session.platform.follow_position(true);
  return done();
}

Value run_let_go(Session& session, const Value&) {
  session.own_position = {};
  session.platform.follow_position(false);
  return done();
}

Value run_mark(Session& session, const Value&) {
  const OwnPosition& own = session.own_position;
  const NewMark wanted{.name = words::own_position_mark(time_found(session)), .lat_deg = own.at.lat_deg, .lon_deg = own.at.lon_deg, .kind = MarkKind::other};
  const Result<MarkId> made = acted(session, [&] { return add_mark(session.history(), wanted); });
  if (made) select_mark(session, *made);
  return answer_of(made);
}

Value run_show(Session& session, const Value&) {
  const std::optional<SheetPoint> at = own_position_on_sheet(session);
  if (!at) return refused({.fault = Fault::place_off_sheet, .texts = {words::own_position_title()}});
  session.bring_into_view(*at);
  return done();
}

}  // namespace

std::vector<Command> own_position_commands() {
  return {
      {"ask-own-position", "Ask the device where it is", "", {}, nullptr, run_ask},
      {"let-own-position-go", "Let the device's position go", "", {}, nullptr, run_let_go},
      {"mark-own-position", "Make a mark where the device is", "", {}, no_own_position, run_mark},
      {"show-own-position", "Bring the device's position into view", "", {}, no_own_position, run_show},
  };
}

}  // namespace fogsheet
