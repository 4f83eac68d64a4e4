// Commands on the passages of the sheet.
#include "shell/commands_passage.h"

#include "core/document/actions.h"
#include "shell/arguments.h"
#include "shell/form_fields.h"
#include "shell/panels/passage_parts.h"
#include "shell/passage_entries.h"
#include "shell/stream_questions.h"
#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

std::optional<Fault> no_leg(const Session& session) { return session.document().legs.empty() ? std::optional(Fault::no_legs_for_passage) : std::nullopt; }

/// Of the sheet's day, by what the device's clock will show at its noon: summer time may begin before then.
Passage blank_passage(const Session& session) {
  const Date day = session.document().sheet.date;
  const Instant noon = instant_of(day, {.minutes = 12 * 60}, {});
  return {.date = day, .zone = {.minutes_east = session.platform.minutes_east(noon.seconds * 1'000)}};
}

Value run_make_passage(Session& session, const Value&) {
  const Result<PassageId> made = acted(session, [&] { return make_passage(session.history(), blank_passage(session)); });
  if (!made) return refused(made.problem());
  session.desk.passage_leg = 0;
  session.slip = SlipId::passage_details;
  return answer_of(made);
}

Value run_duplicate_passage(Session& session, const Value&) {
  const Passage& passage = *session.passage();
  const std::string name = words::copy_of(words::passage_title(session.document(), passage));
  return answer_of(acted(session, [&] { return duplicate_passage(session.history(), passage.id, name); }));
}

Result<PassageId> passage_argument(const Session& session, const Value& arguments) {
  const Result<std::string> id = text_argument(arguments, "id");
  if (!id) return id.problem();
  for (const Passage& passage : session.document().passages->all)
    if (std::to_string(passage.id.value) == *id) return passage.id;
  return Problem{.fault = Fault::passage_unknown, .texts = {*id}};
}

Value run_choose_passage(Session& session, const Value& arguments) {
  const Result<PassageId> passage = passage_argument(session, arguments);
  if (!passage) return refused(passage.problem());
  session.desk.passage_leg = 0;
  return answer_of(acted(session, [&] { return choose_passage(session.history(), *passage); }));
}

Value run_strike_out_passage(Session& session, const Value&) {
  const PassageId passage = session.passage()->id;
  return answer_of(acted(session, [&] { return remove_passage(session.history(), passage); }));
}

/// What can't be taken stays in its field with the reason, and the passage as it was.
Value run_type_passage(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  const Passage& standing = *session.passage();
  const std::string key = entry_prefix(standing.id) + *field;
  if (*text == field_text(standing, *field)) {
    session.desk.entries.drop(key);
    return done();
  }
  const Result<Passage> next = with_field(session.document(), standing, *field, *text);
  if (!next) {
    session.desk.entries.keep(key, *text, words::sentence(next.problem()));
    return refused(next.problem());
  }
  session.desk.entries.drop(key);
  if (*next == standing) return done();
  return answer_of(acted(session, [&] { return change_passage(session.history(), *next, words::changed_part(standing, *next)); }));
}

Result<std::size_t> leg_place(const Session& session, const Value& arguments) {
  const Result<std::size_t> place = place_argument(arguments, "leg");
  if (!place) return place;
  const std::size_t legs = session.passage()->legs.size();
  if (*place < legs) return place;
  return Problem{.fault = Fault::number_out_of_range, .texts = {"leg"}, .numbers = {static_cast<double>(*place), 0, static_cast<double>(legs) - 1}};
}

Value run_open_passage_leg(Session& session, const Value& arguments) {
  const Result<std::size_t> place = leg_place(session, arguments);
  if (!place) return refused(place.problem());
  session.desk.passage_leg = *place;
  session.slip = SlipId::passage_leg;
  return done();
}

Value run_put_leg_in(Session& session, const Value& arguments) {
  const Result<LegId> leg = leg_argument(session.document(), arguments, "id");
  if (!leg) return refused(leg.problem());
  const PassageId passage = session.passage()->id;
  return answer_of(acted(session, [&] { return put_leg_in(session.history(), passage, *leg); }));
}

Value run_leave_leg_out(Session& session, const Value& arguments) {
  const Result<std::size_t> place = leg_place(session, arguments);
  if (!place) return refused(place.problem());
  const PassageId passage = session.passage()->id;
  const Result<Done> left = acted(session, [&] { return leave_leg_out(session.history(), passage, *place); });
  if (left && session.slip == SlipId::passage_leg) session.slip = SlipId::passage;
  return answer_of(left);
}

Value run_way_home(Session& session, const Value&) {
  session.desk.way_home = !session.desk.way_home;
  return done();
}

std::optional<Fault> no_way_home(const Session& session) {
  const Passage* passage = session.passage();
  return passage && passage->home_time ? std::nullopt : std::optional(Fault::time_not_entered);
}

/// What is printed stands on the page already, once its slip is open.
Value run_print_passage_card(Session& session, const Value& arguments) {
  const Result<std::optional<std::string>> size = optional_text(arguments, "size");
  if (!size) return refused(size.problem());
  session.desk.small_card = size->value_or("page") == "small";
  session.slip = SlipId::passage;
  session.platform.print_page();
  return done();
}

// -- the stream's triangle on its own

Value run_ask_stream(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  if (*field != "which" && !is_field(k_question_fields, *field)) return refused({.fault = Fault::entry_unreadable, .texts = {"field", *field}});
  session.desk.entries.keep("question/" + *field, *text);
  const std::optional<Problem> fault = *field == "which" ? std::nullopt : question_fault(session, *field);
  return fault ? refused(*fault) : done();
}

/// The place that the question in hand gave, as a mark of its own.
Value run_mark_estimated(Session& session, const Value&) {
  const StreamAnswer found = answer(session);
  if (!found.place) return refused({.fault = Fault::number_missing, .texts = {"estimated position"}});
  const NewMark mark{.name = words::unused_name(session.document(), MarkKind::other), .lat_deg = found.place->lat_deg, .lon_deg = found.place->lon_deg, .kind = MarkKind::other};
  return answer_of(acted(session, [&] { return add_mark(session.history(), mark); }));
}

Value run_use_found_stream(Session& session, const Value&) {
  const StreamAnswer found = answer(session);
  if (!found.stream) return refused({.fault = Fault::number_missing, .texts = {"stream"}});
  const Passage& standing = *session.passage();
  Passage next = standing;
  next.stream = {.entry = StreamEntry::steady, .steady = *found.stream, .hours = next.stream.hours, .source = "found from a fix"};
  return answer_of(acted(session, [&] { return change_passage(session.history(), next, words::changed_part(standing, next)); }));
}

}  // namespace

std::optional<Fault> no_passage(const Session& session) { return session.passage() ? std::nullopt : std::optional(Fault::passage_unknown); }

std::vector<Command> passage_commands() {
  return {
      {"make-passage", "A passage of the sheet's legs", "", {}, no_leg, run_make_passage},
      {"duplicate-passage", "Another way to do it", "", {}, no_passage, run_duplicate_passage},
      {"choose-passage", "Take a passage in hand", "", {{"id", "id of a passage"}}, no_passage, run_choose_passage},
      {"strike-out-passage", "Strike the passage out", "", {}, no_passage, run_strike_out_passage},
      {"type-passage", "Type a part of the passage", "", {{"field", "speed, time, date, zone, wind, leeway, stream/kind, stream/set, stream/drift, leg/0/look-for ..."}, {"text", "as typed"}}, no_passage, run_type_passage},
      {"open-passage-leg", "A leg of the passage", "", {{"leg", "place in the passage, from 0"}}, no_passage, run_open_passage_leg},
      {"put-leg-in", "Put a leg at the passage's end", "", {{"id", "id of a leg"}}, no_passage, run_put_leg_in},
      {"leave-leg-out", "Leave a leg out of the passage", "", {{"leg", "place in the passage, from 0"}}, no_passage, run_leave_leg_out},
      {"way-home", "The way home, or out", "", {}, no_way_home, run_way_home},
      {"ask-stream", "Ask of the stream's triangle", "", {{"field", "which, track, heading, speed, set, drift, minutes, from, fix, distance"}, {"text", "as typed"}}, nullptr, run_ask_stream},
      {"mark-estimated", "Mark the estimated position", "", {}, nullptr, run_mark_estimated},
      {"use-found-stream", "Plan with the stream found", "", {}, no_passage, run_use_found_stream},
      {"print-passage-card", "Print the passage card", "", {{"size", "page (A4 or Letter) or small (A6)", true}}, no_passage, run_print_passage_card},
  };
}

}  // namespace fogsheet
