#include "core/document/checks.h"

#include <cmath>
#include <utility>

#include "core/base/utf8.h"

namespace fogsheet::checks {
namespace {

// How many characters are too many depends on how many bytes each takes.
Result<std::string> text_within(std::string_view typed, std::size_t most_bytes, Fault too_long) {
  const std::string repaired = repaired_utf8(typed);
  std::string text(trimmed(repaired));
  if (text.size() <= most_bytes) return text;
  return Problem{.fault = too_long,
                 .numbers = {static_cast<double>(count_characters(text)), static_cast<double>(count_characters(fitting(text, most_bytes)))}};
}

}  // namespace

Problem out_of_range(std::string what, double given, double least, double most) {
  return {.fault = Fault::number_out_of_range, .texts = {std::move(what)}, .numbers = {given, least, most}};
}

Result<double> number(std::string what, double given, double least, double most) {
  if (!std::isfinite(given)) return Problem{.fault = Fault::number_missing, .texts = {std::move(what)}};
  if (given < least || given > most) return out_of_range(std::move(what), given, least, most);
  return given;
}

Result<Date> date(Date date) {
  if (!is_valid(date)) return Fault::date_unreadable;
  if (!is_sheet_date(date)) return out_of_range("year", date.year, k_first_sheet_year, k_last_sheet_year);
  return date;
}

Result<std::string> name_or_none(std::string_view typed) { return text_within(typed, k_most_name_bytes, Fault::name_too_long); }

Result<std::string> name(std::string_view typed) {
  Result<std::string> checked = name_or_none(typed);
  if (checked && checked->empty()) return Fault::name_empty;
  return checked;
}

Result<std::string> note_or_none(std::string_view typed) { return text_within(typed, k_most_note_bytes, Fault::note_too_long); }

Result<GridPosition> place(const Document& document, const std::string& name, double lat_deg, double lon_deg) {
  const Result<GridPosition> at = checked_position(lat_deg, lon_deg);
  if (at && !lies_on_sheet(projection_of(document), *at)) return Problem{.fault = Fault::place_off_sheet, .texts = {name}};
  return at;
}

bool has_room(const Document& document, std::size_t rows, std::size_t most) { return rows < most && document.next_id < k_most_id; }

Problem table_full(std::string what, std::size_t most) {
  return {.fault = Fault::table_full, .texts = {std::move(what)}, .numbers = {static_cast<double>(most)}};
}

}  // namespace fogsheet::checks
