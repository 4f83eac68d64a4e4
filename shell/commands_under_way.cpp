// Commands of the way as it is run: leaving, the ends of legs, going back, the deck log.
#include <tuple>
#include <utility>

#include "core/base/utf8.h"
#include "core/document/actions.h"
#include "shell/arguments.h"
#include "shell/commands_passage.h"
#include "shell/form_fields.h"
#include "shell/typed_quantity.h"
#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

constexpr std::string_view k_deck_fields[] = {"time", "log", "note"};

std::string deck_key(std::string_view field) { return "deck/" + std::string(field); }

/// What was given as an argument, else what was typed on the slip.
Result<std::string> given(const Session& session, const Value& arguments, const char* name) {
  const Result<std::optional<std::string>> text = optional_text(arguments, name);
  if (!text) return text.problem();
  return text->value_or(session.desk.entries.text(deck_key(name)));
}

/// Of a time that is typed, which is hardly still to come: today, else yesterday. Where that lies before the line before, it goes on
/// from there, past midnight.
Date day_of(ClockTime typed, const LocalTime& now, const std::vector<DeckEntry>& log) {
  constexpr int k_half_a_day = 12 * 60, k_an_hour = 60;
  const auto days_on = [](Date date, int days) { return date_of_unix_day(unix_day(date) + days); };
  const Date day = typed.minutes > now.time.minutes + (log.empty() ? k_half_a_day : k_an_hour) ? days_on(now.date, -1) : now.date;
  if (log.empty()) return day;
  const DeckEntry& last = log.back();
  if (std::tie(day, typed) >= std::tie(last.date, last.time)) return day;
  return typed.minutes < last.time.minutes - k_half_a_day ? days_on(last.date, 1) : last.date;
}

/// A line of the deck log with its time, log reading and note; what can't be taken stays in its field with the reason.
Result<DeckEntry> entry_of(Session& session, const Value& arguments, DeckEntryKind kind) {
  const Passage& passage = *session.passage();
  const LocalTime now = session.now_in(passage);
  DeckEntry entry{.kind = kind, .date = now.date, .time = now.time};
  const Result<std::string> time = given(session, arguments, "time"), log = given(session, arguments, "log"), note = given(session, arguments, "note");
  for (const Result<std::string>* each : {&time, &log, &note})
    if (!*each) return each->problem();
  if (!trimmed(*time).empty()) {
    const Result<ClockTime> typed = parse_clock_time(*time);
    if (!typed) {
      session.desk.entries.keep(deck_key("time"), *time, words::sentence(typed.problem()));
      return typed.problem();
    }
    entry.time = *typed;
    entry.date = day_of(*typed, now, passage.deck_log);
  }
  if (!trimmed(*log).empty()) {
    const Result<double> typed = typed_nm(*log);
    if (!typed) {
      session.desk.entries.keep(deck_key("log"), *log, words::sentence(typed.problem()));
      return typed.problem();
    }
    entry.log_nm = *typed;
  }
  entry.note = *note;
  return entry;
}

Value written(Session& session, const Result<DeckEntry>& entry) {
  if (!entry) return refused(entry.problem());
  const PassageId passage = session.passage()->id;
  const Result<Done> wrote = acted(session, [&] { return write_deck_log(session.history(), passage, *entry); });
  if (!wrote) {
    if (wrote.problem().fault == Fault::deck_time_before) session.desk.entries.keep(deck_key("time"), session.desk.entries.text(deck_key("time"), print_clock_time(entry->time)), words::sentence(wrote.problem()));
    return refused(wrote.problem());
  }
  for (const std::string_view field : k_deck_fields) session.desk.entries.drop(deck_key(field));
  return done();
}

Value run_depart(Session& session, const Value& arguments) { return written(session, entry_of(session, arguments, DeckEntryKind::departed)); }

/// One of the three ends of a leg.
Value run_end_leg(Session& session, const Value& arguments) {
  const Result<std::string> how = text_argument(arguments, "how");
  if (!how) return refused(how.problem());
  const std::pair<const char*, DeckEntryKind> ends[] = {{"seen", DeckEntryKind::seen}, {"not-seen", DeckEntryKind::not_seen}, {"passed", DeckEntryKind::passed}};
  for (const auto& [name, kind] : ends) {
    if (*how != name) continue;
    Result<DeckEntry> entry = entry_of(session, arguments, kind);
    if (!entry) return refused(entry.problem());
    DeckEntry ended = *entry;
    const Passage& passage = *session.passage();
    const std::size_t leg = under_way(passage).leg;
    if (kind == DeckEntryKind::seen && leg < passage.legs.size() && passage.legs[leg].leave) ended.side = passage.legs[leg].leave->side;
    return written(session, ended);
  }
  return refused({.fault = Fault::entry_unreadable, .texts = {"end", *how}});
}

Value run_back_a_leg(Session& session, const Value&) {
  const PassageId passage = session.passage()->id;
  return answer_of(acted(session, [&] { return take_back_turn(session.history(), passage); }));
}

/// Of what was seen last: side and distance.
Value run_type_seen(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  Passage next = *session.passage();
  DeckEntry* seen = nullptr;
  for (DeckEntry& entry : next.deck_log)
    if (entry.kind == DeckEntryKind::seen) seen = &entry;
  if (!seen) return refused({.fault = Fault::not_under_way});
  if (*field == "side") seen->side = *text == "port" ? Side::port : Side::starboard;
  else if (trimmed(*text).empty()) seen->distance_nm.reset();
  else {
    const Result<double> distance = typed_nm(*text);
    if (!distance) return refused(distance.problem());
    seen->distance_nm = *distance;
  }
  if (next == *session.passage()) return done();
  return answer_of(acted(session, [&] { return change_passage(session.history(), next, words::changed_part(*session.passage(), next)); }));
}

Value run_type_deck(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  if (!is_field(k_deck_fields, *field)) return refused({.fault = Fault::entry_unreadable, .texts = {"field", *field}});
  session.desk.entries.keep(deck_key(*field), *text);
  return done();
}

Value run_write_deck_log(Session& session, const Value& arguments) { return written(session, entry_of(session, arguments, DeckEntryKind::reading)); }

Value run_strike_out_deck_line(Session& session, const Value& arguments) {
  const Result<std::size_t> line = place_argument(arguments, "line");
  if (!line) return refused(line.problem());
  const PassageId passage = session.passage()->id;
  return answer_of(acted(session, [&] { return strike_out_deck_line(session.history(), passage, *line); }));
}

}  // namespace

std::vector<Command> under_way_commands() {
  const Argument time{"time", "HHMM in the passage's zone; now", true}, log{"log", "nm", true}, note{"note", "as typed", true};
  return {
      {"depart", "We leave", "", {time, log, note}, no_passage, run_depart},
      {"end-leg", "The leg has ended", "", {{"how", "seen, not-seen or passed (early, late)"}, time, log, note}, no_passage, run_end_leg},
      {"back-a-leg", "Back to the leg before", "", {}, no_passage, run_back_a_leg},
      {"type-seen", "Where it was seen", "", {{"field", "side or distance"}, {"text", "as typed"}}, no_passage, run_type_seen},
      {"type-deck", "Type a part of the deck log's line", "", {{"field", "time, log or note"}, {"text", "as typed"}}, no_passage, run_type_deck},
      {"write-deck-log", "Write in the deck log", "", {time, log, note}, no_passage, run_write_deck_log},
      {"strike-out-deck-line", "Strike out a line of the deck log", "", {{"line", "place in the list, from 0"}}, no_passage, run_strike_out_deck_line},
  };
}

}  // namespace fogsheet
