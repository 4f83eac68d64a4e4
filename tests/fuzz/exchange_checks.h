// What must hold of every reader of other programs' files, whatever the bytes.
#pragma once

#include <cmath>

#include "core/base/utf8.h"
#include "core/document/import_actions.h"
#include "core/document/integrity.h"
#include "core/document/sheet_actions.h"
#include "core/exchange/exchange.h"
#include "tests/fuzz/checks.h"

namespace fogsheet {

/// It goes from one program to the other as it is, a sheet that takes it stays sound, and each format that it is written in is
/// read again, with as many marks.
inline void check_exchanged(const Result<MarksAndLines>& read) {
  const Result<MarksAndLines> across = marks_and_lines_from(to_bytes(read));
  must(across.ok() == read.ok());
  if (!read.ok()) {
    must(across.problem().fault == read.problem().fault);
    return;
  }
  must(across->marks == read->marks && across->lines.size() == read->lines.size() && across->left_out == read->left_out);
  for (const char* format : {"gpx", "geojson", "csv"}) {
    const Result<MarksAndLines> again = read_file(file_of(*read, format));
    must(again.ok() && !again->departure && again->marks.size() == read->marks.size());
    for (std::size_t i = 0; i < read->marks.size(); ++i) must(again->marks[i].at == read->marks[i].at && again->marks[i].kind == read->marks[i].kind);
  }
  const Result<Document> sheet = sheet_of_import(*read, {"Mark ", "Turn "}, read->title, Paper::a4_across, {2026, 11, 25});
  must(!sheet.ok() || check_document(*sheet).ok());
}

}  // namespace fogsheet
