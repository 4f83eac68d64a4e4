// Files of everything that was kept: whatever they hold, reading gives sheets and boats or what is amiss; what was read is
// taken in beside what is here and can be saved, read and opened again. Half the inputs are a sheet's record inside a file
// that is whole, so that what lies behind the checksums is reached.
#include <algorithm>
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
  const std::vector<PhotographInFile> photographs = read->photographs;
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
  const StoreBytes bytes_again = backup_bytes(rows_of(sheets, boats, Keeper()), 5, photographs);
  const Result<Backup> again = read_backup(bytes_again);
  must(again.ok() && again->amiss.empty() && again->missing == 0);
  must(photographs.empty() || backup_record_bytes({reinterpret_cast<const char*>(bytes_again.data()), bytes_again.size()}) == bytes_again.size());
  must(std::equal(photographs.begin(), photographs.end(), again->photographs.begin(), again->photographs.end(), [](PhotographInFile one, const PhotographInFile& other) {
    one.at = other.at;  // its file is shorter by what was amiss
    return one == other;
  }));
}

StoreBytes body_of_record(const std::uint8_t* data, std::size_t size) { return framed({data, size}); }

}  // namespace

// The first byte says which kind an input is: the file itself, or what a record in it holds, as a sheet's, a boat's or the list of photographs.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  constexpr StorePart k_parts[] = {StorePart::sheets, StorePart::desk, static_cast<StorePart>(254)};
  const std::size_t kind = data[0] % 4;
  if (kind == 0) must_come_in({data + 1, size - 1});
  else must_come_in(backup_bytes({{{.part = k_parts[kind - 1], .sheet = 7, .sequence = 1, .bytes = body_of_record(data + 1, size - 1)}, "Gull"}}, 5));
  return 0;
}
