#include "tests/core/plain_text.h"

#include "core/formats/base64url.h"
#include "core/formats/crc32.h"
#include "core/formats/document_fields.h"
#include "core/formats/document_sections.h"

namespace fogsheet {
namespace {

using fields::write_id;
using fields::write_position;

template <class Row, class WriteRow>
ByteWriter written_rows(const Table<Row>& table, WriteRow write_row) {
  ByteWriter out;
  out.whole(table.size());
  for (const Row& row : table) write_row(out, row);
  return out;
}

ByteWriter written_sheet(const Sheet& sheet) {
  ByteWriter out;
  out.text(sheet.name);
  GridPosition origin;
  write_position(out, sheet.middle, origin);
  out.whole(static_cast<std::uint64_t>(sheet.scale));
  fields::write_paper(out, sheet.paper);
  fields::write_date(out, sheet.date);
  out.text(sheet.datum == "WGS84" ? std::string_view{} : std::string_view(sheet.datum));
  return out;
}

ByteWriter written_marks(const Document& document) {
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return written_rows(document.marks, [&](ByteWriter& out, const Mark& mark) {
    write_id(out, mark.id.value, expected_id);
    fields::write_kind(out, mark.kind);
    write_position(out, mark.at, previous);
    out.text(mark.name);
    if (mark.kind == MarkKind::danger) fields::write_danger_radius(out, mark.radius_nm);
    expected_id = mark.id.value + 1;
  });
}

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

ByteWriter written_roses(const Document& document) {
  GridPosition previous = document.sheet.middle;
  std::uint32_t expected_id = 1;
  return written_rows(document.roses, [&](ByteWriter& out, const Rose& rose) {
    write_id(out, rose.id.value, expected_id);
    write_position(out, rose.at, previous);
    fields::write_rose_radius(out, rose.radius_mm);
    expected_id = rose.id.value + 1;
  });
}

ByteWriter written_next_id(const Document& document) {
  ByteWriter out;
  out.whole(document.next_id);
  return out;
}


std::optional<ByteWriter> written_plainly(const Document& document, Section section) {
  switch (section) {
    case Section::sheet: return written_sheet(document.sheet);
    case Section::marks: return document.marks.empty() ? std::nullopt : std::optional(written_marks(document));
    case Section::legs: return document.legs.empty() ? std::nullopt : std::optional(written_legs(document));
    case Section::roses: return document.roses.empty() ? std::nullopt : std::optional(written_roses(document));
    case Section::next_id: return written_next_id(document);
    default: return write_section(document, section);
  }
}

}  // namespace

std::string text_of_bytes(std::vector<std::uint8_t> bytes) {
  const std::uint32_t checksum = crc32(bytes);
  for (int shift = 0; shift < 32; shift += 8) bytes.push_back(static_cast<std::uint8_t>(checksum >> shift));
  return "1:" + base64url_encode(bytes);
}

std::string plain_text_of(const Document& document) {
  ByteWriter out;
  for (const Section section : k_sections) {
    const std::optional<ByteWriter> written = written_plainly(document, section);
    if (!written) continue;
    out.whole(static_cast<std::uint64_t>(section) << 1);
    out.whole(written->bytes().size());
    out.raw(written->bytes());
  }
  return text_of_bytes(out.bytes());
}

}  // namespace fogsheet
