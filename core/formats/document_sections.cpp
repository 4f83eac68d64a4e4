#include "core/formats/document_sections.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <tuple>
#include <utility>
#include <vector>

#include "core/base/utf8.h"

namespace fogsheet {
namespace {

// Codes of the format: the place in each list. New ones go at the end.
constexpr Paper k_papers[] = {Paper::a4_upright,     Paper::a4_across,     Paper::a3_upright,
                              Paper::a3_across,      Paper::letter_upright, Paper::letter_across,
                              Paper::tabloid_upright, Paper::tabloid_across, Paper::screen};
constexpr MarkKind k_kinds[] = {MarkKind::landmark, MarkKind::light, MarkKind::turn, MarkKind::danger, MarkKind::other};

// The datum that nearly every sheet has is written as no name at all.
constexpr std::string_view k_usual_datum = "WGS84";

// Marks are placed within the neat line exactly; texts must go on loading where the last digit of a sine differs.
constexpr double k_mark_slack_mm = 0.01;

constexpr std::int64_t k_most_grid_lat = 45'000'000;
constexpr std::int64_t k_grid_half_circle = 108'000'000;

Problem bad(Section section, std::size_t index = 0) {
  return {.fault = Fault::text_section, .texts = {std::string(section_name(section))}, .numbers = {static_cast<double>(index)}};
}

template <class Value, std::size_t count>
std::uint64_t code_of(const Value (&list)[count], Value value) {
  const auto found = std::find(std::begin(list), std::end(list), value);
  SHEET_CHECK(found != std::end(list), "a value without a code in the format");
  return static_cast<std::uint64_t>(found - std::begin(list));
}

template <class Value, std::size_t count>
std::optional<Value> value_of(const Value (&list)[count], std::uint64_t code) {
  if (code >= count) return std::nullopt;
  return list[code];
}

bool is_within(std::int64_t value, std::int64_t least, std::int64_t most) { return value >= least && value <= most; }

// Positions are written as steps from the one before, longitude the short way round.
void write_position(ByteWriter& out, GridPosition at, GridPosition& previous) {
  std::int64_t east = static_cast<std::int64_t>(at.lon) - previous.lon;
  if (east < -k_grid_half_circle) east += 2 * k_grid_half_circle;
  if (east >= k_grid_half_circle) east -= 2 * k_grid_half_circle;
  out.signed_whole(static_cast<std::int64_t>(at.lat) - previous.lat);
  out.signed_whole(east);
  previous = at;
}

bool read_position(ByteReader& in, GridPosition& at, GridPosition& previous) {
  const std::int64_t north = in.signed_whole();
  const std::int64_t east = in.signed_whole();
  if (!in.ok() || !is_within(north, -2 * k_most_grid_lat, 2 * k_most_grid_lat)) return false;
  if (!is_within(east, -k_grid_half_circle, k_grid_half_circle - 1)) return false;
  const std::int64_t lat = previous.lat + north;
  std::int64_t lon = previous.lon + east;
  if (lon < -k_grid_half_circle) lon += 2 * k_grid_half_circle;
  if (lon >= k_grid_half_circle) lon -= 2 * k_grid_half_circle;
  if (!is_within(lat, -k_most_grid_lat, k_most_grid_lat)) return false;
  at = {.lat = static_cast<std::int32_t>(lat), .lon = static_cast<std::int32_t>(lon)};
  previous = at;
  return true;
}

// Ids are written as steps from an expected one: in a row that is mostly the one after the row before.
void write_id(ByteWriter& out, std::uint32_t id, std::uint32_t expected) {
  out.signed_whole(static_cast<std::int64_t>(id) - static_cast<std::int64_t>(expected));
}

bool read_id(ByteReader& in, std::uint32_t& id, std::uint32_t expected) {
  const std::int64_t step = in.signed_whole();
  if (!in.ok() || !is_within(step, -static_cast<std::int64_t>(k_most_id), k_most_id)) return false;
  const std::int64_t value = static_cast<std::int64_t>(expected) + step;
  if (!is_within(value, 1, k_most_id - 1)) return false;
  id = static_cast<std::uint32_t>(value);
  return true;
}

// A table's rows: how many, then each. The count is believed only as far as there are bytes to back it.
template <class Row, class WriteRow>
ByteWriter written_rows(const Table<Row>& table, WriteRow write_row) {
  ByteWriter out;
  out.whole(table.size());
  for (const Row& row : table) write_row(out, row);
  return out;
}

template <class Row, class ReadRow>
Result<Done> read_rows(Section section, ByteReader& in, std::size_t most, Table<Row>& table, ReadRow read_row) {
  const std::uint64_t count = in.whole();
  if (!in.ok() || count > most || count > in.left()) return bad(section);
  std::vector<Row> rows;
  rows.reserve(static_cast<std::size_t>(count));
  for (std::uint64_t index = 0; index < count; ++index) {
    Row row;
    if (!read_row(row) || !in.ok()) return bad(section, static_cast<std::size_t>(index));
    rows.push_back(std::move(row));
  }
  if (!in.at_end()) return bad(section, static_cast<std::size_t>(count));
  table = Table<Row>::of(std::move(rows));
  return Done{};
}

// The sheet: name, latitude, longitude, scale, paper, year from 1900, month, day, datum.
ByteWriter written_sheet(const Sheet& sheet) {
  ByteWriter out;
  out.text(sheet.name);
  GridPosition origin;
  write_position(out, sheet.middle, origin);
  out.whole(static_cast<std::uint64_t>(sheet.scale));
  out.whole(code_of(k_papers, sheet.paper));
  out.whole(static_cast<std::uint64_t>(sheet.date.year - k_first_sheet_year));
  out.whole(static_cast<std::uint64_t>(sheet.date.month));
  out.whole(static_cast<std::uint64_t>(sheet.date.day));
  out.text(sheet.datum == k_usual_datum ? std::string_view{} : std::string_view(sheet.datum));
  return out;
}

int small_number(std::uint64_t value) { return static_cast<int>(std::min<std::uint64_t>(value, 10'000'000)); }

Result<Done> read_sheet(ByteReader& in, Sheet& sheet) {
  sheet.name = in.text(k_most_name_bytes);
  GridPosition origin;
  if (!read_position(in, sheet.middle, origin)) return bad(Section::sheet);
  sheet.scale = small_number(in.whole());
  const std::optional<Paper> paper = value_of(k_papers, in.whole());
  sheet.date.year = k_first_sheet_year + small_number(in.whole());
  sheet.date.month = small_number(in.whole());
  sheet.date.day = small_number(in.whole());
  sheet.datum = in.text(k_most_name_bytes);
  if (sheet.datum.empty()) sheet.datum = k_usual_datum;
  if (!in.at_end() || !paper || !is_sheet_date(sheet.date)) return bad(Section::sheet);
  if (!is_utf8(sheet.name) || !is_utf8(sheet.datum)) return bad(Section::sheet);
  if (sheet.scale < k_least_scale || sheet.scale > k_greatest_scale) return bad(Section::sheet);
  sheet.paper = *paper;
  if (!sheet_within_bounds(unquantise(sheet.middle), sheet.scale, sheet.paper)) return bad(Section::sheet);
  return Done{};
}

// A mark: id, kind, latitude, longitude, name, and for a danger its radius in 0.001 nm.
ByteWriter written_marks(const Document& document) {
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return written_rows(document.marks, [&](ByteWriter& out, const Mark& mark) {
    write_id(out, mark.id.value, expected_id);
    out.whole(code_of(k_kinds, mark.kind));
    write_position(out, mark.at, previous);
    out.text(mark.name);
    if (mark.kind == MarkKind::danger) out.whole(static_cast<std::uint64_t>(whole_parts(mark.radius_nm, k_parts_per_nm)));
    expected_id = mark.id.value + 1;
  });
}

Result<Done> read_marks(ByteReader& in, Document& document) {
  const Projection projection = projection_of(document);
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return read_rows(Section::marks, in, k_most_marks, document.marks, [&](Mark& mark) {
    if (!read_id(in, mark.id.value, expected_id)) return false;
    const std::optional<MarkKind> kind = value_of(k_kinds, in.whole());
    if (!kind || !read_position(in, mark.at, previous) || !lies_on_sheet(projection, mark.at, k_mark_slack_mm)) return false;
    mark.kind = *kind;
    mark.name = in.text(k_most_name_bytes);
    if (mark.name.empty() || !is_utf8(mark.name)) return false;
    expected_id = mark.id.value + 1;
    if (mark.kind != MarkKind::danger) return true;
    const std::uint64_t parts = in.whole();
    if (parts == 0 || parts > static_cast<std::uint64_t>(whole_parts(k_most_danger_radius_nm, k_parts_per_nm))) return false;
    mark.radius_nm = from_parts(static_cast<std::int64_t>(parts), k_parts_per_nm);
    return true;
  });
}

// A leg: id, where from (mostly where the leg before ended), where to.
ByteWriter written_legs(const Document& document) {
  std::uint32_t expected_id = 1;
  std::uint32_t expected_from = 1;
  return written_rows(document.legs, [&](ByteWriter& out, const Leg& leg) {
    write_id(out, leg.id.value, expected_id);
    write_id(out, leg.from.value, expected_from);
    write_id(out, leg.to.value, leg.from.value);
    expected_id = leg.id.value + 1;
    expected_from = leg.to.value;
  });
}

Result<Done> read_legs(ByteReader& in, Document& document) {
  std::uint32_t expected_id = 1;
  std::uint32_t expected_from = 1;
  return read_rows(Section::legs, in, k_most_legs, document.legs, [&](Leg& leg) {
    if (!read_id(in, leg.id.value, expected_id) || !read_id(in, leg.from.value, expected_from)) return false;
    if (!read_id(in, leg.to.value, leg.from.value)) return false;
    expected_id = leg.id.value + 1;
    expected_from = leg.to.value;
    return true;
  });
}

// A rose: id, latitude, longitude, radius in 0.1 mm.
ByteWriter written_roses(const Document& document) {
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return written_rows(document.roses, [&](ByteWriter& out, const Rose& rose) {
    write_id(out, rose.id.value, expected_id);
    write_position(out, rose.at, previous);
    out.whole(static_cast<std::uint64_t>(whole_parts(rose.radius_mm, k_parts_per_mm)));
    expected_id = rose.id.value + 1;
  });
}

Result<Done> read_roses(ByteReader& in, Document& document) {
  const Projection projection = projection_of(document);
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return read_rows(Section::roses, in, k_most_roses, document.roses, [&](Rose& rose) {
    if (!read_id(in, rose.id.value, expected_id) || !read_position(in, rose.at, previous)) return false;
    if (!lies_on_sheet(projection, rose.at, k_mark_slack_mm)) return false;
    rose.radius_mm = from_parts(small_number(in.whole()), k_parts_per_mm);
    expected_id = rose.id.value + 1;
    return rose.radius_mm >= k_least_rose_radius_mm && rose.radius_mm <= k_most_rose_radius_mm;
  });
}

// The chart's note: value in 1e-9 deg, year from 1900, annual change in 1e-6', the middle it was entered at.
ByteWriter written_chart_note(const Document& document) {
  const ChartNote& note = *document.chart_note;
  ByteWriter out;
  out.signed_whole(whole_parts(note.printed.value_deg, k_parts_per_degree));
  out.whole(static_cast<std::uint64_t>(note.printed.year - k_first_sheet_year));
  out.signed_whole(whole_parts(note.printed.annual_change_min, k_parts_per_annual_minute));
  GridPosition previous = document.sheet.middle;
  write_position(out, note.entered_at, previous);
  return out;
}

Result<Done> read_chart_note(ByteReader& in, Document& document) {
  const std::int64_t value_parts = in.signed_whole();
  const int year = k_first_sheet_year + small_number(in.whole());
  const std::int64_t change_parts = in.signed_whole();
  const std::int64_t most_value = whole_parts(k_most_variation_deg, k_parts_per_degree);
  const std::int64_t most_change = whole_parts(k_most_annual_change_min, k_parts_per_annual_minute);
  ChartNote note;
  GridPosition previous = document.sheet.middle;
  if (!read_position(in, note.entered_at, previous) || !in.at_end()) return bad(Section::chart_note);
  if (!is_within(value_parts, -most_value, most_value)) return bad(Section::chart_note);
  if (!is_within(change_parts, -most_change, most_change)) return bad(Section::chart_note);
  if (year > k_last_sheet_year) return bad(Section::chart_note);
  note.printed = {.value_deg = from_parts(value_parts, k_parts_per_degree),
                  .year = year,
                  .annual_change_min = from_parts(change_parts, k_parts_per_annual_minute)};
  document.chart_note = note;
  return Done{};
}

ByteWriter written_next_id(const Document& document) {
  ByteWriter out;
  out.whole(document.next_id);
  return out;
}

Result<Done> read_next_id(ByteReader& in, Document& document) {
  const std::uint64_t next_id = in.whole();
  if (!in.at_end() || next_id == 0 || next_id > k_most_id) return bad(Section::next_id);
  document.next_id = static_cast<std::uint32_t>(next_id);
  return Done{};
}

// A row's id, and the row's place for naming the one that is wrong.
struct Owner {
  std::uint32_t id;
  Section section;
  std::size_t index;
};

template <class Row>
void collect_ids(const Table<Row>& table, Section section, std::vector<Owner>& owners) {
  std::size_t index = 0;
  for (const Row& row : table) owners.push_back({row.id.value, section, index++});
}

}  // namespace

std::string_view section_name(Section section) {
  switch (section) {
    case Section::sheet: return "sheet";
    case Section::marks: return "marks";
    case Section::legs: return "legs";
    case Section::roses: return "roses";
    case Section::chart_note: return "chart note";
    case Section::next_id: return "next id";
  }
  check_failed("section", "a section without a name", __FILE__, __LINE__);
}

bool is_required(Section section) { return section == Section::sheet || section == Section::next_id; }

std::optional<ByteWriter> write_section(const Document& document, Section section) {
  switch (section) {
    case Section::sheet: return written_sheet(document.sheet);
    case Section::marks: return document.marks.empty() ? std::nullopt : std::optional(written_marks(document));
    case Section::legs: return document.legs.empty() ? std::nullopt : std::optional(written_legs(document));
    case Section::roses: return document.roses.empty() ? std::nullopt : std::optional(written_roses(document));
    case Section::chart_note: return !document.chart_note ? std::nullopt : std::optional(written_chart_note(document));
    case Section::next_id: return written_next_id(document);
  }
  check_failed("section", "a section that is not written", __FILE__, __LINE__);
}

Result<Done> read_section(Section section, std::span<const std::uint8_t> bytes, Document& document) {
  ByteReader in(bytes);
  switch (section) {
    case Section::sheet: return read_sheet(in, document.sheet);
    case Section::marks: return read_marks(in, document);
    case Section::legs: return read_legs(in, document);
    case Section::roses: return read_roses(in, document);
    case Section::chart_note: return read_chart_note(in, document);
    case Section::next_id: return read_next_id(in, document);
  }
  check_failed("section", "a section that is not read", __FILE__, __LINE__);
}

Result<Done> check_references(const Document& document) {
  std::vector<Owner> owners;
  collect_ids(document.marks, Section::marks, owners);
  collect_ids(document.legs, Section::legs, owners);
  collect_ids(document.roses, Section::roses, owners);
  std::stable_sort(owners.begin(), owners.end(), [](const Owner& a, const Owner& b) { return a.id < b.id; });
  for (std::size_t i = 0; i < owners.size(); ++i) {
    const bool taken = i > 0 && owners[i].id == owners[i - 1].id;
    if (taken || owners[i].id >= document.next_id) return bad(owners[i].section, owners[i].index);
  }

  std::vector<std::pair<std::uint32_t, GridPosition>> places;
  for (const Mark& mark : document.marks) places.emplace_back(mark.id.value, mark.at);
  std::sort(places.begin(), places.end());
  const auto place_of = [&](MarkId id) -> const GridPosition* {
    const auto found = std::lower_bound(places.begin(), places.end(), std::pair(id.value, GridPosition{INT32_MIN, INT32_MIN}));
    return found != places.end() && found->first == id.value ? &found->second : nullptr;
  };
  std::vector<std::tuple<MarkId, MarkId, std::size_t>> ends;
  std::size_t index = 0;
  for (const Leg& leg : document.legs) {
    const GridPosition* from = place_of(leg.from);
    const GridPosition* to = place_of(leg.to);
    if (!from || !to || *from == *to) return bad(Section::legs, index);
    ends.emplace_back(leg.from, leg.to, index++);
  }
  std::sort(ends.begin(), ends.end());
  for (std::size_t i = 1; i < ends.size(); ++i) {
    const auto& [from, to, place] = ends[i];
    if (from == std::get<0>(ends[i - 1]) && to == std::get<1>(ends[i - 1])) return bad(Section::legs, place);
  }
  return Done{};
}

}  // namespace fogsheet
