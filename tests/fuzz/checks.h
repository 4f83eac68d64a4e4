// What must hold of every reader of typed text, whatever the text.
#pragma once

#include <cstdlib>
#include <string_view>

#include "core/base/result.h"

namespace fogsheet {

inline void must(bool condition) {
  if (!condition) std::abort();
}

/// A problem marks a part of the text, and what it suggests can be read.
template <class Value, class Read>
void check_problem(const Result<Value>& reading, std::string_view text, const Read& read) {
  if (reading.ok()) return;
  const Problem& problem = reading.problem();
  must(problem.begin <= problem.end && problem.end <= text.size());
  must(problem.suggestion.empty() || read(problem.suggestion).ok());
}

}  // namespace fogsheet
