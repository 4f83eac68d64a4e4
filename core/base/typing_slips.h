// Slips of the hand that make a typed text unreadable, put right: to find the likely reading that a problem offers.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fogsheet {

/// The text with each of these put right, where it has it: the letters O, I and l beside figures, meant as 0 and 1; points
/// used as blanks (50.12.34 as 50 12 34 and as 50 12.34). Empty when it has none.
std::vector<std::string> likely_corrections(std::string_view text);

}  // namespace fogsheet
