// A table of reference values as the files hold it: rows with inputs by name, and the outputs wanted, each with its
// tolerance and unit. Three shapes are read into the same rows: lists of "name=value" (columns inputs and outputs), a text
// as the only input (column text), and a column a quantity (tolerances in tolerances.csv). README.md has the columns.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace fogsheet::values {

struct Wanted {
  std::string name;
  std::string value;
  double tolerance = 0;
  std::string unit;
};

struct Row {
  std::string id, kind, table, row_class;
  std::map<std::string, std::string> inputs;
  std::vector<Wanted> wanted;
  std::vector<std::string> needs;  // "KIND:TABLE" or "file:NAME"
  std::string defect;              // why it cannot be checked; empty when it can
};

struct Table {
  std::string file;
  std::vector<Row> rows;

  /// The rows of that kind with that `table`.
  std::vector<const Row*> rows_of(const std::string& kind, const std::string& table) const;
};

/// Tolerances of tables with a column a quantity. A file not named there takes those of its kind in any file.
class Tolerances {
 public:
  struct Entry {
    std::string file, kind, column, unit;
    double tolerance = 0;
  };

  /// Empty for a text that is not such a table.
  static std::optional<Tolerances> read(const std::string& text);
  std::vector<Entry> of(const std::string& file, const std::string& kind) const;

 private:
  std::vector<Entry> entries_;
};

struct Reading {
  Table table;
  std::string error;  // why it could not be read; empty when it was
};

Reading read_table(const std::string& file, const std::string& text, const Tolerances& tolerances);

}  // namespace fogsheet::values
