// What of a backup comes in: beside what is here, never in place of it. What stands here already as it is in the file is
// left; a sheet or boat that differs from the one of its key here comes as a copy under a key of its own, once.
#pragma once

#include <map>

#include "shell/keeper/backup.h"
#include "shell/keeper/keeper.h"

namespace fogsheet {

enum class Fate { comes, comes_beside, is_here };

/// Of each sheet and boat of the backup, in their order.
struct Fates {
  std::vector<Fate> sheets;
  std::vector<Fate> boats;

  std::size_t count(Fate fate) const;  // of both
};
/// The sheet to try that was never touched counts for nothing.
Fates fates_of(const Backup& backup, const Sheets& sheets, const Boats& boats, const Keeper& keeper);

/// Takes all of it in that is not here. Sheets that were taken out of the drawer can be put back for the usual time from now on.
/// What lies in the store and can't be used is not written over.
/// @return the sheets that came, by their keys in the file
std::map<SheetKey, SheetKey> take_in(Backup backup, Sheets& sheets, Boats& boats, const Keeper& keeper, std::int64_t now_ms);

/// All that is kept, as rows of a backup; with what could not be used of the store, as it is.
std::vector<BackupRow> rows_of(Sheets& sheets, Boats& boats, const Keeper& keeper);

/// Those that can't be used alone.
std::vector<BackupRow> unused_rows(const Sheets& sheets, const std::vector<UnusedRecord>& unused);

}  // namespace fogsheet
