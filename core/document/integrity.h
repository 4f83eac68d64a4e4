// What only a whole document can tell: ids used once, legs between marks that are there, everything on the sheet.
// For documents from outside: texts, links, journals.
#pragma once

#include "core/base/result.h"
#include "core/document/document.h"

namespace fogsheet {

/// How far off the sheet a row may lie: the last digit of a sine differs between machines, and documents must go on loading.
inline constexpr double k_sheet_slack_mm = 0.01;

/// Ids unique and below next_id; legs between marks that exist and differ in place, no two alike; marks, roses and notes on
/// the sheet, give or take the slack; no table over its bound.
/// Faults: text_section, naming the table and the row's place in it.
Result<Done> check_document(const Document& document);

}  // namespace fogsheet
