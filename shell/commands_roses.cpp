#include "shell/commands_roses.h"

#include "core/base/quantity_text.h"
#include "core/document/actions.h"
#include "core/positions/position_text.h"
#include "shell/arguments.h"
#include "shell/form_fields.h"
#include "shell/tools/no_tool.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

Value answer(const Result<Done>& result) { return result.ok() ? done() : refused(result.problem()); }

Result<Position> place_argument_of(const Value& arguments) {
  const Result<double> lat = number_argument(arguments, "lat_deg"), lon = number_argument(arguments, "lon_deg");
  for (const Result<double>* each : {&lat, &lon})
    if (!*each) return each->problem();
  return Position{*lat, *lon};
}

Position middle_of_view(const Session& session) {
  const FreeArea area = session.free_area();
  return session.facts().projection->to_position(session.desk.camera.to_sheet({area.width_px / 2, area.height_px / 2}));
}

Result<NoteId> note_argument(const Document& document, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "id");
  if (!text) return text.problem();
  for (const TextNote& note : document.text_notes)
    if (std::to_string(note.id.value) == *text) return note.id;
  return Problem{.fault = Fault::note_unknown, .texts = {*text}};
}

// -- roses

Value run_add_rose(Session& session, const Value& arguments) {
  Position at = middle_of_view(session);
  if (arguments.has("lat_deg")) {
    const Result<Position> given = place_argument_of(arguments);
    if (!given) return refused(given.problem());
    at = *given;
  }
  double radius_mm = corner_rose(*session.facts().projection, {}).radius_mm;
  if (arguments.has("radius_mm")) {
    const Result<double> given = number_argument(arguments, "radius_mm");
    if (!given) return refused(given.problem());
    radius_mm = *given;
  }
  const Result<RoseId> made = acted(session, [&] { return add_rose(session.history(), at.lat_deg, at.lon_deg, radius_mm); });
  if (!made) return refused(made.problem());
  select_rose(session, *made);
  session.desk.tool = ToolId::rose;
  return done_with(made->value);
}

/// Runs a change of the rose named by argument "id".
template <class Wanted>
Value changed_rose(Session& session, const Value& arguments, Wanted wanted) {
  const Result<RoseId> rose = rose_argument(session.document(), arguments, "id");
  if (!rose) return refused(rose.problem());
  const Result<RoseChange> change = wanted();
  if (!change) return refused(change.problem());
  return answer(acted(session, [&] { return change_rose(session.history(), *rose, *change); }));
}

Value run_move_rose(Session& session, const Value& arguments) {
  return changed_rose(session, arguments, [&]() -> Result<RoseChange> {
    const Result<Position> at = place_argument_of(arguments);
    if (!at) return at.problem();
    return RoseChange{.at = *at};
  });
}

Value run_size_rose(Session& session, const Value& arguments) {
  return changed_rose(session, arguments, [&]() -> Result<RoseChange> {
    const Result<double> radius_mm = number_argument(arguments, "radius_mm");
    if (!radius_mm) return radius_mm.problem();
    return RoseChange{.radius_mm = *radius_mm};
  });
}

/// Yes or no: as scripts say it, and as a choice of a panel sends it.
Value run_set_rose_own_place(Session& session, const Value& arguments) {
  return changed_rose(session, arguments, [&]() -> Result<RoseChange> {
    if (const bool* flag = arguments["own_place"].flag()) return RoseChange{.own_place = *flag};
    const Result<std::string> text = text_argument(arguments, "own_place");
    if (!text) return text.problem();
    return RoseChange{.own_place = *text == "own"};
  });
}

Value run_remove_rose(Session& session, const Value& arguments) {
  const Result<RoseId> rose = rose_argument(session.document(), arguments, "id");
  if (!rose) return refused(rose.problem());
  const Result<Done> removed = acted(session, [&] { return remove_rose(session.history(), *rose); });
  if (removed.ok() && session.document().roses.empty()) session.say(words::no_rose_left());
  return answer(removed);
}

Value run_select_rose(Session& session, const Value& arguments) {
  const Result<RoseId> rose = rose_argument(session.document(), arguments, "id");
  if (!rose) return refused(rose.problem());
  select_rose(session, *rose);
  session.desk.tool = ToolId::rose;
  return done();
}

Result<RoseChange> typed_rose_change(const std::string& field, const std::string& text) {
  if (field == "place") {
    const Result<Position> at = parse_position(text);
    if (!at) return at.problem();
    return RoseChange{.at = *at};
  }
  if (field != "radius") return Problem{.fault = Fault::entry_unreadable, .texts = {"field", field}};
  const Result<double> radius_mm = parse_plain_number("radius", text, k_least_rose_radius_mm, k_most_rose_radius_mm);
  if (!radius_mm) return radius_mm.problem();
  return RoseChange{.radius_mm = *radius_mm};
}

Value run_type_rose(Session& session, const Value& arguments) {
  const Result<RoseId> rose = rose_argument(session.document(), arguments, "id");
  if (!rose) return refused(rose.problem());
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  const std::string key = entry_prefix(*rose) + *field;
  const Result<RoseChange> change = typed_rose_change(*field, *text);
  const Result<Done> changed = change ? acted(session, [&] { return change_rose(session.history(), *rose, *change); }) : Result<Done>(change.problem());
  if (!changed) {
    session.desk.entries.keep(key, *text, words::sentence(changed.problem()));
    return refused(changed.problem());
  }
  session.desk.entries.drop(key);
  return done();
}

// -- words on the sheet

Value run_add_note(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  const Result<Position> at = place_argument_of(arguments);
  if (!at) return refused(at.problem());
  const Result<NoteId> made = acted(session, [&] { return add_text_note(session.history(), at->lat_deg, at->lon_deg, *text); });
  if (!made) return refused(made.problem());
  return done_with(made->value);
}

Value run_change_note(Session& session, const Value& arguments) {
  const Result<NoteId> note = note_argument(session.document(), arguments);
  if (!note) return refused(note.problem());
  TextNoteChange change;
  if (const std::string* text = arguments["text"].text()) change.text = *text;
  if (arguments.has("lat_deg")) {
    const Result<Position> at = place_argument_of(arguments);
    if (!at) return refused(at.problem());
    change.at = *at;
  }
  return answer(acted(session, [&] { return change_text_note(session.history(), *note, change); }));
}

Value run_remove_note(Session& session, const Value& arguments) {
  const Result<NoteId> note = note_argument(session.document(), arguments);
  if (!note) return refused(note.problem());
  return answer(acted(session, [&] { return remove_text_note(session.history(), *note); }));
}

Value run_select_note(Session& session, const Value& arguments) {
  const Result<NoteId> note = note_argument(session.document(), arguments);
  if (!note) return refused(note.problem());
  select_note(session, *note);
  return done();
}

constexpr const char* k_new_note_words = "note/new/words";

/// The first words of a note whose place was pressed.
Value write_new_note(Session& session, const std::string& text) {
  if (!session.desk.new_note) return refused({.fault = Fault::note_unknown, .texts = {"new"}});
  const Position at = *session.desk.new_note;
  const Result<NoteId> made = acted(session, [&] { return add_text_note(session.history(), at.lat_deg, at.lon_deg, text); });
  if (!made) {
    session.desk.entries.keep(k_new_note_words, text, words::sentence(made.problem()));
    return refused(made.problem());
  }
  session.desk.entries.drop(k_new_note_words);
  select_note(session, *made);
  return done_with(made->value);
}

Result<TextNoteChange> typed_note_change(const std::string& field, const std::string& text) {
  if (field == "words") return TextNoteChange{.text = text};
  if (field != "place") return Problem{.fault = Fault::entry_unreadable, .texts = {"field", field}};
  const Result<Position> at = parse_position(text);
  if (!at) return at.problem();
  return TextNoteChange{.at = *at};
}

Value run_type_note(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  if (!arguments.has("id")) return write_new_note(session, *text);
  const Result<NoteId> note = note_argument(session.document(), arguments);
  if (!note) return refused(note.problem());
  const std::string key = entry_prefix(*note) + *field;
  const Result<TextNoteChange> change = typed_note_change(*field, *text);
  const Result<Done> changed = change ? acted(session, [&] { return change_text_note(session.history(), *note, *change); }) : Result<Done>(change.problem());
  if (!changed) {
    session.desk.entries.keep(key, *text, words::sentence(changed.problem()));
    return refused(changed.problem());
  }
  session.desk.entries.drop(key);
  return done();
}

/// What was typed has been taken when the field was left; what could not be taken keeps the slip open.
Value run_finish_note(Session& session, const Value&) {
  if (session.desk.new_note) return write_new_note(session, session.desk.entries.text(k_new_note_words));
  const std::string key = session.desk.selected_note ? entry_prefix(*session.desk.selected_note) : "";
  for (const char* field : {"words", "place"})
    if (session.desk.entries.find(key + field)) return Value::object({{"error", session.desk.entries.error(key + field)}});
  return run_command(session, "close-slip", Value::object());
}

}  // namespace

std::vector<Command> rose_commands() {
  return {
      {"add-rose", "Another rose", "", {{"lat_deg", "deg, north positive", true}, {"lon_deg", "deg, east positive", true}, {"radius_mm", "mm, 20 to 90", true}}, nullptr, run_add_rose},
      {"move-rose", "Move a rose", "", {{"id", "id of a rose"}, {"lat_deg", "deg, north positive"}, {"lon_deg", "deg, east positive"}}, nullptr, run_move_rose},
      {"size-rose", "Size a rose", "", {{"id", "id of a rose"}, {"radius_mm", "mm, 20 to 90"}}, nullptr, run_size_rose},
      {"set-rose-own-place", "Set a rose to its own place's variation", "", {{"id", "id of a rose"}, {"own_place", "true or false"}}, nullptr, run_set_rose_own_place},
      {"remove-rose", "Rub out a rose", "", {{"id", "id of a rose"}}, nullptr, run_remove_rose},
      {"select-rose", "Select a rose", "", {{"id", "id of a rose"}}, nullptr, run_select_rose},
      {"type-rose", "Type a part of a rose", "", {{"id", "id of a rose"}, {"field", "place or radius"}, {"text", "as typed"}}, nullptr, run_type_rose},
  };
}

std::vector<Command> note_commands() {
  return {
      {"add-note", "Write a note on the sheet", "", {{"text", "words"}, {"lat_deg", "deg, north positive"}, {"lon_deg", "deg, east positive"}}, nullptr, run_add_note},
      {"change-note", "Change a note", "", {{"id", "id of a note"}, {"text", "words", true}, {"lat_deg", "deg, north positive", true}, {"lon_deg", "deg, east positive", true}}, nullptr, run_change_note},
      {"remove-note", "Rub out a note", "", {{"id", "id of a note"}}, nullptr, run_remove_note},
      {"select-note", "Select a note", "", {{"id", "id of a note"}}, nullptr, run_select_note},
      {"finish-note", "Finish a note", "", {}, nullptr, run_finish_note},
      {"type-note", "Type a part of a note", "", {{"id", "id of a note; none: the one being written", true}, {"field", "words or place"}, {"text", "as typed"}}, nullptr, run_type_note},
  };
}

}  // namespace fogsheet
