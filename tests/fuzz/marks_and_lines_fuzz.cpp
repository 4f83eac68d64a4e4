// What comes across from the page's second program is not believed either.
#include <cstddef>
#include <cstdint>

#include "tests/fuzz/exchange_checks.h"

using namespace fogsheet;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Result<MarksAndLines> all = marks_and_lines_from({data, size});
  if (!all.ok()) return 0;
  const Result<MarksAndLines> again = marks_and_lines_from(to_bytes(*all));
  must(again.ok() && *again == *all);
  const Result<Document> sheet = sheet_of_import(*all, {"Mark ", "Turn "}, all->title, Paper::a4_across, {2026, 11, 25});
  must(!sheet.ok() || check_document(*sheet).ok());
  return 0;
}
