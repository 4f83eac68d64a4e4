// What changed from one boat to another, as bytes: which pieces of her (name, compass, log entry) stand, and what is written in
// place of the others, less what a new piece has in common with the one it replaces.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/boat/boat.h"

namespace fogsheet {

/// Empty when the two are equal.
std::vector<std::uint8_t> difference(const Boat& from, const Boat& to);

/// The boat that `difference` was made towards. @param from the one it was made from. Faults: text_section.
Result<Boat> applied(std::span<const std::uint8_t> difference, const Boat& from);

}  // namespace fogsheet
