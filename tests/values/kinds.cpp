#include "tests/values/kinds.h"

#include <cmath>
#include <cstdio>

#include "core/base/number_text.h"

namespace fogsheet::values {

const std::string& text_in(const Row& row, const std::string& name) {
  const auto found = row.inputs.find(name);
  if (found == row.inputs.end()) throw RowError{"no input " + name};
  return found->second;
}

const std::string& Inputs::text(const std::string& name) const { return text_in(row_, name); }

double number_in(const Row& row, const std::string& name) {
  const auto found = row.inputs.find(name);
  const std::optional<double> number = found == row.inputs.end() ? std::nullopt : parse_number(found->second);
  if (!number) throw RowError{"no number " + name};
  return *number;
}

double Inputs::number(const std::string& name) const { return number_in(row_, name); }

std::vector<const Row*> Inputs::needed(const std::string& kind) const {
  std::vector<const Row*> rows;
  for (const std::string& need : row_.needs)
    if (need.rfind(kind + ":", 0) == 0)
      for (const Row* row : table_.rows_of(kind, need.substr(kind.size() + 1))) rows.push_back(row);
  if (rows.empty()) throw RowError{"no rows of kind " + kind + " that it needs"};
  return rows;
}

std::string in_full(double value) {
  if (!std::isfinite(value)) return "none";
  char digits[40] = "";
  for (const int precision : {15, 17}) {  // 15 where they say it all: 0.1 and not 0.10000000000000001
    std::snprintf(digits, sizeof digits, "%.*g", precision, value);  // no test program sets a locale
    if (parse_number(digits) == value) break;
  }
  return digits;
}

Kind find_kind(const std::string& name) {
  for (const KindTable& kinds : {compass_kinds(), sailing_kinds(), earth_kinds(), magnetic_kinds(), format_kinds(), passage_kinds()})
    if (const auto found = kinds.find(name); found != kinds.end()) return found->second;
  return nullptr;
}

}  // namespace fogsheet::values
