// A value that never changes and that copies share; or none. For what a document holds whole and changes rarely, so that the
// thousands of documents of its past hold it once.
#pragma once

#include <memory>
#include <utility>

namespace fogsheet {

template <class Value>
class Shared {
 public:
  Shared() = default;
  Shared(Value value) : held_(std::make_shared<const Value>(std::move(value))) {}

  explicit operator bool() const { return held_ != nullptr; }
  const Value& operator*() const { return *held_; }  // only when there is one
  const Value* operator->() const { return held_.get(); }
  void reset() { held_.reset(); }

  /// Of the values, not of where they are.
  bool operator==(const Shared& other) const { return held_ == other.held_ || (held_ && other.held_ && *held_ == *other.held_); }

 private:
  std::shared_ptr<const Value> held_;
};

}  // namespace fogsheet
