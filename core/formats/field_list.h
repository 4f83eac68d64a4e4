// One description of a value's fields serves three ways: to write it, to read it back within its bounds, and to bring what a
// user gave to what can be kept. A description is a template over the list: `template <class Fields> void describe(Fields& f,
// Value& value)`, and names each field for the sentence that refuses it.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/base/fault.h"
#include "core/document/document.h"
#include "core/formats/bytes.h"

namespace fogsheet {

/// direction(): [0, 360) in whole parts of a degree. text(): one that is required is not empty.
class FieldWriter {
 public:
  void number(const char*, double& value, double parts, double, double) { out_.signed_whole(whole_parts(value, parts)); }
  void direction(const char*, double& deg, double parts) { out_.whole(static_cast<std::uint64_t>(whole_parts(deg, parts))); }
  void whole(const char*, std::uint32_t& value, std::uint32_t, std::uint32_t) { out_.whole(value); }
  void text(const char*, std::string& value, std::size_t, bool = false) { out_.text(value); }
  void flag(bool& value) { out_.whole(value ? 1 : 0); }
  void code(const char*, unsigned& value, unsigned) { out_.whole(value); }
  void date(const char*, Date& value);
  bool present(bool is_there) {
    flag(is_there);
    return is_there;
  }
  std::size_t count(const char*, std::size_t rows, std::size_t) {
    out_.whole(rows);
    return rows;
  }
  bool ok() const { return true; }
  /// Marks where a part begins that changes by itself: differences go by these.
  void cut() { cuts_.push_back(out_.bytes().size()); }
  const std::vector<std::size_t>& cuts() const { return cuts_; }
  const std::vector<std::uint8_t>& bytes() const { return out_.bytes(); }

 private:
  ByteWriter out_;
  std::vector<std::size_t> cuts_;
};

/// After a field that no such value may hold, and only then, ok() is false; the rest is read as nought.
class FieldReader {
 public:
  explicit FieldReader(std::span<const std::uint8_t> bytes) : in_(bytes) {}
  void number(const char*, double& value, double parts, double least, double most);
  void direction(const char*, double& deg, double parts);
  void whole(const char*, std::uint32_t& value, std::uint32_t least, std::uint32_t most);
  void text(const char*, std::string& value, std::size_t most_bytes, bool required = false);
  void flag(bool& value) {
    unsigned code = 0;
    this->code("", code, 2);
    value = code == 1;
  }
  void code(const char*, unsigned& value, unsigned count);
  void date(const char*, Date& value);
  bool present(bool) {
    bool is_there = false;
    flag(is_there);
    return is_there;
  }
  std::size_t count(const char*, std::size_t, std::size_t most);
  void cut() {}
  bool ok() const { return ok_ && in_.ok(); }
  bool at_end() const { return ok_ && in_.at_end(); }

 private:
  ByteReader in_;
  bool ok_ = true;
};

/// Rounds numbers to whole parts, trims and mends texts, and keeps the first reason for which the value can't be kept:
/// number_missing, number_out_of_range, name_empty, name_too_long, date_unreadable, table_full.
class FieldChecker {
 public:
  void number(const char* name, double& value, double parts, double least, double most);
  void direction(const char* name, double& deg, double parts);
  void whole(const char* name, std::uint32_t& value, std::uint32_t least, std::uint32_t most);
  void text(const char* name, std::string& value, std::size_t most_bytes, bool required = false);
  void flag(bool&) {}
  void code(const char*, unsigned&, unsigned) {}
  void date(const char* name, Date& value);
  bool present(bool is_there) { return is_there; }
  std::size_t count(const char* name, std::size_t rows, std::size_t most);
  void cut() {}
  bool ok() const { return !problem_; }
  const std::optional<Problem>& problem() const { return problem_; }

 private:
  void keep(Problem problem) {
    if (!problem_) problem_ = std::move(problem);
  }
  std::optional<Problem> problem_;
};

// -- what descriptions have in common

template <class Fields, class Value, class Describe>
void optional_field(Fields& f, std::optional<Value>& value, Describe describe_it) {
  if (!f.present(value.has_value())) {
    value.reset();
    return;
  }
  if (!value) value.emplace();
  describe_it(*value);
}

template <class Fields, class Enum>
void enum_field(Fields& f, const char* name, Enum& value, Enum last) {
  auto code = static_cast<unsigned>(value);
  f.code(name, code, static_cast<unsigned>(last) + 1);
  value = static_cast<Enum>(code);
}

template <class Fields, class Row, class Describe>
void list_field(Fields& f, const char* name, std::vector<Row>& rows, std::size_t most, Describe describe_it) {
  rows.resize(f.count(name, rows.size(), most));
  for (Row& row : rows) {
    if (!f.ok()) return;
    describe_it(row);
  }
}

}  // namespace fogsheet
