// All that is kept as one file of our own ("….fogsheets"): a line that names its format, then records as the store has
// them, each behind a head with a sign to find it by, what it is called, and a checksum. A record that is damaged names
// itself, and what follows it is found again wherever the damage ends.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "shell/keeper/records.h"

namespace fogsheet {

inline constexpr std::string_view k_backup_begin = "fogsheets:";  // then the format's number and the line's end

struct BackupRow {
  StoreRecord record;
  std::string title;  // as the user knows it; may be empty
};

StoreBytes backup_bytes(const std::vector<BackupRow>& rows, std::int64_t made_ms);

/// What such a file holds.
struct Backup {
  struct Amiss {
    enum class Kind { past_lost, unreadable, newer };  // past_lost: it is among what was read, as it last was
    Kind kind = Kind::unreadable;
    std::string title;

    bool operator==(const Amiss&) const = default;
  };
  std::int64_t made_ms = 0;  // 0: not told any more
  std::vector<SheetRecord> sheets;
  std::vector<BoatRecord> boats;
  std::vector<Amiss> amiss;
  std::size_t set_aside = 0;  // records that were damaged when the file was made, and are in it for whoever can read them
  std::size_t missing = 0;    // records that it should hold and of which nothing is found
};

/// Faults: text_newer; file_unknown, when nothing of such a file is found in it.
Result<Backup> read_backup(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
