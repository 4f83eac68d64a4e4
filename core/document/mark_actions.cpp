#include "core/document/mark_actions.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/units.h"
#include "core/document/checks.h"
#include "core/earth/rhumb.h"

namespace fogsheet {
namespace {

constexpr double k_most_bearing_distance_nm = 1'000;
constexpr double k_least_cut_deg = 1;  // lines nearer to parallel cross anywhere
constexpr double k_copy_beside_mm = 6;

Problem mark_unknown(MarkId id) { return {.fault = Fault::mark_unknown, .texts = {std::to_string(id.value)}}; }

Result<double> checked_radius(MarkKind kind, double radius_nm) {
  if (kind != MarkKind::danger) return 0.0;
  if (radius_nm == 0) return Fault::radius_missing;
  const Result<double> radius = checks::number("radius", radius_nm, 1 / k_parts_per_nm, k_most_danger_radius_nm);
  if (!radius) return radius;
  return from_parts(whole_parts(*radius, k_parts_per_nm), k_parts_per_nm);
}

Result<double> checked_height(double height_m) {
  const Result<double> height = checks::number("height", height_m, 0, k_most_height_m);
  if (!height) return height;
  return from_parts(whole_parts(*height, k_parts_per_metre), k_parts_per_metre);
}

// What a mark is to be, as a document may keep it; its id is the caller's.
Result<Mark> checked_mark(const Document& document, const NewMark& wanted) {
  const Result<std::string> name = checks::name(wanted.name);
  if (!name) return name.problem();
  const Result<GridPosition> at = checks::place(document, *name, wanted.lat_deg, wanted.lon_deg);
  if (!at) return at.problem();
  const Result<double> radius = checked_radius(wanted.kind, wanted.radius_nm);
  if (!radius) return radius.problem();
  const Result<double> height = checked_height(wanted.height_m);
  if (!height) return height.problem();
  const Result<std::string> note = checks::note_or_none(wanted.note);
  if (!note) return note.problem();
  return Mark{.name = *name, .kind = wanted.kind, .at = *at, .radius_nm = *radius, .height_m = *height, .note = *note};
}

// The same name at the same place is one mark put in twice.
Result<Done> check_not_twice(const Document& document, const Mark& mark) {
  for (const Mark& other : document.marks)
    if (other.id != mark.id && other.at == mark.at && other.name == mark.name) return Problem{.fault = Fault::mark_already_there, .texts = {mark.name}};
  return Done{};
}

Result<Done> check_legs_keep_length(const Document& document, const Mark& moved) {
  for (const Leg& leg : document.legs) {
    if (leg.from != moved.id && leg.to != moved.id) continue;
    const Mark* other = document.marks.find(leg.from == moved.id ? leg.to : leg.from);
    if (other->at == moved.at) return Problem{.fault = Fault::leg_of_no_length, .texts = {other->name}};
  }
  return Done{};
}

// Which word the step goes by in the history.
Act act_of(const Mark& before, const Mark& after) {
  Mark elsewhere = before;
  elsewhere.at = after.at;
  return elsewhere == after ? Act::move_mark : Act::change_mark;
}

// On a Mercator sheet rhumb lines are straight: where they cross on paper is where they cross.
std::optional<SheetPoint> crossing(SheetPoint a, SheetVector along_a, SheetPoint b, SheetVector along_b) {
  const auto cross = [](SheetVector u, SheetVector v) { return u.x_mm * v.y_mm - u.y_mm * v.x_mm; };
  const double sine = cross(along_a, along_b);
  if (std::abs(sine) < std::sin(k_least_cut_deg * k_degree_rad)) return std::nullopt;
  return a + (cross(b - a, along_b) / sine) * along_a;
}

}  // namespace

Result<Mark> with_new_mark(Document& document, const NewMark& wanted) {
  Result<Mark> checked = checked_mark(document, wanted);
  if (!checked) return checked;
  const Result<Done> once = check_not_twice(document, *checked);
  if (!once) return once.problem();
  if (!checks::has_room(document, document.marks.size(), k_most_marks)) return checks::table_full("marks", k_most_marks);
  Mark mark = std::move(checked).value();
  mark.id = {document.next_id++};
  document.marks = document.marks.with(mark);
  return mark;
}

Result<MarkId> add_mark(History& history, const NewMark& wanted) {
  Document next = history.now();
  const Result<Mark> mark = with_new_mark(next, wanted);
  if (!mark) return mark.problem();
  history.commit(std::move(next), {Act::add_mark, mark->name});
  return mark->id;
}

Result<MarkId> add_mark_by_bearing(History& history, MarkId from, TrueDirection bearing, double distance_nm, const NewMark& wanted) {
  const Mark* start = history.now().marks.find(from);
  if (!start) return mark_unknown(from);
  const Result<double> distance = checks::number("distance", distance_nm, 1 / k_parts_per_nm, k_most_bearing_distance_nm);
  if (!distance) return distance.problem();
  const Result<Position> end = rhumb_direct(unquantise(start->at), bearing, *distance);
  if (!end) return end.problem();
  NewMark placed = wanted;
  placed.lat_deg = end->lat_deg;
  placed.lon_deg = end->lon_deg;
  return add_mark(history, placed);
}

Result<MarkId> add_mark_by_crossing(History& history, LineThrough first, LineThrough second, const NewMark& wanted) {
  const Document& document = history.now();
  const Mark* a = document.marks.find(first.mark);
  if (!a) return mark_unknown(first.mark);
  const Mark* b = document.marks.find(second.mark);
  if (!b) return mark_unknown(second.mark);
  const Projection projection = projection_of(document);
  const std::optional<SheetPoint> at = crossing(projection.to_sheet(unquantise(a->at)), towards(first.bearing.deg()),
                                                projection.to_sheet(unquantise(b->at)), towards(second.bearing.deg()));
  if (!at) {
    const double between_deg = std::abs(std::remainder(first.bearing.deg() - second.bearing.deg(), 180));
    return Problem{.fault = Fault::lines_do_not_cross, .texts = {a->name, b->name}, .numbers = {between_deg, k_least_cut_deg}};
  }
  if (!projection.neat_line().contains(*at)) return Problem{.fault = Fault::place_off_sheet, .texts = {wanted.name}};
  const Position place = projection.to_position(*at);
  NewMark placed = wanted;
  placed.lat_deg = place.lat_deg;
  placed.lon_deg = place.lon_deg;
  return add_mark(history, placed);
}

Result<MarkId> duplicate_mark(History& history, MarkId id, const std::string& name) {
  Document next = history.now();
  const Mark* found = next.marks.find(id);
  if (!found) return mark_unknown(id);
  const Projection projection = projection_of(next);
  const SheetPoint at = projection.to_sheet(unquantise(found->at));
  const bool fits_right = at.x_mm + k_copy_beside_mm <= projection.neat_line().right_mm;
  const Position beside = projection.to_position(at + SheetVector{fits_right ? k_copy_beside_mm : -k_copy_beside_mm, 0});
  const Result<Mark> copy = with_new_mark(next, {.name = name,
                                                 .lat_deg = unquantise(found->at).lat_deg,
                                                 .lon_deg = beside.lon_deg,
                                                 .kind = found->kind,
                                                 .radius_nm = found->radius_nm,
                                                 .height_m = found->height_m,
                                                 .note = found->note});
  if (!copy) return copy.problem();
  history.commit(std::move(next), {Act::duplicate_mark, found->name});
  return copy->id;
}

Result<Done> change_mark(History& history, MarkId id, const MarkChange& change) {
  Document next = history.now();
  const Mark* found = next.marks.find(id);
  if (!found) return mark_unknown(id);
  const Position at = change.at.value_or(unquantise(found->at));
  Result<Mark> checked = checked_mark(next, {.name = change.name.value_or(found->name),
                                             .lat_deg = at.lat_deg,
                                             .lon_deg = at.lon_deg,
                                             .kind = change.kind.value_or(found->kind),
                                             .radius_nm = change.radius_nm.value_or(found->radius_nm),
                                             .height_m = change.height_m.value_or(found->height_m),
                                             .note = change.note.value_or(found->note)});
  if (!checked) return checked.problem();
  Mark mark = std::move(checked).value();
  mark.id = id;
  for (const Result<Done>& fits : {check_not_twice(next, mark), check_legs_keep_length(next, mark)})
    if (!fits) return fits;
  const Act act = act_of(*found, mark);
  next.marks = next.marks.replaced(mark);
  history.commit(std::move(next), {act, mark.name});
  return Done{};
}

Result<Done> move_mark(History& history, MarkId mark, double lat_deg, double lon_deg) {
  return change_mark(history, mark, {.at = Position{lat_deg, lon_deg}});
}

Result<Done> reorder_mark(History& history, MarkId id, std::size_t place) {
  Document next = history.now();
  const Mark* mark = next.marks.find(id);
  if (!mark) return mark_unknown(id);
  std::string name = mark->name;
  next.marks = next.marks.moved(id, std::min(place, next.marks.size() - 1));
  history.commit(std::move(next), {Act::reorder_mark, std::move(name)});
  return Done{};
}

Result<Done> remove_mark(History& history, MarkId id) {
  Document next = history.now();
  const Mark* mark = next.marks.find(id);
  if (!mark) return mark_unknown(id);
  std::string name = mark->name;
  next.legs = next.legs.without_all([&](const Leg& leg) { return leg.from == id || leg.to == id; });
  next.marks = next.marks.without(id);
  history.commit(std::move(next), {Act::remove_mark, std::move(name)});
  return Done{};
}

}  // namespace fogsheet
