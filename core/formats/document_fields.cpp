#include "core/formats/document_fields.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/base/check.h"
#include "core/base/utf8.h"

namespace fogsheet::fields {
namespace {

// Codes of the format, as those in the header.
constexpr Reference k_references[] = {Reference::true_north, Reference::magnetic, Reference::compass};
constexpr SignSet k_sign_sets[] = {SignSet::a, SignSet::b};

constexpr std::int64_t k_most_grid_lat = 45'000'000;
constexpr std::int64_t k_grid_half_circle = 108'000'000;

bool is_within(std::int64_t value, std::int64_t least, std::int64_t most) { return value >= least && value <= most; }

template <class Value, std::size_t count>
void write_code(ByteWriter& out, const Value (&list)[count], Value value) {
  const auto found = std::find(std::begin(list), std::end(list), value);
  SHEET_CHECK(found != std::end(list), "a value without a code in the format");
  out.whole(static_cast<std::uint64_t>(found - std::begin(list)));
}

template <class Value, std::size_t count>
bool read_code(ByteReader& in, const Value (&list)[count], Value& value) {
  const std::uint64_t code = in.whole();
  if (!in.ok() || code >= count) return false;
  value = list[code];
  return true;
}

void write_parts(ByteWriter& out, double value, double parts_per_unit) { out.whole(static_cast<std::uint64_t>(whole_parts(value, parts_per_unit))); }

// Whole parts between two bounds, which are whole parts too.
bool read_parts(ByteReader& in, double& value, double parts_per_unit, double least, double most) {
  const std::uint64_t parts = in.whole();
  if (!in.ok() || parts > static_cast<std::uint64_t>(whole_parts(most, parts_per_unit))) return false;
  if (parts < static_cast<std::uint64_t>(whole_parts(least, parts_per_unit))) return false;
  value = from_parts(static_cast<std::int64_t>(parts), parts_per_unit);
  return true;
}

int small_number(std::uint64_t value) { return static_cast<int>(std::min<std::uint64_t>(value, 10'000'000)); }

}  // namespace

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

void write_paper(ByteWriter& out, Paper paper) { write_code(out, k_papers, paper); }
bool read_paper(ByteReader& in, Paper& paper) { return read_code(in, k_papers, paper); }
void write_kind(ByteWriter& out, MarkKind kind) { write_code(out, k_kinds, kind); }
bool read_kind(ByteReader& in, MarkKind& kind) { return read_code(in, k_kinds, kind); }
void write_reference(ByteWriter& out, Reference reference) { write_code(out, k_references, reference); }
bool read_reference(ByteReader& in, Reference& reference) { return read_code(in, k_references, reference); }
void write_signs(ByteWriter& out, SignSet signs) { write_code(out, k_sign_sets, signs); }
bool read_signs(ByteReader& in, SignSet& signs) { return read_code(in, k_sign_sets, signs); }
void write_switch(ByteWriter& out, bool on) { out.whole(on ? 1 : 0); }

bool read_switch(ByteReader& in, bool& on) {
  const std::uint64_t value = in.whole();
  on = value == 1;
  return in.ok() && value <= 1;
}

bool read_text(ByteReader& in, std::string& text, std::size_t most_bytes) {
  const std::string_view read = in.text(most_bytes);
  if (!in.ok() || !is_utf8(read)) return false;
  text = repaired_utf8(read);
  return true;
}

bool read_name(ByteReader& in, std::string& name) { return read_text(in, name, k_most_name_bytes) && !name.empty(); }

void write_date(ByteWriter& out, Date date) {
  out.whole(static_cast<std::uint64_t>(date.year - k_first_sheet_year));
  out.whole(static_cast<std::uint64_t>(date.month));
  out.whole(static_cast<std::uint64_t>(date.day));
}

bool read_date(ByteReader& in, Date& date) {
  date.year = k_first_sheet_year + small_number(in.whole());
  date.month = small_number(in.whole());
  date.day = small_number(in.whole());
  return in.ok() && is_sheet_date(date);
}

void write_danger_radius(ByteWriter& out, double radius_nm) { write_parts(out, radius_nm, k_parts_per_nm); }
bool read_danger_radius(ByteReader& in, double& radius_nm) {
  return read_parts(in, radius_nm, k_parts_per_nm, 1 / k_parts_per_nm, k_most_danger_radius_nm);
}

void write_height(ByteWriter& out, double height_m) { write_parts(out, height_m, k_parts_per_metre); }
bool read_height(ByteReader& in, double& height_m) { return read_parts(in, height_m, k_parts_per_metre, 0, k_most_height_m); }

void write_rose_radius(ByteWriter& out, double radius_mm) { write_parts(out, radius_mm, k_parts_per_mm); }
bool read_rose_radius(ByteReader& in, double& radius_mm) {
  return read_parts(in, radius_mm, k_parts_per_mm, k_least_rose_radius_mm, k_most_rose_radius_mm);
}

bool read_scale(ByteReader& in, int& scale) {
  scale = small_number(in.whole());
  return in.ok() && scale >= k_least_scale && scale <= k_greatest_scale;
}

void write_reading(ByteWriter& out, const WrittenReading& reading, GridPosition& previous) {
  write_parts(out, reading.bearing_deg, k_parts_per_written_degree);
  write_reference(out, reading.reference);
  out.whole(reading.revision);
  write_position(out, reading.from_at, previous);
  write_position(out, reading.to_at, previous);
}

bool read_reading(ByteReader& in, WrittenReading& reading, GridPosition& previous) {
  constexpr double k_last_bearing_deg = 359.9;
  if (!read_parts(in, reading.bearing_deg, k_parts_per_written_degree, 0, k_last_bearing_deg)) return false;
  if (!read_reference(in, reading.reference)) return false;
  const std::uint64_t revision = in.whole();
  if (!in.ok() || revision > UINT32_MAX) return false;
  reading.revision = static_cast<std::uint32_t>(revision);
  return read_position(in, reading.from_at, previous) && read_position(in, reading.to_at, previous);
}

void write_chart_note(ByteWriter& out, const ChartNote& note, GridPosition& previous) {
  out.signed_whole(whole_parts(note.printed.value_deg, k_parts_per_degree));
  out.whole(static_cast<std::uint64_t>(note.printed.year - k_first_sheet_year));
  out.signed_whole(whole_parts(note.printed.annual_change_min, k_parts_per_annual_minute));
  write_position(out, note.entered_at, previous);
}

bool read_chart_note(ByteReader& in, ChartNote& note, GridPosition& previous) {
  const std::int64_t value_parts = in.signed_whole();
  const int year = k_first_sheet_year + small_number(in.whole());
  const std::int64_t change_parts = in.signed_whole();
  const std::int64_t most_value = whole_parts(k_most_variation_deg, k_parts_per_degree);
  const std::int64_t most_change = whole_parts(k_most_annual_change_min, k_parts_per_annual_minute);
  if (!read_position(in, note.entered_at, previous)) return false;
  if (!is_within(value_parts, -most_value, most_value) || !is_within(change_parts, -most_change, most_change)) return false;
  if (year > k_last_sheet_year) return false;
  note.printed = {.value_deg = from_parts(value_parts, k_parts_per_degree),
                  .year = year,
                  .annual_change_min = from_parts(change_parts, k_parts_per_annual_minute)};
  return true;
}

}  // namespace fogsheet::fields
