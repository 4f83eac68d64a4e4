// A value, or the Problem that kept it from being made. For everything that depends on what a user gave.
#pragma once

#include <utility>
#include <variant>

#include "core/base/check.h"
#include "core/base/fault.h"

namespace fogsheet {

template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
  Result(Problem problem) : held_(std::in_place_index<1>, std::move(problem)) {}
  Result(Fault fault) : Result(Problem{.fault = fault}) {}

  bool ok() const { return held_.index() == 0; }
  explicit operator bool() const { return ok(); }

  /// The value; only when ok().
  const T& value() const& {
    SHEET_CHECK(ok(), "a result was used without looking whether it holds a value");
    return std::get<0>(held_);
  }
  T&& value() && {
    SHEET_CHECK(ok(), "a result was used without looking whether it holds a value");
    return std::get<0>(std::move(held_));
  }
  const T& operator*() const& { return value(); }
  const T* operator->() const { return &value(); }

  /// The problem; only when not ok().
  const Problem& problem() const {
    SHEET_CHECK(!ok(), "a result that holds a value has no problem");
    return std::get<1>(held_);
  }

 private:
  std::variant<T, Problem> held_;
};

/// For acts that give nothing back but success.
struct Done {
  bool operator==(const Done&) const = default;
};

}  // namespace fogsheet
