// Comma-separated values as in RFC 4180: quotes where a field has a comma, a quote or a line end, doubled inside.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fogsheet::values {

/// Lines of fields, empty lines left out. Empty when a quote is never closed or stands inside a bare field.
std::optional<std::vector<std::vector<std::string>>> read_csv(std::string_view text);

}  // namespace fogsheet::values
