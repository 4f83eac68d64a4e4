// Files of everything that was kept: whatever they hold, reading gives sheets and boats or what is amiss; what was read is
// taken in beside what is here and can be saved, read and opened again. Half the inputs are a sheet's record inside a file
// that is whole, so that what lies behind the checksums is reached.
#include <cstddef>
#include <cstdint>

#include "core/formats/bytes.h"
#include "shell/keeper/restore.h"
#include "tests/fuzz/checks.h"

using namespace fogsheet;

namespace {

void must_come_in(std::span<const std::uint8_t> bytes) {
  Result<Backup> read = read_backup(bytes);
  if (!read) return;
  const std::size_t sheets_read = read->sheets.size(), boats_read = read->boats.size();
  Sheets sheets{Document{}, 1};
  Boats boats;
  take_in(std::move(read).value(), sheets, boats, Keeper(), 1'795'700'000'000);
  must(sheets.all().size() <= sheets_read + 1 && boats.all().size() <= boats_read);
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets.all()) sheets.put_back(sheet->key);
  for (const SheetInDrawer* sheet : sheets.shown()) {
    must(sheets.take(sheet->key));
    while (sheets.in_hand().key == sheet->key && sheets.undo() && sheets.in_hand().history.state() > 0) {}
  }
  const Result<Backup> again = read_backup(backup_bytes(rows_of(sheets, boats, Keeper()), 5));
  must(again.ok() && again->amiss.empty() && again->missing == 0);
}

StoreBytes body_of_record(const std::uint8_t* data, std::size_t size) { return framed({data, size}); }

}  // namespace

// The first byte says which kind an input is: the file itself, or what a record in it holds, as a sheet's or a boat's.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  if (data[0] % 3 == 0) must_come_in({data + 1, size - 1});
  else must_come_in(backup_bytes({{{.part = data[0] % 3 == 1 ? StorePart::sheets : StorePart::desk, .sheet = 7, .sequence = 1, .bytes = body_of_record(data + 1, size - 1)}, "Gull"}}, 5));
  return 0;
}
