#include "shell/commands_typed.h"

#include <utility>

#include "core/base/quantity_text.h"
#include "core/base/utf8.h"
#include "core/directions/direction_text.h"
#include "core/document/actions.h"
#include "core/positions/position_text.h"
#include "core/sheet/scale_text.h"
#include "shell/arguments.h"
#include "shell/form_fields.h"
#include "shell/typed_quantity.h"
#include "shell/typed_variation.h"
#include "shell/form_words.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

Value unknown_field(const std::string& field) { return refused({.fault = Fault::entry_unreadable, .texts = {"field", field}}); }

/// The two arguments of every field that is left: which it is, and what stands in it now.
struct TypedField {
  std::string field;
  std::string text;
};

Result<TypedField> typed_argument(const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return each->problem();
  return TypedField{*field, *text};
}

// -- the parts of a mark, as typed

/// Nothing typed where a height belongs means that it is not known.
Result<double> typed_height_m(const std::string& text) {
  if (trimmed(text).empty()) return 0.0;
  return typed_metres(text);
}

Result<MarkChange> typed_change(const Form& entries, const std::string& prefix, const TypedField& typed) {
  MarkChange change;
  if (typed.field == "name") change.name = typed.text;
  else if (typed.field == "note") change.note = typed.text;
  else if (typed.field == "kind") {
    const std::optional<MarkKind> kind = mark_kind_named(typed.text);
    if (!kind) return Problem{.fault = Fault::kind_unknown, .texts = {typed.text}};
    change.kind = *kind;
  } else if (typed.field == "position") {
    const Result<Position> at = parse_position(typed.text);
    if (!at) return at.problem();
    change.at = *at;
  } else if (typed.field == "height") {
    const Result<double> height_m = typed_height_m(typed.text);
    if (!height_m) return height_m.problem();
    change.height_m = *height_m;
  } else if (typed.field == "radius") {
    const Result<double> radius_nm = typed_nm(typed.text);
    if (!radius_nm) return radius_nm.problem();
    change.radius_nm = *radius_nm;
    // The kind that was chosen before and waited for this radius.
    if (entries.find(prefix + "kind")) change.kind = MarkKind::danger;
  } else {
    return Problem{.fault = Fault::entry_unreadable, .texts = {"field", typed.field}};
  }
  return change;
}

Value run_type_mark(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  const Result<TypedField> typed = typed_argument(arguments);
  if (!typed) return refused(typed.problem());
  const std::string prefix = entry_prefix(*mark);
  Form& entries = session.desk.entries;
  const Result<MarkChange> change = typed_change(entries, prefix, *typed);
  const Result<Done> changed = change ? acted(session, [&] { return change_mark(session.history(), *mark, *change); }) : Result<Done>(change.problem());
  if (changed) {
    entries.drop(prefix + typed->field);
    if (typed->field == "radius" || typed->field == "kind") entries.drop(prefix + "kind");
    return done();
  }
  // A danger is one only with its radius: the choice waits until that is typed.
  const std::string sentence = words::sentence(changed.problem());
  if (typed->field == "kind" && changed.problem().fault == Fault::radius_missing) {
    entries.keep(prefix + "kind", typed->text);
    session.touch();
    return done();
  }
  entries.keep(prefix + typed->field, typed->text, sentence);
  return Value::object({{"error", sentence}});
}

// -- a mark put in by typing

Result<TrueDirection> typed_bearing(const Session& session, const std::string& text) {
  const Result<TypedDirection> typed = parse_direction(text);
  if (!typed) return typed.problem();
  const Reference reference = typed->reference.value_or(Reference::true_north);
  if (reference == Reference::true_north) return TrueDirection(typed->deg);
  const std::optional<Variation>& used = session.facts().variation.used;
  if (reference == Reference::compass) return Problem{.fault = Fault::reference_not_usable, .texts = {"compass"}};
  if (!used) return Problem{.fault = Fault::reference_not_usable, .texts = {"magnetic"}};
  return to_true(MagneticDirection(typed->deg), *used);
}

/// Reads one field of the form; what is wrong is noted there.
template <class Read>
auto read_field(Form& form, const char* field, Read read) {
  auto result = read(form.text(field));
  form.keep(field, form.text(field), result ? "" : words::sentence(result.problem()));
  return result;
}

Result<MarkId> chosen_mark(const Session& session, const Form& form, const char* field) {
  return mark_argument(session.document(), Value::object({{"mark", form.text(field)}}), "mark");
}

/// The field that a problem found by the action itself belongs to.
const char* field_of(const Problem& problem, const std::string& how) {
  switch (problem.fault) {
    case Fault::name_empty:
    case Fault::name_too_long:
    case Fault::mark_already_there: return "name";
    case Fault::note_too_long: return "note";
    case Fault::radius_missing: return "radius";
    case Fault::number_out_of_range: return problem.texts.front() == "height" ? "height" : problem.texts.front() == "radius" ? "radius" : "distance";
    default: return how == "bearing" ? "distance" : how == "crossing" ? "second-bearing" : "position";
  }
}

Result<MarkId> made_mark(Session& session, Form& form, const NewMark& described) {
  const std::string how = form.text("how", "position");
  if (how == "bearing") {
    const Result<MarkId> from = read_field(form, "from", [&](const std::string&) { return chosen_mark(session, form, "from"); });
    const Result<TrueDirection> bearing = read_field(form, "bearing", [&](const std::string& text) { return typed_bearing(session, text); });
    const Result<double> distance_nm = read_field(form, "distance", typed_nm);
    if (!from) return from.problem();
    if (!bearing) return bearing.problem();
    if (!distance_nm) return distance_nm.problem();
    return add_mark_by_bearing(session.history(), *from, *bearing, *distance_nm, described);
  }
  if (how == "crossing") {
    const Result<MarkId> first = read_field(form, "from", [&](const std::string&) { return chosen_mark(session, form, "from"); });
    const Result<MarkId> second = read_field(form, "second", [&](const std::string&) { return chosen_mark(session, form, "second"); });
    const Result<TrueDirection> a = read_field(form, "bearing", [&](const std::string& text) { return typed_bearing(session, text); });
    const Result<TrueDirection> b = read_field(form, "second-bearing", [&](const std::string& text) { return typed_bearing(session, text); });
    if (!first) return first.problem();
    if (!second) return second.problem();
    if (!a) return a.problem();
    if (!b) return b.problem();
    return add_mark_by_crossing(session.history(), {*first, *a}, {*second, *b}, described);
  }
  const Result<Position> at = read_field(form, "position", [](const std::string& text) { return parse_position(text); });
  if (!at) return at.problem();
  NewMark placed = described;
  placed.lat_deg = at->lat_deg;
  placed.lon_deg = at->lon_deg;
  return add_mark(session.history(), placed);
}

Value run_fill_new_mark(Session& session, const Value& arguments) {
  const Result<TypedField> typed = typed_argument(arguments);
  if (!typed) return refused(typed.problem());
  if (!is_field(k_new_mark_fields, typed->field)) return unknown_field(typed->field);
  session.desk.new_mark.keep(typed->field, typed->text);
  return done();
}

/// Whatever is wrong is said at its field, and all that was typed stays.
Value run_make_new_mark(Session& session, const Value&) {
  Form& form = session.desk.new_mark;
  NewMark described{.kind = mark_kind_named(form.text("kind", "landmark")).value_or(MarkKind::landmark)};
  described.name = form.text("name");
  if (trimmed(described.name).empty()) described.name = words::unused_name(session.document(), described.kind);
  described.note = form.text("note");
  const Result<double> height_m = read_field(form, "height", typed_height_m);
  if (!height_m) return refused(height_m.problem());
  described.height_m = *height_m;
  if (described.kind == MarkKind::danger) {
    const Result<double> radius_nm = read_field(form, "radius", typed_nm);
    if (!radius_nm) return refused(radius_nm.problem());
    described.radius_nm = *radius_nm;
  }
  const Document before = session.document();
  const Result<MarkId> made = made_mark(session, form, described);
  if (!made) {
    const char* field = field_of(made.problem(), form.text("how", "position"));
    if (form.error(field).empty()) form.mark_wrong(field, words::sentence(made.problem()));
    return refused(made.problem());
  }
  session.settle_desk(before);
  // The next one is likely placed in the same way, and of the same kind.
  Form next;
  for (const char* kept : {"how", "kind", "from", "second"})
    if (form.find(kept)) next.keep(kept, form.text(kept));
  form = next;
  session.say(words::mark_added(session.document().marks.find(*made)->name));
  return answer_of(made);
}

Value run_fill_new_leg(Session& session, const Value& arguments) {
  const Result<TypedField> typed = typed_argument(arguments);
  if (!typed) return refused(typed.problem());
  if (typed->field != "from" && typed->field != "to") return unknown_field(typed->field);
  session.desk.new_leg.keep(typed->field, typed->text);
  return done();
}

Value run_make_new_leg(Session& session, const Value&) {
  Form& form = session.desk.new_leg;
  const Result<MarkId> from = chosen_mark(session, form, "from"), to = chosen_mark(session, form, "to");
  for (const Result<MarkId>* each : {&from, &to})
    if (!*each) return refused({.fault = Fault::leg_ends_missing});
  const Result<LegId> made = acted(session, [&] { return add_leg(session.history(), *from, *to); });
  if (!made) return refused(made.problem());
  // The next one mostly goes on from there.
  form.clear();
  form.keep("from", std::to_string(to->value));
  return answer_of(made);
}

// -- the sheet's own parts, as typed

Result<Done> typed_shape(Session& session, const TypedField& typed) {
  const Sheet& sheet = session.document().sheet;
  const Position middle = unquantise(sheet.middle);
  SheetShape shape{.mid_lat_deg = middle.lat_deg, .mid_lon_deg = middle.lon_deg, .scale = static_cast<double>(sheet.scale), .paper = sheet.paper};
  if (typed.field == "middle") {
    const Result<Position> at = parse_position(typed.text);
    if (!at) return at.problem();
    shape.mid_lat_deg = at->lat_deg;
    shape.mid_lon_deg = at->lon_deg;
  } else if (typed.field == "scale") {
    const Result<double> scale = parse_scale(typed.text);
    if (!scale) return scale.problem();
    shape.scale = *scale;
  } else {
    const std::optional<Paper> paper = paper_named(typed.text);
    if (!paper) return Problem{.fault = Fault::paper_unknown, .texts = {typed.text}};
    shape.paper = *paper;
  }
  return reshape_sheet(session.history(), shape);
}

Result<Done> typed_sheet_part(Session& session, const TypedField& typed) {
  History& history = session.history();
  if (typed.field == "name") return describe_sheet(history, {.name = typed.text});
  if (typed.field == "note") return describe_sheet(history, {.note = typed.text});
  if (typed.field == "datum") return describe_sheet(history, {.datum = typed.text});
  if (typed.field == "signs") return describe_sheet(history, {.signs = typed.text == "b" ? SignSet::b : SignSet::a});
  if (typed.field == "date") {
    const Result<Date> date = parse_iso_date(trimmed(typed.text));
    if (!date) return date.problem();
    return set_date(history, *date);
  }
  if (typed.field == "middle" || typed.field == "scale" || typed.field == "paper") return typed_shape(session, typed);
  return Problem{.fault = Fault::entry_unreadable, .texts = {"field", typed.field}};
}

Value run_type_sheet(Session& session, const Value& arguments) {
  const Result<TypedField> typed = typed_argument(arguments);
  if (!typed) return refused(typed.problem());
  const std::string key = "sheet/" + typed->field;
  const Document before = session.document();
  const Result<Done> changed = typed_sheet_part(session, *typed);
  if (!changed) {
    session.desk.entries.keep(key, typed->text, words::sentence(changed.problem()));
    return refused(changed.problem());
  }
  session.settle_desk(before);
  session.desk.entries.drop(key);
  return done();
}

/// What stands in the note's fields counts as typed once one of them is.
void fill_in_chart_note(Session& session) {
  const std::optional<ChartNote>& note = session.document().chart_note;
  if (!note) return;
  Form& entries = session.desk.entries;
  const words::ChartNoteText standing = words::chart_note_text(note->printed);
  if (!entries.find("sheet/variation")) entries.keep("sheet/variation", standing.value);
  if (!entries.find("sheet/variation-year")) entries.keep("sheet/variation-year", standing.year);
  if (!entries.find("sheet/annual-change")) entries.keep("sheet/annual-change", standing.annual_change);
}

/// The chart's note: kept field by field until all three can be read, then set.
Value run_type_variation(Session& session, const Value& arguments) {
  const Result<TypedField> typed = typed_argument(arguments);
  if (!typed) return refused(typed.problem());
  Form& entries = session.desk.entries;
  if (typed->field == "variation-by") {
    if (typed->text == "printed") {
      entries.keep("sheet/variation-by", "printed");
      return done();
    }
    for (const char* field : {"sheet/variation-by", "sheet/variation", "sheet/variation-year", "sheet/annual-change"}) entries.drop(field);
    if (!session.document().chart_note) return done();
    return answer_of(acted(session, [&] { return set_chart_note(session.history(), std::nullopt); }));
  }
  const bool known = typed->field == "variation" || typed->field == "variation-year" || typed->field == "annual-change";
  if (!known) return unknown_field(typed->field);
  fill_in_chart_note(session);
  entries.keep("sheet/" + typed->field, typed->text);
  const Result<PrintedVariation> note = typed_chart_note(entries, "sheet/");
  if (!note) {
    // A field that is still empty waits; only what was typed is wrong.
    for (const char* field : {"sheet/variation", "sheet/variation-year", "sheet/annual-change"})
      if (trimmed(entries.text(field)).empty()) entries.keep(field, "");
    const std::string error = entries.error("sheet/" + typed->field);
    return error.empty() ? done() : Value::object({{"error", error}});
  }
  const Value answer = answer_of(acted(session, [&] { return set_chart_note(session.history(), *note); }));
  for (const char* field : {"sheet/variation-by", "sheet/variation", "sheet/variation-year", "sheet/annual-change"}) entries.drop(field);
  return answer;
}

}  // namespace

std::vector<Command> typed_commands() {
  return {
      {"type-mark", "Type a part of a mark", "", {{"id", "id of a mark"}, {"field", "name, kind, position, radius, height or note"}, {"text", "as typed"}}, nullptr, run_type_mark},
      {"type-sheet", "Type a part of the sheet", "", {{"field", "name, note, date, datum, signs, middle, scale or paper"}, {"text", "as typed"}}, nullptr, run_type_sheet},
      {"type-variation", "Type the variation printed on the chart", "", {{"field", "variation-by (model or printed), variation, variation-year or annual-change"}, {"text", "as typed"}}, nullptr, run_type_variation},
      {"fill-new-mark", "Fill in a new mark", "", {{"field", "name of a field"}, {"text", "as typed"}}, nullptr, run_fill_new_mark},
      {"make-new-mark", "Add the mark", "", {}, nullptr, run_make_new_mark},
      {"fill-new-leg", "Choose an end of a new leg", "", {{"field", "from or to"}, {"text", "id of a mark"}}, nullptr, run_fill_new_leg},
      {"make-new-leg", "Draw the leg", "", {}, nullptr, run_make_new_leg},
  };
}

}  // namespace fogsheet
