// Names of the objects on a sheet: a number of their own type each, unique within a document, never reused in it.
#pragma once

#include <compare>
#include <cstdint>

namespace fogsheet {

template <class Tag>
struct Id {
  std::uint32_t value = 0;  // 0 names nothing
  auto operator<=>(const Id&) const = default;
};

using MarkId = Id<struct MarkTag>;
using LegId = Id<struct LegTag>;
using RoseId = Id<struct RoseTag>;
using NoteId = Id<struct NoteTag>;

}  // namespace fogsheet
