#include "shell/commands_compass.h"

#include "core/boat/boat_actions.h"
#include "core/boat/swing_record.h"
#include "core/document/actions.h"
#include "shell/arguments.h"
#include "shell/words.h"
#include "shell/words_of_boats.h"

namespace fogsheet {
namespace {

Result<BoatKey> boat_argument(const Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "boat");
  if (!text) return text.problem();
  for (const std::unique_ptr<KeptBoat>& boat : session.boats.all())
    if (std::to_string(boat->key.value) == *text) return boat->key;
  return Problem{.fault = Fault::boat_unknown, .texts = {*text}};
}

Result<CompassId> compass_argument(const Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "id");
  if (!text) return text.problem();
  for (const Compass& compass : boat_in_hand(session)->now().compasses)
    if (std::to_string(compass.id.value) == *text) return compass.id;
  return Problem{.fault = Fault::compass_unknown, .texts = {*text}};
}

// -- boats

Value run_new_boat(Session& session, const Value& arguments) {
  Form& typed = session.compass_desk.typed;
  const Result<std::optional<std::string>> name = optional_text(arguments, "name"), compass = optional_text(arguments, "compass");
  for (const Result<std::optional<std::string>>* each : {&name, &compass})
    if (!*each) return refused(each->problem());
  Result<Boat> boat = made_boat(name->value_or(typed.text("new/name")), compass->value_or(typed.text("new/compass", words::usual_compass_name())));
  if (!boat) {
    typed.mark_wrong("new/name", words::sentence(boat.problem()));
    return refused(boat.problem());
  }
  for (const char* field : {"new/name", "new/compass"}) typed.drop(field);
  session.compass_desk.boat = session.boats.add(std::move(boat).value(), session.platform.now_ms());
  session.compass_desk.compass = {};
  settle_compass_desk(session);
  Value answer = done();
  answer.set("id", std::to_string(session.compass_desk.boat.value));
  return answer;
}

Value run_fill_new_boat(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  if (*field != "name" && *field != "compass") return refused({.fault = Fault::entry_unreadable, .texts = {"field", *field}});
  session.compass_desk.typed.keep("new/" + *field, *text);
  return done();
}

Value run_choose_boat(Session& session, const Value& arguments) {
  const Result<BoatKey> boat = boat_argument(session, arguments);
  if (!boat) return refused(boat.problem());
  session.compass_desk.boat = *boat;
  session.boats.find(*boat)->removed = false;  // choosing one that was struck out puts her back
  session.compass_desk.last_step_here = false;
  settle_compass_desk(session);
  return done();
}

Value run_strike_out_boat(Session& session, const Value&) {
  boat_in_hand(session)->removed = true;
  settle_compass_desk(session);
  return done();
}

// -- compasses

Value run_choose_compass(Session& session, const Value& arguments) {
  const Result<CompassId> compass = compass_argument(session, arguments);
  if (!compass) return refused(compass.problem());
  session.compass_desk.compass = *compass;
  return done();
}

Value run_add_compass(Session& session, const Value& arguments) {
  const Result<std::optional<std::string>> name = optional_text(arguments, "name"), kind = optional_text(arguments, "kind");
  for (const Result<std::optional<std::string>>* each : {&name, &kind})
    if (!*each) return refused(each->problem());
  const CompassKind wanted = kind->value_or("hand") == "steering" ? CompassKind::steering : CompassKind::hand_bearing;
  const Result<CompassId> added = acted_on_boat(session, [&](BoatHistory& history) { return add_compass(history, name->value_or(words::another_compass_name(wanted)), wanted); });
  if (added) session.compass_desk.compass = *added;
  return answer_of(added);
}

Value run_strike_out_compass(Session& session, const Value&) {
  const CompassId compass = compass_in_hand(session)->id;
  return answer_of(acted_on_boat(session, [&](BoatHistory& history) { return remove_compass(history, compass); }));
}

/// A field of the boat or of the compass in hand: "name", "compass", "kind".
Value run_type_boat(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  const Compass compass = *compass_in_hand(session);
  const Result<Done> changed = acted_on_boat(session, [&](BoatHistory& history) -> Result<Done> {
    if (*field == "name") return name_boat(history, *text);
    if (*field == "compass") return change_compass(history, compass.id, *text, compass.kind);
    if (*field == "kind") return change_compass(history, compass.id, compass.name, *text == "hand" ? CompassKind::hand_bearing : CompassKind::steering);
    return Problem{.fault = Fault::entry_unreadable, .texts = {"field", *field}};
  });
  const std::string key = typed_prefix(session.compass_desk) + *field;
  if (changed) session.compass_desk.typed.drop(key);
  else session.compass_desk.typed.keep(key, *text, words::sentence(changed.problem()));
  return answer_of(changed);
}

// -- the card that the sheet is steered by

Value take_card(Session& session, const Result<KeptCard>& card) {
  if (!card) return refused(card.problem());
  KeptCard taken = *card;
  if (session.document().compass) taken.in_links = session.document().compass->in_links;
  return answer_of(acted(session, [&] { return use_card(session.history(), taken); }));
}

/// That of the log's entry, or of the latest.
Value run_use_card(Session& session, const Value& arguments) {
  const KeptBoat& boat = *boat_in_hand(session);
  const Result<std::optional<std::string>> id = optional_text(arguments, "id");
  if (!id) return refused(id.problem());
  const Compass* compass = compass_in_hand(session);
  const LogEntry* entry = latest_card(*compass);
  if (*id) {
    entry = nullptr;
    for (const Compass& each : boat.now().compasses)
      for (const LogEntry& logged : each.log)
        if (std::to_string(logged.id.value) == **id) {
          entry = &logged;
          compass = &each;
        }
    if (!entry) return refused({.fault = Fault::log_entry_unknown, .texts = {**id}});
  }
  if (!entry) return refused({.fault = Fault::no_card});
  return take_card(session, card_from(boat.now(), *compass, *entry));
}

Value run_use_no_deviation(Session& session, const Value&) {
  const KeptBoat* boat = boat_in_hand(session);
  const Boat unnamed{.name = words::a_boat()};
  const Compass compass{.name = words::usual_compass_name()};
  return take_card(session, nought_card(boat ? boat->now() : unnamed, boat ? *compass_in_hand(session) : compass, session.platform.today()));
}

std::optional<Fault> no_card_here(const Session& session) { return session.document().compass ? std::nullopt : std::optional(Fault::no_card); }

Value run_leave_card_out(Session& session, const Value&) {
  return answer_of(acted(session, [&] { return drop_card(session.history()); }));
}

Value run_card_in_links(Session& session, const Value& arguments) {
  const Result<std::string> wanted = text_argument(arguments, "wanted");
  if (!wanted) return refused(wanted.problem());
  KeptCard card = *session.document().compass;
  card.in_links = *wanted != "no";
  return answer_of(acted(session, [&] { return use_card(session.history(), card); }));
}

Value run_card_step(Session& session, const Value& arguments) {
  const Result<std::string> step = text_argument(arguments, "step");
  if (!step) return refused(step.problem());
  session.compass_desk.card_step_deg = *step == "10" ? 10 : 15;
  return done();
}

}  // namespace

std::optional<Fault> no_boat(const Session& session) { return boat_in_hand(session) ? std::nullopt : std::optional(Fault::boat_unknown); }

std::vector<Command> compass_commands() {
  return {
      {"new-boat", "Enter a boat", "", {{"name", "name", true}, {"compass", "name of her compass", true}}, nullptr, run_new_boat},
      {"fill-new-boat", "Type a part of a new boat", "", {{"field", "name or compass"}, {"text", "as typed"}}, nullptr, run_fill_new_boat},
      {"choose-boat", "Take a boat in hand", "", {{"boat", "key"}}, nullptr, run_choose_boat},
      {"strike-out-boat", "Strike the boat out", "", {}, no_boat, run_strike_out_boat},
      {"type-boat", "Type a part of the boat", "", {{"field", "name, compass or kind"}, {"text", "as typed; kind: steering or hand"}}, no_boat, run_type_boat},
      {"choose-compass", "Take a compass in hand", "", {{"id", "id of a compass"}}, no_boat, run_choose_compass},
      {"add-compass", "Enter another compass", "", {{"name", "name", true}, {"kind", "steering or hand", true}}, no_boat, run_add_compass},
      {"strike-out-compass", "Strike the compass out", "", {}, no_boat, run_strike_out_compass},
      {"use-card", "Steer by this card", "", {{"id", "id of a log entry; the latest card", true}}, no_boat, run_use_card},
      {"use-no-deviation", "There is no deviation", "", {}, nullptr, run_use_no_deviation},
      {"leave-card-out", "Leave the card out", "", {}, no_card_here, run_leave_card_out},
      {"card-in-links", "The card in links", "", {{"wanted", "yes or no"}}, no_card_here, run_card_in_links},
      {"card-step", "Headings of the card", "", {{"step", "10 or 15 deg"}}, nullptr, run_card_step},
  };
}

}  // namespace fogsheet
