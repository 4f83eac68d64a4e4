// One row of a table, or the single values of a document, as bytes that stand on their own: what a journal of changes is
// made of. Unlike the sections of a document text these lean on no row before them.
#pragma once

#include "core/document/document.h"
#include "core/formats/bytes.h"

namespace fogsheet {

void write_row(ByteWriter& out, const Mark& mark);
void write_row(ByteWriter& out, const Leg& leg);
void write_row(ByteWriter& out, const Rose& rose);
void write_row(ByteWriter& out, const TextNote& note);
void write_sheet(ByteWriter& out, const Sheet& sheet);
void write_chart_note(ByteWriter& out, const std::optional<ChartNote>& note);

/// Each gives false, and leaves the row in no particular state, when a field is out of its bounds or the bytes end early.
/// What only the whole document can tell (marks that exist, places on the sheet) is check_document's business.
bool read_row(ByteReader& in, Mark& mark);
bool read_row(ByteReader& in, Leg& leg);
bool read_row(ByteReader& in, Rose& rose);
bool read_row(ByteReader& in, TextNote& note);
bool read_sheet(ByteReader& in, Sheet& sheet);
bool read_chart_note(ByteReader& in, std::optional<ChartNote>& note);

}  // namespace fogsheet
