// A file of another program that the user chose: what it holds, until it is put on a sheet or put away.
#pragma once

#include <optional>
#include <string>

#include "core/formats/marks_and_lines.h"

namespace fogsheet {

struct FileInHand {
  std::string name;
  std::optional<Result<MarksAndLines>> read;  // none while it is being read
};

/// What is to be done with a file that was chosen.
enum class FileRoad {
  none,      // nothing: the slip says why
  sheet,     // a sheet's text (App::file_opened)
  exchange,  // read by the page's second program (App::file_read)
};

}  // namespace fogsheet
