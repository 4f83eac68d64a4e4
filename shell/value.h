// A plain tree of values: what scripts pass to commands and read back. The web build turns it into JSON and back; tests
// look into it directly.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace fogsheet {

class Value {
 public:
  using List = std::vector<Value>;
  using Members = std::vector<std::pair<std::string, Value>>;  // in the order given

  Value() = default;  // null
  Value(std::nullptr_t) {}
  Value(bool flag) : held_(flag) {}
  Value(double number) : held_(number) {}
  Value(int number) : held_(static_cast<double>(number)) {}
  Value(std::string text) : held_(std::move(text)) {}
  Value(std::string_view text) : held_(std::string(text)) {}
  Value(const char* text) : held_(std::string(text)) {}
  Value(List list) : held_(std::move(list)) {}
  static Value object(Members members = {}) {
    Value value;
    value.held_ = std::move(members);
    return value;
  }
  static Value list() { return Value(List{}); }

  bool is_null() const { return std::holds_alternative<std::monostate>(held_); }
  bool is_object() const { return std::holds_alternative<Members>(held_); }

  /// The held thing, or null when it is of another kind.
  const bool* flag() const { return std::get_if<bool>(&held_); }
  const double* number() const { return std::get_if<double>(&held_); }
  const std::string* text() const { return std::get_if<std::string>(&held_); }
  const List* items() const { return std::get_if<List>(&held_); }
  const Members* members() const { return std::get_if<Members>(&held_); }

  /// The member of that name, or a null value.
  const Value& operator[](std::string_view name) const;
  /// The item at that place of a list, or a null value.
  const Value& operator[](std::size_t place) const;
  bool has(std::string_view name) const;

  /// Adds to an object (or to null, which becomes one); adds to a list (or to null).
  Value& set(std::string name, Value value);
  Value& add(Value value);

  bool operator==(const Value&) const = default;

 private:
  std::variant<std::monostate, bool, double, std::string, List, Members> held_;
};

}  // namespace fogsheet
