// A file that the user chose: what it holds, of another program or all that was kept, until it is taken in or put away. One at a time:
// the next one takes its place.
#pragma once

#include <optional>
#include <string>

#include "core/formats/marks_and_lines.h"
#include "shell/keeper/backup.h"

namespace fogsheet {

struct FileInHand {
  std::string name;
  double bytes = 0;
  double bytes_wanted = 0;  // of the file of all that is kept: its records
  int others = 0;  // that were dropped with it, and left
  std::optional<Result<MarksAndLines>> read;  // none while it is being read
  std::optional<Backup> all;  // in place of that

  bool is_being_read() const { return !read && !all; }
};

/// What is to be done with a file that was chosen.
enum class FileRoad {
  none,      // nothing: the slip says why
  sheet,     // a sheet's text (App::file_opened)
  exchange,  // read by the page's second program (App::file_read)
  all,       // all that was kept (App::backup_read)
};

}  // namespace fogsheet
