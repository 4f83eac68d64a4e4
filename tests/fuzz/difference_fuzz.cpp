// Differences from outside, on a small sheet with something in every table: applying one gives a sound document or a
// reason, and the difference made anew between the two leads there again.
#include <cstddef>
#include <cstdint>
#include <span>

#include "core/document/actions.h"
#include "core/document/difference.h"
#include "core/document/integrity.h"
#include "tests/fuzz/checks.h"

using namespace fogsheet;

namespace {

Document small_sheet() {
  Document sheet = made_sheet({.name = "Small", .mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 100'000, .date = {2026, 11, 25}}).value();
  for (int i = 0; i < 4; ++i)
    sheet.marks = sheet.marks.with({.id = {sheet.next_id++}, .name = std::string(1, static_cast<char>('A' + i)), .at = {sheet.sheet.middle.lat + 100 * i, sheet.sheet.middle.lon}});
  for (std::size_t i = 0; i < 3; ++i) sheet.legs = sheet.legs.with({.id = {sheet.next_id++}, .from = sheet.marks.at(i).id, .to = sheet.marks.at(i + 1).id});
  sheet.text_notes = sheet.text_notes.with({.id = {sheet.next_id++}, .at = sheet.sheet.middle, .text = "kelp"});
  must(check_document(sheet).ok());
  return sheet;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Document sheet = small_sheet();
  const Result<Document> made = applied(std::span(data, size), sheet);
  if (!made) return 0;
  must(check_document(*made).ok());
  const Result<Document> again = applied(difference(sheet, *made), sheet);
  must(again.ok() && *again == *made);
  return 0;
}
