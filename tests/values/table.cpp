#include "tests/values/table.h"

#include <algorithm>

#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "tests/values/csv.h"

namespace fogsheet::values {

namespace {

using Fields = std::map<std::string, std::string>;

// Entries are parted by "; ": a semicolon alone may stand in a value.
std::vector<std::string> split_list(const std::string& text) {
  constexpr std::string_view k_between = "; ";
  std::vector<std::string> entries;
  if (trimmed(text).empty()) return entries;
  for (std::size_t at = 0;;) {
    const std::size_t next = std::min(text.find(k_between, at), text.size());
    entries.emplace_back(trimmed(std::string_view(text).substr(at, next - at)));
    if (next == text.size()) return entries;
    at = next + k_between.size();
  }
}

// "name=value", split at the first "=".
std::optional<std::pair<std::string, std::string>> named_value(const std::string& entry) {
  const std::size_t equals = entry.find('=');
  if (equals == std::string::npos || equals == 0) return std::nullopt;
  return std::pair(entry.substr(0, equals), entry.substr(equals + 1));
}

std::string at(const Fields& fields, const std::string& name) {
  const auto found = fields.find(name);
  return found == fields.end() ? std::string() : found->second;
}

void read_wanted(const Fields& fields, Row& row) {
  const std::vector<std::string> outputs = split_list(at(fields, "outputs"));
  const std::vector<std::string> tolerances = split_list(at(fields, "tolerance"));
  const std::vector<std::string> units = split_list(at(fields, "tolerance_unit"));
  if (outputs.empty() || outputs.size() != tolerances.size() || outputs.size() != units.size()) {
    row.defect = "outputs, tolerances and units are not the same in number";
    return;
  }
  for (std::size_t i = 0; i < outputs.size(); ++i) {
    const auto named = named_value(outputs[i]);
    const std::optional<double> tolerance = parse_number(tolerances[i]);
    if (!named) row.defect = "an output without a name";
    if (!tolerance) row.defect = "a tolerance that is not a number";
    if (!row.defect.empty()) return;
    row.wanted.push_back({.name = named->first, .value = named->second, .tolerance = *tolerance, .unit = units[i]});
  }
}

void read_listed_inputs(const Fields& fields, Row& row) {
  for (const std::string& entry : split_list(at(fields, "inputs"))) {
    if (const auto named = named_value(entry)) {
      row.inputs.insert(*named);
    } else {
      row.defect = "an input without a name";
    }
  }
}

void read_columns(const std::string& file, const Fields& fields, const Tolerances& tolerances, Row& row) {
  row.inputs = fields;
  for (const Tolerances::Entry& entry : tolerances.of(file, row.kind)) {
    const std::string value = at(fields, entry.column);
    if (value.empty()) row.defect = "nothing in column " + entry.column;
    row.inputs.erase(entry.column);
    row.wanted.push_back({.name = entry.column, .value = value, .tolerance = entry.tolerance, .unit = entry.unit});
  }
  if (row.wanted.empty()) row.defect = "no tolerances for kind " + row.kind;
}

}  // namespace

std::vector<const Row*> Table::rows_of(const std::string& kind, const std::string& table) const {
  std::vector<const Row*> found;
  for (const Row& row : rows)
    if (row.kind == kind && row.table == table) found.push_back(&row);
  return found;
}

std::optional<Tolerances> Tolerances::read(const std::string& text) {
  const auto lines = read_csv(text);
  if (!lines || lines->empty()) return std::nullopt;
  const std::vector<std::string>& header = lines->front();
  const auto column = [&](const char* name) { return static_cast<std::size_t>(std::find(header.begin(), header.end(), name) - header.begin()); };
  const std::size_t file = column("file"), kind = column("kind"), quantity = column("column"), tolerance = column("tolerance"), unit = column("unit");
  Tolerances tolerances;
  for (std::size_t i = 1; i < lines->size(); ++i) {
    const std::vector<std::string>& line = (*lines)[i];
    if (std::max({file, kind, quantity, tolerance, unit}) >= std::min(line.size(), header.size())) return std::nullopt;
    const std::optional<double> value = parse_number(line[tolerance]);
    if (!value) return std::nullopt;
    tolerances.entries_.push_back({.file = line[file], .kind = line[kind], .column = line[quantity], .unit = line[unit], .tolerance = *value});
  }
  return tolerances;
}

std::vector<Tolerances::Entry> Tolerances::of(const std::string& file, const std::string& kind) const {
  std::vector<Entry> own, any;
  for (const Entry& entry : entries_) {
    if (entry.kind != kind) continue;
    if (entry.file == file) own.push_back(entry);
    const bool known = std::any_of(any.begin(), any.end(), [&](const Entry& e) { return e.column == entry.column; });
    if (!known) any.push_back(entry);
  }
  return own.empty() ? any : own;
}

Reading read_table(const std::string& file, const std::string& text, const Tolerances& tolerances) {
  Reading reading{.table = {.file = file}};
  const auto lines = read_csv(text);
  if (!lines || lines->empty()) {
    reading.error = "not comma-separated values as in RFC 4180";
    return reading;
  }
  const std::vector<std::string>& header = lines->front();
  const auto has = [&](const char* name) { return std::find(header.begin(), header.end(), name) != header.end(); };
  for (const char* name : {"id", "kind", "class"})
    if (!has(name)) reading.error = std::string("no column ") + name;
  const bool listed = has("inputs"), textual = has("text");

  for (std::size_t i = 1; i < lines->size() && reading.error.empty(); ++i) {
    const std::vector<std::string>& line = (*lines)[i];
    if (line.size() != header.size()) {
      reading.error = "row " + std::to_string(i) + " has " + std::to_string(line.size()) + " fields, the header " + std::to_string(header.size());
      break;
    }
    Fields fields;
    for (std::size_t k = 0; k < header.size(); ++k) fields[header[k]] = line[k];
    Row row{.id = at(fields, "id"),
            .kind = at(fields, "kind"),
            .table = at(fields, "table"),
            .row_class = at(fields, "class"),
            .needs = split_list(at(fields, "needs"))};
    if (listed) read_listed_inputs(fields, row);
    if (textual) row.inputs["text"] = at(fields, "text");
    if (row.row_class != "given") {
      if (listed || textual) {
        read_wanted(fields, row);
      } else {
        read_columns(file, fields, tolerances, row);
      }
    }
    reading.table.rows.push_back(std::move(row));
  }
  return reading;
}

}  // namespace fogsheet::values
