// What lies on the sheet and can be named, one thing at a time: what the outline lists, and what the keys move.
#pragma once

#include <variant>

#include "core/document/ids.h"

namespace fogsheet {

struct SheetItself { bool operator==(const SheetItself&) const = default; };
enum class EdgePart { body, end_a, end_b };
/// A leg, taken by its point or anywhere along it, or the hinge that carries both.
enum class DividersPart { leg_a, leg_b, hinge };

using Thing = std::variant<SheetItself, EdgePart, DividersPart, LegId, MarkId, RoseId, NoteId>;

}  // namespace fogsheet
