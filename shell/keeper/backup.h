// All that is kept as one file of our own ("….fogsheets"): a line that names its format, then records as the store has
// them, each behind a head with a sign to find it by, what it is called, and a checksum. A record that is damaged names
// itself, and what follows it is found again wherever the damage ends. Photographs of charts lie behind the records, file
// by file, as a last record lists them: the first line tells where they begin, so that who reads the records need not read them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "shell/keeper/records.h"
#include "shell/photograph.h"

namespace fogsheet {

inline constexpr std::string_view k_backup_begin = "fogsheets:";  // then the format's number and the line's end

struct BackupRow {
  StoreRecord record;
  std::string title;  // as the user knows it; may be empty
};

/// @param photographs  whose bytes are to be put behind these, in this order
StoreBytes backup_bytes(const std::vector<BackupRow>& rows, std::int64_t made_ms, const std::vector<PhotographInFile>& photographs = {});

/// How many bytes of such a file are its records, by its first bytes; none where it does not say, or not surely: then all may be.
std::optional<std::uint64_t> backup_record_bytes(std::string_view head);

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
  std::vector<PhotographInFile> photographs;
  std::vector<Amiss> amiss;
  std::size_t set_aside = 0;  // records that were damaged when the file was made, and are in it for whoever can read them
  std::size_t missing = 0;    // records that it should hold and of which nothing is found

  /// Photographs of which not all is in a file of so many bytes: it was cut short.
  std::size_t cut_off(double file_bytes) const;
};

/// @param bytes  from its beginning, at least to the end of its records
/// Faults: text_newer; file_unknown, when nothing of such a file is found in it.
Result<Backup> read_backup(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
