// Sheets and steps as records of the store. Each begins with the number of its format and ends with a checksum; what a
// newer program wrote is left alone, what is damaged is told from what is whole.
#pragma once

#include <span>

#include "core/base/result.h"
#include "core/formats/crc32.h"
#include "shell/boats.h"
#include "shell/keeper/store.h"
#include "shell/sheets.h"

namespace fogsheet {

inline constexpr std::uint64_t k_record_format = 1;

/// What of a sheet may change without a step of its own history.
struct SheetState {
  std::int64_t changed_ms = 0;
  std::int64_t removed_ms = 0;
  std::optional<TakenOff> under;

  bool operator==(const SheetState&) const = default;
};

/// A whole sheet.
struct SheetRecord {
  SheetKey key;
  std::uint64_t through = 0;  // the last journal record that is taken up in it
  std::optional<LaidOver> over;
  SheetState state;
  KeptHistory history;
  std::string newer_text = {};  // the document's, when a newer program has put in what is not understood here
};

/// What changed since the record before it.
struct JournalRecord {
  std::uint32_t follows = 0;  // checksum of that record: the sheet's, or the journal's one before
  SheetState state;
  KeptChange change;
};

/// A whole boat. She is small, and written whole with each step.
struct BoatRecord {
  BoatKey key;
  bool removed = false;
  KeptHistoryOf<Boat> history;
};

/// As they are now.
SheetState state_of(const SheetInDrawer& sheet);
SheetRecord record_of(SheetInDrawer& sheet, std::uint64_t through);
BoatRecord record_of(KeptBoat& boat);

StoreBytes written(const BoatRecord& record);
/// Faults: text_newer, text_checksum.
Result<BoatRecord> read_boat_record(std::span<const std::uint8_t> bytes);

StoreBytes written(const SheetRecord& record);
StoreBytes written(const JournalRecord& record);

/// Faults: text_newer (of a newer format), text_checksum (damaged).
Result<SheetRecord> read_sheet_record(std::span<const std::uint8_t> bytes);
Result<JournalRecord> read_journal_record(std::span<const std::uint8_t> bytes);

/// What can be saved of a damaged sheet's record: its present document, when that is whole; without a past.
std::optional<SheetRecord> salvaged(std::span<const std::uint8_t> bytes);

/// Framing for other records: format, body, checksum.
StoreBytes framed(std::span<const std::uint8_t> body);
Result<std::span<const std::uint8_t>> unframed(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
