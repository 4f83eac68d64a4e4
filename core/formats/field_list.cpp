#include "core/formats/field_list.h"

#include <algorithm>
#include <cmath>

#include "core/base/utf8.h"
#include "core/document/checks.h"

namespace fogsheet {

void FieldWriter::date(const char*, Date& value) {
  out_.whole(static_cast<std::uint64_t>(value.year - k_first_sheet_year));
  out_.whole(static_cast<std::uint64_t>(value.month));
  out_.whole(static_cast<std::uint64_t>(value.day));
}

void FieldReader::number(const char*, double& value, double parts, double least, double most) {
  const std::int64_t read = in_.signed_whole();
  if (read < whole_parts(least, parts) || read > whole_parts(most, parts)) ok_ = false;
  else value = from_parts(read, parts);
}

void FieldReader::direction(const char*, double& deg, double parts) {
  const std::uint64_t read = in_.whole();
  if (read >= static_cast<std::uint64_t>(whole_parts(360, parts))) ok_ = false;
  else deg = from_parts(static_cast<std::int64_t>(read), parts);
}

void FieldReader::whole(const char*, std::uint32_t& value, std::uint32_t least, std::uint32_t most) {
  const std::uint64_t read = in_.whole();
  if (read < least || read > most) ok_ = false;
  else value = static_cast<std::uint32_t>(read);
}

void FieldReader::text(const char*, std::string& value, std::size_t most_bytes, bool required) {
  const std::string_view read = in_.text(most_bytes);
  if (!is_utf8(read) || (required && read.empty())) ok_ = false;
  else value = repaired_utf8(read);
}

void FieldReader::code(const char*, unsigned& value, unsigned count) {
  const std::uint64_t read = in_.whole();
  if (read >= count) ok_ = false;
  else value = static_cast<unsigned>(read);
}

void FieldReader::date(const char*, Date& value) {
  const auto small = [&] { return static_cast<int>(std::min<std::uint64_t>(in_.whole(), 10'000)); };
  value.year = k_first_sheet_year + small();
  value.month = small();
  value.day = small();
  if (!is_sheet_date(value)) ok_ = false;
}

std::size_t FieldReader::count(const char*, std::size_t, std::size_t most) {
  const std::uint64_t rows = in_.whole();
  if (rows <= most && rows <= in_.left()) return static_cast<std::size_t>(rows);
  ok_ = false;
  return 0;
}

void FieldChecker::number(const char* name, double& value, double parts, double least, double most) {
  const Result<double> checked = checks::number(name, value, least, most);
  if (!checked) return keep(checked.problem());
  value = from_parts(whole_parts(*checked, parts), parts);
}

void FieldChecker::direction(const char*, double& deg, double parts) {
  if (!std::isfinite(deg) || deg < 0 || deg >= 360) return keep({.fault = Fault::direction_out_of_range, .numbers = {deg}});
  deg = from_parts(whole_parts(deg, parts) % whole_parts(360, parts), parts);  // 359.97 is north
}

void FieldChecker::whole(const char* name, std::uint32_t& value, std::uint32_t least, std::uint32_t most) {
  if (value < least || value > most) keep(checks::out_of_range(name, value, least, most));
}

void FieldChecker::text(const char*, std::string& value, std::size_t most_bytes, bool required) {
  Result<std::string> checked = most_bytes > k_most_name_bytes ? checks::note_or_none(value) : required ? checks::name(value) : checks::name_or_none(value);
  if (!checked) return keep(checked.problem());
  value = std::move(checked).value();
  if (required && value.empty()) keep({.fault = Fault::note_empty});
}

void FieldChecker::date(const char*, Date& value) {
  const Result<Date> checked = checks::date(value);
  if (!checked) keep(checked.problem());
}

std::size_t FieldChecker::count(const char* name, std::size_t rows, std::size_t most) {
  if (rows > most) keep(checks::table_full(name, most));
  return rows;
}

}  // namespace fogsheet
