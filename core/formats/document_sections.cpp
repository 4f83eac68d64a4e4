#include "core/formats/document_sections.h"

#include <cstdint>
#include <utility>
#include <vector>

#include "core/base/utf8.h"
#include "core/formats/boat_fields.h"
#include "core/formats/document_fields.h"
#include "core/formats/packed_document.h"
#include "core/formats/passage_fields.h"

namespace fogsheet {
namespace {

using fields::read_id;
using fields::read_position;
using fields::write_id;
using fields::write_position;

// The datum that nearly every sheet has is written as no name at all.
constexpr std::string_view k_usual_datum = "WGS84";

Problem bad(Section section, std::size_t index = 0) {
  return {.fault = Fault::text_section, .texts = {std::string(section_name(section))}, .numbers = {static_cast<double>(index)}};
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
Result<Done> read_sheet(ByteReader& in, Sheet& sheet) {
  GridPosition origin;
  const bool all_read = fields::read_text(in, sheet.name, k_most_name_bytes) && read_position(in, sheet.middle, origin) &&
                        fields::read_scale(in, sheet.scale) && fields::read_paper(in, sheet.paper) &&
                        fields::read_date(in, sheet.date) && fields::read_text(in, sheet.datum, k_most_name_bytes);
  if (!all_read || !in.at_end()) return bad(Section::sheet);
  if (sheet.datum.empty()) sheet.datum = k_usual_datum;
  if (!sheet_within_bounds(unquantise(sheet.middle), sheet.scale, sheet.paper)) return bad(Section::sheet);
  return Done{};
}

// A mark: id, kind, latitude, longitude, name, and for a danger its radius in 0.001 nm.
Result<Done> read_marks(ByteReader& in, Document& document) {
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return read_rows(Section::marks, in, k_most_marks, document.marks, [&](Mark& mark) {
    if (!read_id(in, mark.id.value, expected_id) || !fields::read_kind(in, mark.kind)) return false;
    if (!read_position(in, mark.at, previous) || !fields::read_name(in, mark.name)) return false;
    expected_id = mark.id.value + 1;
    return mark.kind != MarkKind::danger || fields::read_danger_radius(in, mark.radius_nm);
  });
}

// A leg: id, where from (mostly where the leg before ended), where to.
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
Result<Done> read_roses(ByteReader& in, Document& document) {
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return read_rows(Section::roses, in, k_most_roses, document.roses, [&](Rose& rose) {
    if (!read_id(in, rose.id.value, expected_id) || !read_position(in, rose.at, previous)) return false;
    expected_id = rose.id.value + 1;
    return fields::read_rose_radius(in, rose.radius_mm);
  });
}

ByteWriter written_chart_note(const Document& document) {
  ByteWriter out;
  GridPosition previous = document.sheet.middle;
  fields::write_chart_note(out, *document.chart_note, previous);
  return out;
}

Result<Done> read_chart_note(ByteReader& in, Document& document) {
  GridPosition previous = document.sheet.middle;
  ChartNote note;
  if (!fields::read_chart_note(in, note, previous) || !in.at_end()) return bad(Section::chart_note);
  document.chart_note = note;
  return Done{};
}

Result<Done> read_next_id(ByteReader& in, Document& document) {
  const std::uint64_t next_id = in.whole();
  if (!in.at_end() || next_id == 0 || next_id > k_most_id) return bad(Section::next_id);
  document.next_id = static_cast<std::uint32_t>(next_id);
  return Done{};
}

// What some rows of an earlier section have besides: how many, then for each its place after the one before, and its fields.
template <class Row, class Has, class WriteDetail>
std::optional<ByteWriter> written_details(const Table<Row>& table, Has has, WriteDetail write_detail) {
  ByteWriter rows;
  std::uint64_t count = 0, place = 0, expected = 0;
  for (const Row& row : table) {
    if (has(row)) {
      rows.whole(place - expected);
      write_detail(rows, row);
      expected = place + 1;
      ++count;
    }
    ++place;
  }
  if (count == 0) return std::nullopt;
  ByteWriter out;
  out.whole(count);
  out.raw(rows.bytes());
  return out;
}

template <class Row, class ReadDetail>
Result<Done> read_details(Section section, ByteReader& in, Table<Row>& table, ReadDetail read_detail) {
  const std::uint64_t count = in.whole();
  if (!in.ok() || count == 0 || count > table.size()) return bad(section);
  std::vector<Row> rows(table.begin(), table.end());
  std::uint64_t place = 0;
  for (std::uint64_t index = 0; index < count; ++index) {
    const std::uint64_t skipped = in.whole();
    if (!in.ok() || skipped >= rows.size() - place) return bad(section, static_cast<std::size_t>(index));
    place += skipped;
    if (!read_detail(rows[static_cast<std::size_t>(place)])) return bad(section, static_cast<std::size_t>(index));
    ++place;
  }
  if (!in.at_end()) return bad(section, static_cast<std::size_t>(count));
  table = Table<Row>::of(std::move(rows));
  return Done{};
}

// What a mark has besides: height in 0.1 m, note.
bool has_details(const Mark& mark) { return mark.height_m != 0 || !mark.note.empty(); }

std::optional<ByteWriter> written_mark_details(const Document& document) {
  return written_details(document.marks, has_details, [](ByteWriter& out, const Mark& mark) {
    fields::write_height(out, mark.height_m);
    out.text(mark.note);
  });
}

Result<Done> read_mark_details(ByteReader& in, Document& document) {
  return read_details(Section::mark_details, in, document.marks, [&](Mark& mark) {
    return fields::read_height(in, mark.height_m) && fields::read_text(in, mark.note, k_most_note_bytes) && has_details(mark);
  });
}

// What was read by hand and written on a leg.
std::optional<ByteWriter> written_readings(const Document& document) {
  GridPosition previous = document.sheet.middle;
  return written_details(document.legs, [](const Leg& leg) { return leg.written.has_value(); },
                         [&](ByteWriter& out, const Leg& leg) { fields::write_reading(out, *leg.written, previous); });
}

Result<Done> read_readings(ByteReader& in, Document& document) {
  GridPosition previous = document.sheet.middle;
  return read_details(Section::readings, in, document.legs, [&](Leg& leg) { return fields::read_reading(in, leg.written.emplace(), previous); });
}

// Which roses show the variation of their own place: nothing more to say of each.
std::optional<ByteWriter> written_own_places(const Document& document) {
  return written_details(document.roses, [](const Rose& rose) { return rose.own_place; }, [](ByteWriter&, const Rose&) {});
}

Result<Done> read_own_places(ByteReader& in, Document& document) {
  return read_details(Section::own_places, in, document.roses, [](Rose& rose) { return rose.own_place = true; });
}

// What the sheet has besides: note, set of signs.
std::optional<ByteWriter> written_sheet_details(const Sheet& sheet) {
  if (sheet.note.empty() && sheet.signs == SignSet::a) return std::nullopt;
  ByteWriter out;
  out.text(sheet.note);
  fields::write_signs(out, sheet.signs);
  return out;
}

Result<Done> read_sheet_details(ByteReader& in, Sheet& sheet) {
  if (!fields::read_text(in, sheet.note, k_most_note_bytes) || !fields::read_signs(in, sheet.signs)) return bad(Section::sheet_details);
  if (!in.at_end()) return bad(Section::sheet_details);
  return Done{};
}

// A text note: id, latitude, longitude, text.
ByteWriter written_text_notes(const Document& document) {
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return written_rows(document.text_notes, [&](ByteWriter& out, const TextNote& note) {
    write_id(out, note.id.value, expected_id);
    write_position(out, note.at, previous);
    out.text(note.text);
    expected_id = note.id.value + 1;
  });
}

Result<Done> read_text_notes(ByteReader& in, Document& document) {
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return read_rows(Section::text_notes, in, k_most_text_notes, document.text_notes, [&](TextNote& note) {
    if (!read_id(in, note.id.value, expected_id) || !read_position(in, note.at, previous)) return false;
    expected_id = note.id.value + 1;
    return fields::read_text(in, note.text, k_most_note_bytes) && !note.text.empty();
  });
}

ByteWriter written_compass(const Document& document) {
  ByteWriter out;
  out.raw(bytes_of(*document.compass));
  return out;
}

Result<Done> read_compass(ByteReader& in, Document& document) {
  Result<KeptCard> card = kept_card_from(in.raw(in.left()));
  if (!card) return card.problem();
  document.compass = Shared(std::move(card).value());
  return Done{};
}

ByteWriter written_passages(const Document& document) {
  ByteWriter out;
  out.raw(bytes_of(*document.passages));
  return out;
}

Result<Done> read_passages(ByteReader& in, Document& document) {
  Result<Passages> passages = passages_from(in.raw(in.left()));
  if (!passages) return passages.problem();
  document.passages = Shared(std::move(passages).value());
  return Done{};
}

Result<Done> read_packed(ByteReader& in, Document& document) {
  Result<Document> unpacked = unpack(in.raw(in.left()));
  if (!unpacked) return unpacked.problem();
  document = std::move(unpacked).value();
  return Done{};
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
    case Section::mark_details: return "mark details";
    case Section::readings: return "readings";
    case Section::own_places: return "own places";
    case Section::sheet_details: return "sheet details";
    case Section::text_notes: return "text notes";
    case Section::compass: return "compass";
    case Section::passages: return "passages";
    case Section::packed: return "packed";
  }
  check_failed("section", "a section without a name", __FILE__, __LINE__);
}

bool is_required(Section section) { return section == Section::sheet || section == Section::next_id; }

std::optional<ByteWriter> write_section(const Document& document, Section section) {
  switch (section) {
    case Section::sheet: case Section::marks: case Section::legs: case Section::roses: case Section::next_id: case Section::packed: return std::nullopt;
    case Section::chart_note: return document.chart_note ? std::optional(written_chart_note(document)) : std::nullopt;
    case Section::mark_details: return written_mark_details(document);
    case Section::readings: return written_readings(document);
    case Section::own_places: return written_own_places(document);
    case Section::sheet_details: return written_sheet_details(document.sheet);
    case Section::text_notes: return document.text_notes.empty() ? std::nullopt : std::optional(written_text_notes(document));
    case Section::compass: return document.compass ? std::optional(written_compass(document)) : std::nullopt;
    case Section::passages: return document.passages ? std::optional(written_passages(document)) : std::nullopt;
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
    case Section::mark_details: return read_mark_details(in, document);
    case Section::readings: return read_readings(in, document);
    case Section::own_places: return read_own_places(in, document);
    case Section::sheet_details: return read_sheet_details(in, document.sheet);
    case Section::text_notes: return read_text_notes(in, document);
    case Section::compass: return read_compass(in, document);
    case Section::passages: return read_passages(in, document);
    case Section::packed: return read_packed(in, document);
  }
  check_failed("section", "a section that is not read", __FILE__, __LINE__);
}

}  // namespace fogsheet
