// The fields that documents are written in, each with its bounds: what the sections of a text and the rows of a journal
// have in common. A reader gives false for anything that no document may hold.
#pragma once

#include <string>

#include "core/document/document.h"
#include "core/formats/bytes.h"

namespace fogsheet::fields {

/// Positions as steps from the one before, longitude the short way round.
void write_position(ByteWriter& out, GridPosition at, GridPosition& previous);
bool read_position(ByteReader& in, GridPosition& at, GridPosition& previous);

/// Ids as steps from an expected one: in a row that is mostly the one after the row before.
void write_id(ByteWriter& out, std::uint32_t id, std::uint32_t expected);
bool read_id(ByteReader& in, std::uint32_t& id, std::uint32_t expected);

/// Codes of the format: the place in each list. New ones go at the end.
inline constexpr Paper k_papers[] = {Paper::a4_upright,     Paper::a4_across,     Paper::a3_upright,
                                     Paper::a3_across,      Paper::letter_upright, Paper::letter_across,
                                     Paper::tabloid_upright, Paper::tabloid_across, Paper::screen};
inline constexpr MarkKind k_kinds[] = {MarkKind::landmark, MarkKind::light, MarkKind::turn, MarkKind::danger, MarkKind::other};

/// What comes from a short list, as its place there.
void write_paper(ByteWriter& out, Paper paper);
bool read_paper(ByteReader& in, Paper& paper);
void write_kind(ByteWriter& out, MarkKind kind);
bool read_kind(ByteReader& in, MarkKind& kind);
void write_reference(ByteWriter& out, Reference reference);
bool read_reference(ByteReader& in, Reference& reference);
void write_signs(ByteWriter& out, SignSet signs);
bool read_signs(ByteReader& in, SignSet& signs);
void write_switch(ByteWriter& out, bool on);
bool read_switch(ByteReader& in, bool& on);

/// UTF-8 of at most `most_bytes`; a name is not empty.
bool read_text(ByteReader& in, std::string& text, std::size_t most_bytes);
bool read_name(ByteReader& in, std::string& name);

void write_date(ByteWriter& out, Date date);
bool read_date(ByteReader& in, Date& date);

/// Numbers in whole parts (document.h).
void write_danger_radius(ByteWriter& out, double radius_nm);
bool read_danger_radius(ByteReader& in, double& radius_nm);
void write_height(ByteWriter& out, double height_m);
bool read_height(ByteReader& in, double& height_m);
void write_rose_radius(ByteWriter& out, double radius_mm);
bool read_rose_radius(ByteReader& in, double& radius_mm);
bool read_scale(ByteReader& in, int& scale);

/// A reading: bearing in 0.1 deg, ring, revision, the leg's ends as steps from `previous`.
void write_reading(ByteWriter& out, const WrittenReading& reading, GridPosition& previous);
bool read_reading(ByteReader& in, WrittenReading& reading, GridPosition& previous);

/// A chart's note: value in 1e-9 deg, year from 1900, annual change in 1e-6', the middle it was entered at.
void write_chart_note(ByteWriter& out, const ChartNote& note, GridPosition& previous);
bool read_chart_note(ByteReader& in, ChartNote& note, GridPosition& previous);

}  // namespace fogsheet::fields
