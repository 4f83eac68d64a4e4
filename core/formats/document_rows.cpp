#include "core/formats/document_rows.h"

#include "core/formats/document_fields.h"

namespace fogsheet {
namespace {

void write_place(ByteWriter& out, GridPosition at) {
  GridPosition origin;
  fields::write_position(out, at, origin);
}

bool read_place(ByteReader& in, GridPosition& at) {
  GridPosition origin;
  return fields::read_position(in, at, origin);
}

}  // namespace

void write_row(ByteWriter& out, const Mark& mark) {
  fields::write_id(out, mark.id.value, 0);
  fields::write_kind(out, mark.kind);
  write_place(out, mark.at);
  out.text(mark.name);
  if (mark.kind == MarkKind::danger) fields::write_danger_radius(out, mark.radius_nm);
  fields::write_height(out, mark.height_m);
  out.text(mark.note);
}

bool read_row(ByteReader& in, Mark& mark) {
  if (!fields::read_id(in, mark.id.value, 0) || !fields::read_kind(in, mark.kind) || !read_place(in, mark.at)) return false;
  if (!fields::read_name(in, mark.name)) return false;
  if (mark.kind == MarkKind::danger && !fields::read_danger_radius(in, mark.radius_nm)) return false;
  return fields::read_height(in, mark.height_m) && fields::read_text(in, mark.note, k_most_note_bytes);
}

void write_row(ByteWriter& out, const Leg& leg) {
  fields::write_id(out, leg.id.value, 0);
  fields::write_id(out, leg.from.value, leg.id.value);
  fields::write_id(out, leg.to.value, leg.from.value);
  fields::write_switch(out, leg.written.has_value());
  GridPosition origin;
  if (leg.written) fields::write_reading(out, *leg.written, origin);
}

bool read_row(ByteReader& in, Leg& leg) {
  if (!fields::read_id(in, leg.id.value, 0) || !fields::read_id(in, leg.from.value, leg.id.value)) return false;
  bool is_written = false;
  if (!fields::read_id(in, leg.to.value, leg.from.value) || !fields::read_switch(in, is_written)) return false;
  leg.written.reset();
  GridPosition origin;
  return !is_written || fields::read_reading(in, leg.written.emplace(), origin);
}

void write_row(ByteWriter& out, const Rose& rose) {
  fields::write_id(out, rose.id.value, 0);
  write_place(out, rose.at);
  fields::write_rose_radius(out, rose.radius_mm);
  fields::write_switch(out, rose.own_place);
}

bool read_row(ByteReader& in, Rose& rose) {
  return fields::read_id(in, rose.id.value, 0) && read_place(in, rose.at) && fields::read_rose_radius(in, rose.radius_mm) &&
         fields::read_switch(in, rose.own_place);
}

void write_row(ByteWriter& out, const TextNote& note) {
  fields::write_id(out, note.id.value, 0);
  write_place(out, note.at);
  out.text(note.text);
}

bool read_row(ByteReader& in, TextNote& note) {
  return fields::read_id(in, note.id.value, 0) && read_place(in, note.at) && fields::read_text(in, note.text, k_most_note_bytes) &&
         !note.text.empty();
}

void write_sheet(ByteWriter& out, const Sheet& sheet) {
  out.text(sheet.name);
  write_place(out, sheet.middle);
  out.whole(static_cast<std::uint64_t>(sheet.scale));
  fields::write_paper(out, sheet.paper);
  fields::write_date(out, sheet.date);
  out.text(sheet.datum);
  out.text(sheet.note);
  fields::write_signs(out, sheet.signs);
}

bool read_sheet(ByteReader& in, Sheet& sheet) {
  if (!fields::read_text(in, sheet.name, k_most_name_bytes) || !read_place(in, sheet.middle)) return false;
  if (!fields::read_scale(in, sheet.scale) || !fields::read_paper(in, sheet.paper) || !fields::read_date(in, sheet.date)) return false;
  if (!fields::read_name(in, sheet.datum) || !fields::read_text(in, sheet.note, k_most_note_bytes)) return false;
  return fields::read_signs(in, sheet.signs) && sheet_within_bounds(unquantise(sheet.middle), sheet.scale, sheet.paper);
}

void write_chart_note(ByteWriter& out, const std::optional<ChartNote>& note) {
  fields::write_switch(out, note.has_value());
  GridPosition origin;
  if (note) fields::write_chart_note(out, *note, origin);
}

bool read_chart_note(ByteReader& in, std::optional<ChartNote>& note) {
  bool is_there = false;
  if (!fields::read_switch(in, is_there)) return false;
  note.reset();
  GridPosition origin;
  return !is_there || fields::read_chart_note(in, note.emplace(), origin);
}

}  // namespace fogsheet
