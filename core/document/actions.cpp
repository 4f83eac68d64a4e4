#include "core/document/actions.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/utf8.h"

namespace fogsheet {
namespace {

// A rose takes a fifth of the sheet's smaller side on each hand and leaves the middle free; 44 mm is as large as is useful
// to a hand-held edge. Its star stands past the outer ring.
constexpr double k_new_rose_mm = 44;
constexpr double k_new_rose_share = 0.21;
constexpr double k_rose_with_star = 1.12;
constexpr double k_rose_clear_mm = 4;

Problem out_of_range(std::string what, double given, double least, double most) {
  return {.fault = Fault::number_out_of_range, .texts = {std::move(what)}, .numbers = {given, least, most}};
}

Problem mark_unknown(MarkId id) { return {.fault = Fault::mark_unknown, .texts = {std::to_string(id.value)}}; }

Result<double> checked_number(std::string what, double given, double least, double most) {
  if (!std::isfinite(given)) return Problem{.fault = Fault::number_missing, .texts = {std::move(what)}};
  if (given < least || given > most) return out_of_range(std::move(what), given, least, most);
  return given;
}

Result<Date> checked_date(Date date) {
  if (!is_valid(date)) return Fault::date_unreadable;
  if (!is_sheet_date(date)) return out_of_range("year", date.year, k_first_sheet_year, k_last_sheet_year);
  return date;
}

// The name as documents keep it. How many characters are too many depends on how many bytes each takes.
Result<std::string> checked_name(std::string_view typed) {
  std::string name = repaired_utf8(trimmed(typed));
  if (name.size() <= k_most_name_bytes) return name;
  std::string_view fitting = std::string_view(name).substr(0, k_most_name_bytes);
  while (!is_utf8(fitting)) fitting.remove_suffix(1);
  return Problem{.fault = Fault::name_too_long,
                 .numbers = {static_cast<double>(count_characters(name)), static_cast<double>(count_characters(fitting))}};
}

Result<GridPosition> checked_place(const Document& document, const std::string& name, double lat_deg, double lon_deg) {
  const Result<GridPosition> at = checked_position(lat_deg, lon_deg);
  if (at && !lies_on_sheet(projection_of(document), *at)) return Problem{.fault = Fault::place_off_sheet, .texts = {name}};
  return at;
}

Result<double> checked_radius(const NewMark& wanted) {
  if (wanted.kind != MarkKind::danger) return 0.0;
  if (wanted.radius_nm == 0) return Fault::radius_missing;
  const Result<double> radius = checked_number("radius", wanted.radius_nm, 1 / k_parts_per_nm, k_most_danger_radius_nm);
  if (!radius) return radius;
  return from_parts(whole_parts(*radius, k_parts_per_nm), k_parts_per_nm);
}

// Ids are never reused, so that a document could in the end have no new one although its tables have room.
bool has_room(const Document& document, std::size_t rows, std::size_t most) { return rows < most && document.next_id < k_most_id; }

Problem table_full(std::string what, std::size_t most) {
  return {.fault = Fault::table_full, .texts = {std::move(what)}, .numbers = {static_cast<double>(most)}};
}

Result<Mark> with_new_mark(Document& document, const NewMark& wanted) {
  const Result<std::string> name = checked_name(wanted.name);
  if (!name) return name.problem();
  if (name->empty()) return Fault::name_empty;
  const Result<GridPosition> at = checked_place(document, *name, wanted.lat_deg, wanted.lon_deg);
  if (!at) return at.problem();
  const Result<double> radius = checked_radius(wanted);
  if (!radius) return radius.problem();
  if (!has_room(document, document.marks.size(), k_most_marks)) return table_full("marks", k_most_marks);
  const Mark mark{.id = {document.next_id++}, .name = *name, .kind = wanted.kind, .at = *at, .radius_nm = *radius};
  document.marks = document.marks.with(mark);
  return mark;
}

Result<Leg> with_new_leg(Document& document, MarkId from, MarkId to) {
  const Mark* start = document.marks.find(from);
  if (!start) return mark_unknown(from);
  const Mark* end = document.marks.find(to);
  if (!end) return mark_unknown(to);
  if (start->at == end->at) return Problem{.fault = Fault::leg_of_no_length, .texts = {end->name}};
  const bool already = std::any_of(document.legs.begin(), document.legs.end(),
                                   [&](const Leg& leg) { return leg.from == from && leg.to == to; });
  if (already) return Problem{.fault = Fault::leg_already_there, .texts = {start->name, end->name}};
  if (!has_room(document, document.legs.size(), k_most_legs)) return table_full("legs", k_most_legs);
  const Leg leg{.id = {document.next_id++}, .from = from, .to = to};
  document.legs = document.legs.with(leg);
  return leg;
}

Rose first_rose(const Projection& projection, RoseId id) {
  const SheetRect& neat = projection.neat_line();
  const double share_mm = k_new_rose_share * std::min(neat.width_mm(), neat.height_mm());
  const double radius_mm = from_parts(whole_parts(std::min(k_new_rose_mm, share_mm), k_parts_per_mm), k_parts_per_mm);
  const double from_corner_mm = k_rose_with_star * radius_mm + k_rose_clear_mm;
  const SheetPoint centre{neat.right_mm - from_corner_mm, neat.bottom_mm - from_corner_mm};
  return {.id = id, .at = quantise(projection.to_position(centre)), .radius_mm = radius_mm};
}

}  // namespace

Result<Document> made_sheet(const NewSheet& wanted) {
  const Result<std::string> name = checked_name(wanted.name);
  if (!name) return name.problem();
  const Result<GridPosition> middle = checked_position(wanted.mid_lat_deg, wanted.mid_lon_deg);
  if (!middle) return middle.problem();
  const Result<double> scale = checked_number("scale", wanted.scale, k_least_scale, k_greatest_scale);
  if (!scale) return scale.problem();
  const Result<Date> date = checked_date(wanted.date);
  if (!date) return date.problem();

  Document document;
  document.sheet = {.name = *name,
                    .middle = *middle,
                    .scale = static_cast<int>(std::lround(*scale)),
                    .paper = wanted.paper,
                    .date = *date};
  const Projection projection = projection_of(document);
  const SheetLimits& limits = projection.limits();
  if (!sheet_within_bounds(unquantise(*middle), document.sheet.scale, wanted.paper)) {
    const double outer_deg = middle->lat > 0 ? limits.north_deg : limits.south_deg;
    return out_of_range("sheet", outer_deg, -k_max_sheet_latitude_deg, k_max_sheet_latitude_deg);
  }
  document.roses = document.roses.with(first_rose(projection, {document.next_id++}));
  return document;
}

Result<Done> new_sheet(History& history, const NewSheet& wanted) {
  Result<Document> made = made_sheet(wanted);
  if (!made) return made.problem();
  std::string name = made->sheet.name;
  history.commit(std::move(made).value(), {Act::new_sheet, std::move(name)});
  return Done{};
}

void open_sheet(History& history, Document document) {
  std::string name = document.sheet.name;
  history.commit(std::move(document), {Act::open_sheet, std::move(name)});
}

Result<MarkId> add_mark(History& history, const NewMark& wanted) {
  Document next = history.now();
  const Result<Mark> mark = with_new_mark(next, wanted);
  if (!mark) return mark.problem();
  history.commit(std::move(next), {Act::add_mark, mark->name});
  return mark->id;
}

Result<Done> move_mark(History& history, MarkId id, double lat_deg, double lon_deg) {
  Document next = history.now();
  const Mark* found = next.marks.find(id);
  if (!found) return mark_unknown(id);
  Mark mark = *found;
  const Result<GridPosition> at = checked_place(next, mark.name, lat_deg, lon_deg);
  if (!at) return at.problem();
  mark.at = *at;
  for (const Leg& leg : next.legs) {
    if (leg.from != id && leg.to != id) continue;
    const Mark* other = next.marks.find(leg.from == id ? leg.to : leg.from);
    if (other->at == mark.at) return Problem{.fault = Fault::leg_of_no_length, .texts = {other->name}};
  }
  next.marks = next.marks.replaced(mark);
  history.commit(std::move(next), {Act::move_mark, mark.name});
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

Result<LegId> add_leg(History& history, MarkId from, MarkId to) {
  Document next = history.now();
  const Result<Leg> leg = with_new_leg(next, from, to);
  if (!leg) return leg.problem();
  std::string end_name = next.marks.find(to)->name;
  history.commit(std::move(next), {Act::add_leg, std::move(end_name)});
  return leg->id;
}

Result<LegId> add_leg_to_new_turn(History& history, MarkId from, const NewMark& turn) {
  Document next = history.now();
  NewMark wanted = turn;
  wanted.kind = MarkKind::turn;
  const Result<Mark> mark = with_new_mark(next, wanted);
  if (!mark) return mark.problem();
  const Result<Leg> leg = with_new_leg(next, from, mark->id);
  if (!leg) return leg.problem();
  history.commit(std::move(next), {Act::add_leg, mark->name});
  return leg->id;
}

Result<Done> set_date(History& history, Date date) {
  const Result<Date> checked = checked_date(date);
  if (!checked) return checked.problem();
  Document next = history.now();
  next.sheet.date = *checked;
  history.commit(std::move(next), {Act::set_date, {}});
  return Done{};
}

Result<Done> set_chart_note(History& history, const std::optional<PrintedVariation>& printed) {
  Document next = history.now();
  if (!printed) {
    next.chart_note.reset();
    history.commit(std::move(next), {Act::clear_chart_note, {}});
    return Done{};
  }
  const Result<double> value = checked_number("variation", printed->value_deg, -k_most_variation_deg, k_most_variation_deg);
  if (!value) return value.problem();
  const Result<double> year = checked_number("year", printed->year, k_first_sheet_year, k_last_sheet_year);
  if (!year) return year.problem();
  const Result<double> change =
      checked_number("annual change", printed->annual_change_min, -k_most_annual_change_min, k_most_annual_change_min);
  if (!change) return change.problem();
  const PrintedVariation kept{
      .value_deg = from_parts(whole_parts(*value, k_parts_per_degree), k_parts_per_degree),
      .year = printed->year,
      .annual_change_min = from_parts(whole_parts(*change, k_parts_per_annual_minute), k_parts_per_annual_minute)};
  next.chart_note = ChartNote{.printed = kept, .entered_at = next.sheet.middle};
  history.commit(std::move(next), {Act::set_chart_note, {}});
  return Done{};
}

}  // namespace fogsheet
