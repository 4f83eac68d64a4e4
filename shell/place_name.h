// A position written in the name of a place, as scripts do: 44°10.0'N 031°20.0'W.
#pragma once

#include <cstdlib>
#include <optional>
#include <string>
#include <string_view>

#include "core/positions/position.h"

namespace fogsheet {

inline std::optional<Position> position_named(std::string_view text) {
  const std::string whole(text);
  const char* at = whole.c_str();
  double parts[2] = {};
  for (double& part : parts) {
    char* end = nullptr;
    const double degrees = std::strtod(at, &end);
    if (end == at || std::string_view(end).substr(0, 2) != "°") return std::nullopt;
    at = end + 2;
    const double minutes = std::strtod(at, &end);
    if (end == at || *end != '\'') return std::nullopt;
    at = end + 1;
    if (*at != 'N' && *at != 'S' && *at != 'E' && *at != 'W') return std::nullopt;
    part = (degrees + minutes / 60) * (*at == 'S' || *at == 'W' ? -1 : 1);
    ++at;
    while (*at == ' ') ++at;
  }
  return Position{.lat_deg = parts[0], .lon_deg = parts[1]};
}

}  // namespace fogsheet
