#include "shell/commands_marks.h"

#include "core/document/actions.h"
#include "shell/arguments.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

/// What add-mark and its kin take besides the place.
Result<NewMark> new_mark_argument(const Session& session, const Value& arguments, MarkKind usual_kind = MarkKind::landmark) {
  NewMark wanted{.kind = usual_kind};
  if (arguments.has("kind")) {
    const Result<MarkKind> kind = kind_argument(arguments, "kind");
    if (!kind) return kind.problem();
    wanted.kind = *kind;
  }
  const Result<std::optional<double>> radius_nm = optional_number(arguments, "radius_nm"), height_m = optional_number(arguments, "height_m");
  const Result<std::optional<std::string>> name = optional_text(arguments, "name"), note = optional_text(arguments, "note");
  for (const Result<std::optional<double>>* each : {&radius_nm, &height_m})
    if (!*each) return each->problem();
  for (const Result<std::optional<std::string>>* each : {&name, &note})
    if (!*each) return each->problem();
  wanted.name = *name ? **name : words::unused_name(session.document(), wanted.kind);
  wanted.radius_nm = radius_nm->value_or(0);
  wanted.height_m = height_m->value_or(0);
  wanted.note = note->value_or("");
  return wanted;
}

/// A place given by both its numbers, or not at all.
Result<std::optional<Position>> optional_place(const Value& arguments) {
  const Result<std::optional<double>> lat = optional_number(arguments, "lat_deg"), lon = optional_number(arguments, "lon_deg");
  for (const Result<std::optional<double>>* each : {&lat, &lon})
    if (!*each) return each->problem();
  if (!*lat && !*lon) return std::optional<Position>();
  if (!*lat) return Problem{.fault = Fault::number_missing, .texts = {"lat_deg"}};
  if (!*lon) return Problem{.fault = Fault::number_missing, .texts = {"lon_deg"}};
  return std::optional(Position{**lat, **lon});
}

Value run_add_mark(Session& session, const Value& arguments) {
  const Result<std::string> name = text_argument(arguments, "name");
  if (!name) return refused(name.problem());
  const Result<double> lat = number_argument(arguments, "lat_deg"), lon = number_argument(arguments, "lon_deg");
  for (const Result<double>* each : {&lat, &lon})
    if (!*each) return refused(each->problem());
  Result<NewMark> wanted = new_mark_argument(session, arguments);
  if (!wanted) return refused(wanted.problem());
  NewMark placed = std::move(wanted).value();
  placed.lat_deg = *lat;
  placed.lon_deg = *lon;
  return answer_of(acted(session, [&] { return add_mark(session.history(), placed); }));
}

Value run_move_mark(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  const Result<double> lat = number_argument(arguments, "lat_deg"), lon = number_argument(arguments, "lon_deg");
  for (const Result<double>* each : {&lat, &lon})
    if (!*each) return refused(each->problem());
  return answer_of(acted(session, [&] { return move_mark(session.history(), *mark, *lat, *lon); }));
}

Value run_remove_mark(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  return answer_of(acted(session, [&] { return remove_mark(session.history(), *mark); }));
}

Value run_change_mark(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  MarkChange change;
  if (arguments.has("kind")) {
    const Result<MarkKind> kind = kind_argument(arguments, "kind");
    if (!kind) return refused(kind.problem());
    change.kind = *kind;
  }
  const Result<std::optional<double>> radius_nm = optional_number(arguments, "radius_nm"), height_m = optional_number(arguments, "height_m");
  const Result<std::optional<std::string>> name = optional_text(arguments, "name"), note = optional_text(arguments, "note");
  const Result<std::optional<Position>> at = optional_place(arguments);
  for (const Result<std::optional<double>>* each : {&radius_nm, &height_m})
    if (!*each) return refused(each->problem());
  for (const Result<std::optional<std::string>>* each : {&name, &note})
    if (!*each) return refused(each->problem());
  if (!at) return refused(at.problem());
  change.name = *name;
  change.note = *note;
  change.radius_nm = *radius_nm;
  change.height_m = *height_m;
  change.at = *at;
  return answer_of(acted(session, [&] { return change_mark(session.history(), *mark, change); }));
}

Value run_copy_mark(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  const std::string name = words::copy_name(session.document(), session.document().marks.find(*mark)->name);
  const Result<MarkId> copy = acted(session, [&] { return duplicate_mark(session.history(), *mark, name); });
  if (copy) select_mark(session, *copy);
  return answer_of(copy);
}

Value run_reorder_mark(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  const Result<std::size_t> place = place_argument(arguments, "place");
  if (!mark) return refused(mark.problem());
  if (!place) return refused(place.problem());
  return answer_of(acted(session, [&] { return reorder_mark(session.history(), *mark, *place); }));
}

Value run_add_mark_by_bearing(Session& session, const Value& arguments) {
  const Result<MarkId> from = mark_argument(session.document(), arguments, "from");
  if (!from) return refused(from.problem());
  const Result<TrueDirection> bearing = direction_argument(session, arguments, "bearing_deg");
  if (!bearing) return refused(bearing.problem());
  const Result<double> distance_nm = number_argument(arguments, "distance_nm");
  if (!distance_nm) return refused(distance_nm.problem());
  const Result<NewMark> wanted = new_mark_argument(session, arguments);
  if (!wanted) return refused(wanted.problem());
  return answer_of(acted(session, [&] { return add_mark_by_bearing(session.history(), *from, *bearing, *distance_nm, *wanted); }));
}

Value run_add_mark_by_crossing(Session& session, const Value& arguments) {
  const Result<MarkId> first = mark_argument(session.document(), arguments, "first"), second = mark_argument(session.document(), arguments, "second");
  for (const Result<MarkId>* each : {&first, &second})
    if (!*each) return refused(each->problem());
  const Result<TrueDirection> a = direction_argument(session, arguments, "first_deg"), b = direction_argument(session, arguments, "second_deg");
  for (const Result<TrueDirection>* each : {&a, &b})
    if (!*each) return refused(each->problem());
  const Result<NewMark> wanted = new_mark_argument(session, arguments);
  if (!wanted) return refused(wanted.problem());
  return answer_of(acted(session, [&] { return add_mark_by_crossing(session.history(), {*first, *a}, {*second, *b}, *wanted); }));
}

// -- legs

Value run_add_leg(Session& session, const Value& arguments) {
  const Result<MarkId> from = mark_argument(session.document(), arguments, "from"), to = mark_argument(session.document(), arguments, "to");
  for (const Result<MarkId>* each : {&from, &to})
    if (!*each) return refused(each->problem());
  return answer_of(acted(session, [&] { return add_leg(session.history(), *from, *to); }));
}

/// Without a place it comes to the middle of the line as it is drawn, to be dragged from there.
Value run_insert_mark(Session& session, const Value& arguments) {
  const Result<LegId> leg = leg_argument(session.document(), arguments, "leg");
  if (!leg) return refused(leg.problem());
  const Result<NewMark> checked = new_mark_argument(session, arguments, MarkKind::turn);
  if (!checked) return refused(checked.problem());
  const Result<std::optional<Position>> given = optional_place(arguments);
  if (!given) return refused(given.problem());
  const Leg& found = *session.document().legs.find(*leg);
  const SheetPoint middle = midpoint(place_of(session, found.from), place_of(session, found.to));
  const Position at = given->value_or(session.facts().projection->to_position(middle));
  NewMark wanted = *checked;
  wanted.lat_deg = at.lat_deg;
  wanted.lon_deg = at.lon_deg;
  const Result<MarkId> made = acted(session, [&] { return insert_mark(session.history(), *leg, wanted); });
  if (made) select_mark(session, *made);
  return answer_of(made);
}

Value run_reorder_leg(Session& session, const Value& arguments) {
  const Result<LegId> leg = leg_argument(session.document(), arguments, "id");
  const Result<std::size_t> place = place_argument(arguments, "place");
  if (!leg) return refused(leg.problem());
  if (!place) return refused(place.problem());
  return answer_of(acted(session, [&] { return reorder_leg(session.history(), *leg, *place); }));
}

Value run_reverse_leg(Session& session, const Value& arguments) {
  const Result<LegId> leg = leg_argument(session.document(), arguments, "id");
  if (!leg) return refused(leg.problem());
  return answer_of(acted(session, [&] { return reverse_leg(session.history(), *leg); }));
}

Value run_remove_leg(Session& session, const Value& arguments) {
  const Result<LegId> leg = leg_argument(session.document(), arguments, "id");
  if (!leg) return refused(leg.problem());
  return answer_of(acted(session, [&] { return remove_leg(session.history(), *leg); }));
}

Value run_select_leg(Session& session, const Value& arguments) {
  const Result<LegId> leg = leg_argument(session.document(), arguments, "id");
  if (!leg) return refused(leg.problem());
  select_leg(session, *leg);
  return done();
}

}  // namespace

std::vector<Command> mark_commands() {
  return {
      {"add-mark", "Add a mark", "", {{"name", "text"}, {"lat_deg", "deg, north positive"}, {"lon_deg", "deg, east positive"}, {"kind", "landmark, light, turn, danger or other", true}, {"radius_nm", "nm, dangers only", true}, {"height_m", "m, 0 when not known", true}, {"note", "text", true}}, nullptr, run_add_mark},
      {"move-mark", "Move a mark", "", {{"id", "id of a mark"}, {"lat_deg", "deg, north positive"}, {"lon_deg", "deg, east positive"}}, nullptr, run_move_mark},
      {"remove-mark", "Rub a mark out", "", {{"id", "id of a mark"}}, nullptr, run_remove_mark},
      {"change-mark", "Change a mark", "", {{"id", "id of a mark"}, {"name", "text", true}, {"kind", "landmark, light, turn, danger or other", true}, {"lat_deg", "deg, north positive", true}, {"lon_deg", "deg, east positive", true}, {"radius_nm", "nm, dangers only", true}, {"height_m", "m, 0 when not known", true}, {"note", "text", true}}, nullptr, run_change_mark},
      {"copy-mark", "Copy a mark", "", {{"id", "id of a mark"}}, nullptr, run_copy_mark},
      {"reorder-mark", "Move a mark in the list", "", {{"id", "id of a mark"}, {"place", "from 0"}}, nullptr, run_reorder_mark},
      {"add-mark-by-bearing", "Add a mark by bearing and distance", "", {{"from", "id of a mark"}, {"bearing_deg", "deg, [0, 360)"}, {"reference", "true or magnetic", true}, {"distance_nm", "nm"}, {"name", "text", true}, {"kind", "landmark, light, turn, danger or other", true}, {"radius_nm", "nm, dangers only", true}, {"height_m", "m", true}, {"note", "text", true}}, nullptr, run_add_mark_by_bearing},
      {"add-mark-by-crossing", "Add a mark where two lines cross", "", {{"first", "id of a mark"}, {"first_deg", "deg, [0, 360)"}, {"second", "id of a mark"}, {"second_deg", "deg, [0, 360)"}, {"reference", "true or magnetic", true}, {"name", "text", true}, {"kind", "landmark, light, turn, danger or other", true}, {"radius_nm", "nm, dangers only", true}, {"height_m", "m", true}, {"note", "text", true}}, nullptr, run_add_mark_by_crossing},
  };
}

std::vector<Command> leg_commands() {
  return {
      {"add-leg", "Draw a leg", "", {{"from", "id of a mark"}, {"to", "id of a mark"}}, nullptr, run_add_leg},
      {"insert-mark", "Put a mark in a leg", "", {{"leg", "id of a leg"}, {"name", "text", true}, {"lat_deg", "deg, north positive", true}, {"lon_deg", "deg, east positive", true}, {"kind", "landmark, light, turn, danger or other", true}}, nullptr, run_insert_mark},
      {"reorder-leg", "Move a leg in the list", "", {{"id", "id of a leg"}, {"place", "from 0"}}, nullptr, run_reorder_leg},
      {"reverse-leg", "Turn a leg round", "", {{"id", "id of a leg"}}, nullptr, run_reverse_leg},
      {"remove-leg", "Rub a leg out", "", {{"id", "id of a leg"}}, nullptr, run_remove_leg},
      {"select-leg", "Select a leg", "", {{"id", "id of a leg"}}, nullptr, run_select_leg},
  };
}

}  // namespace fogsheet
