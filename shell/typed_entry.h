// What is typed into the fields of a compass's log and of passages, put into the value it is of, and shown there again.
// Each put leaves what stands alone on a problem.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/base/utf8.h"

namespace fogsheet::typed {

using Parsed = Result<Done>;

/// A name that no field has.
inline Problem no_such_field(const std::string& field) { return {.fault = Fault::entry_unreadable, .texts = {"field", field}}; }

template <class Value>
Parsed put(Value& value, const Result<Value>& parsed) {
  if (!parsed) return parsed.problem();
  value = *parsed;
  return Done{};
}

/// What may be left empty.
template <class Value, class Parse>
Parsed put_optional(std::optional<Value>& value, const std::string& text, Parse parse) {
  if (trimmed(text).empty()) {
    value.reset();
    return Done{};
  }
  const Result<Value> typed = parse(text);
  if (!typed) return typed.problem();
  value = *typed;
  return Done{};
}

inline Parsed put_text(std::string& value, const std::string& text) {
  value = text;
  return Done{};
}

/// "047", or "047.3" where there is a tenth.
std::string direction_shown(double deg);
std::string direction_shown(const std::optional<double>& deg);
/// As few decimals as tell it, at most three: "0.7", "12"; empty for none.
std::string number_shown(const std::optional<double>& value);

}  // namespace fogsheet::typed
