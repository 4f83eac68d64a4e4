// The sheet that a form being filled in would make: for its preview and for making it.
#pragma once

#include <optional>

#include "core/document/document.h"
#include "shell/form.h"
#include "shell/session.h"

namespace fogsheet {

/// How a new sheet's middle and scale are told.
enum class SheetFrom { middle, corners, marks };
SheetFrom sheet_from(const Form& form);

/// The sheet as the form has it so far, or nothing while something is missing or wrong.
std::optional<Document> previewed_sheet(const Session& session);

/// The same with every reason noted at its field in the form. With marks, those of the sheet in hand and their legs come along.
Result<Document> made_new_sheet(Session& session);

}  // namespace fogsheet
