// Slips of the hand that make a typed text unreadable, put right: to find the likely reading that a problem offers.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fogsheet {

/// The text with each of these put right, where it has it: the letters O, I and l beside figures, meant as 0 and 1; points
/// used as blanks (50.12.34 as 50 12 34 and as 50 12.34). Empty when it has none.
std::vector<std::string> likely_corrections(std::string_view text);

/// A reading as it is; or, where it failed without a suggestion, the problem with one: if all those corrected texts that
/// `read` can read say the same, that, printed.
template <class Value, class Read, class Print>
Result<Value> with_suggestion(Result<Value> reading, const std::vector<std::string>& corrected_texts, const Read& read, const Print& print) {
  if (reading.ok() || !reading.problem().suggestion.empty()) return reading;
  std::optional<Value> likely;
  for (const std::string& text : corrected_texts) {
    const Result<Value> corrected = read(text);
    if (!corrected.ok()) continue;
    if (likely && !(*likely == *corrected)) return reading;
    likely = *corrected;
  }
  if (!likely) return reading;
  Problem problem = reading.problem();
  problem.suggestion = print(*likely);
  return problem;
}

}  // namespace fogsheet
