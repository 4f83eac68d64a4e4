// The note inside a chart's rose, typed in three fields: variation, its year, its annual change.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/magnetic/variation.h"
#include "shell/form.h"

namespace fogsheet {

/// Reads fields `prefix` + "variation", "variation-year" and "annual-change" of a form; what is wrong is noted at its field.
/// No annual change means none. Gives the first problem.
Result<PrintedVariation> typed_chart_note(Form& form, const std::string& prefix);

/// "12′E", "0.2°W", "8 E", "-5": minutes of arc a year, east positive; a plain number is minutes.
/// Faults: entry_*, number_out_of_range.
Result<double> typed_annual_change_min(const std::string& text);

}  // namespace fogsheet
