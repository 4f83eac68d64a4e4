// What core computes for each kind of row. One function a kind, found by the kind's name alone.
#pragma once

#include <map>
#include <string>

#include "tests/values/table.h"

namespace fogsheet::values {

/// Outputs by name, as text; numbers in full.
using Outputs = std::map<std::string, std::string>;

/// Thrown by a kind whose row lacks an input or a row it needs: the row is then off, for this reason.
struct RowError {
  std::string reason;
};

/// A row with the table it stands in.
class Inputs {
 public:
  Inputs(const Row& row, const Table& table) : row_(row), table_(table) {}

  const std::string& text(const std::string& name) const;
  double number(const std::string& name) const;

  const std::vector<Wanted>& wanted() const { return row_.wanted; }

  /// The rows of that kind which this row needs.
  std::vector<const Row*> needed(const std::string& kind) const;

 private:
  const Row& row_;
  const Table& table_;
};

/// A text, and a number, as a row has it. Throw RowError.
const std::string& text_in(const Row& row, const std::string& name);
double number_in(const Row& row, const std::string& name);

using Kind = Outputs (*)(const Inputs&);

/// Null for a kind that core does not compute.
Kind find_kind(const std::string& name);

/// A number with all its digits.
std::string in_full(double value);

/// The kinds of one part of core, in a file each.
using KindTable = std::map<std::string, Kind>;
KindTable compass_kinds();
KindTable sailing_kinds();
KindTable earth_kinds();
KindTable magnetic_kinds();
KindTable format_kinds();
KindTable passage_kinds();

}  // namespace fogsheet::values
