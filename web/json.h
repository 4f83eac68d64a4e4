// Values as JSON text and back, for what passes between the page's scripts and the application.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "shell/value.h"

namespace fogsheet {

/// Numbers have the fewest digits that read back as the same double; what is no number (NaN, infinity) becomes null.
std::string to_json(const Value& value);

/// Nothing when the text is no JSON, or nested deeper than 32.
std::optional<Value> parse_json(std::string_view text);

}  // namespace fogsheet
