// Marks and lines of a file put on a sheet.
#pragma once

#include <string>
#include <vector>

#include "core/document/history.h"
#include "core/formats/marks_and_lines.h"
#include "core/sheet/sheet_fit.h"

namespace fogsheet {

/// How what has no name of its own is called: a stem and the least number that no mark has.
struct ImportNames {
  std::string mark_stem;  // "Mark "
  std::string turn_stem;  // "Turn ": points of a line that has no name either
};

/// What came on the sheet, and what did not.
struct Import {
  std::size_t marks = 0;  // new ones, turns of the lines among them
  std::size_t legs = 0;
  std::size_t known = 0;  // marks that stood there already, by the same name
  std::size_t off_sheet = 0;
  std::vector<std::string> off_sheet_names = {};  // three at most, of those that have one
  std::size_t no_room = 0;  // for marks or legs
};

/// Puts all that fits on a document. Points of lines become turns, or use the mark that stands there; a line goes on after a
/// point that lies off the sheet.
Import import_into(Document& document, const MarksAndLines& all, const ImportNames& names);

/// The same as one step. @param file its name. Faults: nothing_to_import (all of it is there already, or off the sheet).
Result<Import> import_marks(History& history, const MarksAndLines& all, const ImportNames& names, const std::string& file);

/// Where a sheet of that paper lies that holds all of it with 15 mm to spare. Faults: no_marks_to_fit, sheet_too_wide.
Result<FittedSheet> sheet_around_import(const MarksAndLines& all, Paper paper);

/// That sheet, with that day and all of it on it.
/// Faults: those of sheet_around_import and made_sheet.
Result<Document> sheet_of_import(const MarksAndLines& all, const ImportNames& names, const std::string& name, Paper paper, Date date);

}  // namespace fogsheet
