#include "shell/value.h"

#include "core/base/check.h"

namespace fogsheet {

const Value& Value::operator[](std::string_view name) const {
  static const Value null;
  if (const Members* all = members())
    for (const auto& [key, value] : *all)
      if (key == name) return value;
  return null;
}

const Value& Value::operator[](std::size_t place) const {
  static const Value none;
  const List* list = items();
  return list && place < list->size() ? (*list)[place] : none;
}

bool Value::has(std::string_view name) const {
  if (const Members* all = members())
    for (const auto& [key, value] : *all)
      if (key == name) return true;
  return false;
}

Value& Value::set(std::string name, Value value) {
  if (is_null()) held_ = Members{};
  Members* all = std::get_if<Members>(&held_);
  SHEET_CHECK(all, "a member set on what is no object");
  all->emplace_back(std::move(name), std::move(value));
  return *this;
}

Value& Value::add(Value value) {
  if (is_null()) held_ = List{};
  List* all = std::get_if<List>(&held_);
  SHEET_CHECK(all, "an item added to what is no list");
  all->push_back(std::move(value));
  return *this;
}

}  // namespace fogsheet
