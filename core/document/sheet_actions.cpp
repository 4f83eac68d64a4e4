#include "core/document/sheet_actions.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "core/document/checks.h"
#include "core/formats/boat_fields.h"
#include "core/document/rose_actions.h"
#include "core/sheet/sheet_fit.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_named_off_sheet = 3;

Result<Done> shape_sheet(Sheet& sheet, const SheetShape& wanted) {
  const Result<GridPosition> middle = checked_position(wanted.mid_lat_deg, wanted.mid_lon_deg);
  if (!middle) return middle.problem();
  const Result<double> scale = checks::number("scale", wanted.scale, k_least_scale, k_greatest_scale);
  if (!scale) return scale.problem();
  sheet.middle = *middle;
  sheet.scale = static_cast<int>(std::lround(*scale));
  sheet.paper = wanted.paper;
  if (!sheet_within_bounds(unquantise(*middle), sheet.scale, wanted.paper)) {
    const SheetLimits limits = Projection(unquantise(*middle), sheet.scale, sheet.paper).limits();
    const double outer_deg = middle->lat > 0 ? limits.north_deg : limits.south_deg;
    return checks::out_of_range("sheet", outer_deg, -k_max_sheet_latitude_deg, k_max_sheet_latitude_deg);
  }
  return Done{};
}

// What the user placed and would lie off the sheet: all of it is counted, the first few are named.
struct OffSheet {
  std::vector<std::string> names;
  std::size_t count = 0;

  void add(const std::string& name) {
    ++count;
    if (names.size() < k_most_named_off_sheet) names.push_back(name);
  }
};

OffSheet off_sheet(const Document& document, const Projection& projection) {
  OffSheet off;
  for (const Mark& mark : document.marks)
    if (!lies_on_sheet(projection, mark.at)) off.add(mark.name);
  for (const TextNote& note : document.text_notes)
    if (!lies_on_sheet(projection, note.at)) off.add(note.text);
  return off;
}

}  // namespace

Result<Document> made_sheet(const NewSheet& wanted) {
  const Result<std::string> name = checks::name_or_none(wanted.name);
  if (!name) return name.problem();
  Document document;
  document.sheet.name = *name;
  const Result<Done> shaped = shape_sheet(document.sheet, {wanted.mid_lat_deg, wanted.mid_lon_deg, wanted.scale, wanted.paper});
  if (!shaped) return shaped.problem();
  const Result<Date> date = checks::date(wanted.date);
  if (!date) return date.problem();
  document.sheet.date = *date;
  const Projection projection = projection_of(document);
  document.roses = document.roses.with(corner_rose(projection, {document.next_id++}));
  return document;
}

Result<Done> reshape_sheet(History& history, const SheetShape& wanted) {
  Document next = history.now();
  const Result<Done> shaped = shape_sheet(next.sheet, wanted);
  if (!shaped) return shaped;
  const Projection projection = projection_of(next);
  OffSheet off = off_sheet(next, projection);
  if (off.count > 0) return Problem{.fault = Fault::things_off_sheet, .texts = std::move(off.names), .numbers = {static_cast<double>(off.count)}};
  for (const Rose& rose : history.now().roses) {
    if (lies_on_sheet(projection, rose.at)) continue;
    Rose moved = corner_rose(projection, rose.id);
    moved.radius_mm = std::min(moved.radius_mm, rose.radius_mm);
    moved.own_place = rose.own_place;
    next.roses = next.roses.replaced(moved);
  }
  history.commit(std::move(next), {Act::reshape_sheet, {}});
  return Done{};
}

Result<SheetShape> shape_around_marks(const Document& document, Paper paper) {
  constexpr double k_clear_mm = 15;
  std::vector<Position> places;
  for (const Mark& mark : document.marks) places.push_back(unquantise(mark.at));
  if (places.empty()) return Fault::no_marks_to_fit;
  const Result<FittedSheet> fitted = sheet_holding(places, paper, k_clear_mm);
  if (!fitted) return fitted.problem();
  return SheetShape{.mid_lat_deg = fitted->middle.lat_deg, .mid_lon_deg = fitted->middle.lon_deg, .scale = fitted->scale, .paper = paper};
}

Result<Done> describe_sheet(History& history, const SheetDetails& wanted) {
  Document next = history.now();
  Sheet& sheet = next.sheet;
  if (wanted.name) {
    const Result<std::string> name = checks::name_or_none(*wanted.name);
    if (!name) return name.problem();
    sheet.name = *name;
  }
  if (wanted.note) {
    const Result<std::string> note = checks::note_or_none(*wanted.note);
    if (!note) return note.problem();
    sheet.note = *note;
  }
  if (wanted.datum) {
    const Result<std::string> datum = checks::name(*wanted.datum);
    if (!datum) return datum.problem();
    sheet.datum = *datum;
  }
  if (wanted.signs) sheet.signs = *wanted.signs;
  std::string name = sheet.name;
  history.commit(std::move(next), {Act::describe_sheet, std::move(name)});
  return Done{};
}

Result<Done> set_date(History& history, Date date) {
  const Result<Date> checked = checks::date(date);
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
  const Result<double> value = checks::number("variation", printed->value_deg, -k_most_variation_deg, k_most_variation_deg);
  if (!value) return value.problem();
  const Result<double> year = checks::number("year", printed->year, k_first_sheet_year, k_last_sheet_year);
  if (!year) return year.problem();
  const Result<double> change =
      checks::number("annual change", printed->annual_change_min, -k_most_annual_change_min, k_most_annual_change_min);
  if (!change) return change.problem();
  const PrintedVariation kept{
      .value_deg = from_parts(whole_parts(*value, k_parts_per_degree), k_parts_per_degree),
      .year = printed->year,
      .annual_change_min = from_parts(whole_parts(*change, k_parts_per_annual_minute), k_parts_per_annual_minute)};
  next.chart_note = ChartNote{.printed = kept, .entered_at = next.sheet.middle};
  history.commit(std::move(next), {Act::set_chart_note, {}});
  return Done{};
}

Result<Done> use_card(History& history, KeptCard card) {
  if (card.points.empty()) return Fault::no_card;
  Result<KeptCard> kept = as_kept(std::move(card));
  if (!kept) return kept.problem();
  Document next = history.now();
  const std::string subject = kept->boat;
  next.compass = Shared(std::move(kept).value());
  history.commit(std::move(next), {Act::use_card, subject});
  return Done{};
}

Result<Done> drop_card(History& history) {
  Document next = history.now();
  next.compass.reset();
  history.commit(std::move(next), {Act::drop_card, {}});
  return Done{};
}

}  // namespace fogsheet
