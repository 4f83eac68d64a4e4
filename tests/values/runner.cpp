// values_runner DIR: checks every table of reference values in DIR against core, and says which rows are off and which
// kinds core does not compute. Nothing in here knows a row or a file: columns, kinds, tolerances and what a row needs are
// read from the tables (README.md).
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "tests/values/compare.h"
#include "tests/values/kinds.h"

namespace fogsheet::values {

namespace {

constexpr const char* k_tolerances_file = "tolerances.csv";

// Files that rows name but that core holds itself.
constexpr const char* k_core_files[] = {"wmm2025.cof", "igrf14coeffs.txt"};

struct Tally {
  int within = 0, off = 0, not_covered = 0;
  std::vector<std::string> complaints;  // a line for each row that is off
  std::map<std::string, int> kinds_missing;
};

std::optional<std::string> read_file(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  if (!file) return std::nullopt;
  return text.str();
}

// Why a row cannot be checked although its kind is computed; empty when it can.
std::string missing_need(const Row& row, const Table& table, const std::filesystem::path& folder) {
  for (const std::string& need : row.needs) {
    const std::size_t colon = need.find(':');
    const std::string kind = need.substr(0, colon);
    const std::string name = colon == std::string::npos ? "" : need.substr(colon + 1);
    if (kind == "file") {
      const bool ours = std::find(std::begin(k_core_files), std::end(k_core_files), name) != std::end(k_core_files);
      if (!ours && !std::filesystem::exists(folder / name)) return "needs the file " + name;
    } else if (table.rows_of(kind, name).empty()) {
      return "needs rows of " + need;
    }
  }
  return {};
}

std::vector<std::string> check_row(const Row& row, const Table& table, const std::filesystem::path& folder, Kind kind) {
  const std::string start = "off: " + table.file + " " + row.id + " ";
  if (!row.defect.empty()) return {start + row.defect};
  if (const std::string missing = missing_need(row, table, folder); !missing.empty()) return {start + missing};
  std::vector<std::string> complaints;
  try {
    const Outputs outputs = kind(Inputs(row, table));
    for (const Wanted& wanted : row.wanted) {
      const auto found = outputs.find(wanted.name);
      const std::string got = found == outputs.end() ? "nothing" : found->second;
      if (found != outputs.end() && within(wanted, got)) continue;
      complaints.push_back(start + wanted.name + ": wanted " + wanted.value + ", got " + got + ", tolerance " + in_full(wanted.tolerance) + " " +
                           wanted.unit);
    }
  } catch (const RowError& error) {
    complaints.push_back(start + error.reason);
  }
  return complaints;
}

Tally check_table(const Table& table, const std::filesystem::path& folder) {
  Tally tally;
  for (const Row& row : table.rows) {
    if (row.row_class == "given") continue;
    const Kind kind = find_kind(row.kind);
    if (kind == nullptr) {
      ++tally.not_covered;
      ++tally.kinds_missing[row.kind];
      continue;
    }
    const std::vector<std::string> complaints = check_row(row, table, folder, kind);
    ++(complaints.empty() ? tally.within : tally.off);
    tally.complaints.insert(tally.complaints.end(), complaints.begin(), complaints.end());
  }
  return tally;
}

std::vector<std::filesystem::path> tables_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.is_regular_file() && entry.path().extension() == ".csv" && entry.path().filename() != k_tolerances_file) paths.push_back(entry.path());
  std::sort(paths.begin(), paths.end());
  return paths;
}

int run(const std::filesystem::path& folder) {
  if (!std::filesystem::is_directory(folder)) {
    std::cout << "error: " << folder.string() << " is not a folder\n";
    return 1;
  }
  bool readable = true;
  Tolerances tolerances;
  if (const auto text = read_file(folder / k_tolerances_file)) {
    if (const auto read = Tolerances::read(*text)) {
      tolerances = *read;
    } else {
      std::cout << "error: " << k_tolerances_file << ": not a table of tolerances\n";
      readable = false;
    }
  }

  int passed = 0, failed = 0;
  std::vector<std::string> complaints, missing;
  for (const std::filesystem::path& path : tables_in(folder)) {
    const std::string file = path.filename().string();
    const auto text = read_file(path);
    const Reading reading = text ? read_table(file, *text, tolerances) : Reading{.error = "cannot be opened"};
    if (!reading.error.empty()) {
      std::cout << "error: " << file << ": " << reading.error << "\n";
      readable = false;
      continue;
    }
    const Tally tally = check_table(reading.table, folder);
    std::cout << file << ": " << tally.within << " of " << tally.within + tally.off + tally.not_covered << " within tolerance, " << tally.not_covered
              << " not covered\n";
    passed += tally.within;
    failed += tally.off;
    complaints.insert(complaints.end(), tally.complaints.begin(), tally.complaints.end());
    for (const auto& [kind, rows] : tally.kinds_missing) missing.push_back("not covered: " + file + " " + kind + " (" + std::to_string(rows) + ")");
  }
  for (const std::string& line : complaints) std::cout << line << "\n";
  for (const std::string& line : missing) std::cout << line << "\n";
  std::cout << passed << " passed, " << failed << " failed\n";
  return readable && failed == 0 ? 0 : 1;
}

}  // namespace

}  // namespace fogsheet::values

int main(int count, char** arguments) {
  if (count != 2) {
    std::cout << "usage: values_runner DIR\n";
    return 1;
  }
  return fogsheet::values::run(arguments[1]);
}
