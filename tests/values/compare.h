// Whether what was computed is what a row wants: README.md, "Comparing".
#pragma once

#include <string>

#include "tests/values/table.h"

namespace fogsheet::values {

/// @param got as text; numbers in full. "none" where there is no solution.
bool within(const Wanted& wanted, const std::string& got);

}  // namespace fogsheet::values
