// Lengths and speeds as they are typed into fields, in the unit of the field.
#pragma once

#include <string>

#include "core/base/result.h"

namespace fogsheet {

/// Faults: those of parse_length and parse_speed (core/base/quantity_text.h).
Result<double> typed_nm(const std::string& text);
Result<double> typed_metres(const std::string& text);
Result<double> typed_knots(const std::string& text);

}  // namespace fogsheet
