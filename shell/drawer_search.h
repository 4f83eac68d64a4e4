// Which sheets of the drawer are found by what a user typed: by anything that is written on them.
#pragma once

#include <string>
#include <vector>

#include "shell/sheets.h"

namespace fogsheet {

/// Those of `sheets`, in their order, on which each word of `typed` stands somewhere: in the sheet's name or note, its day, its
/// datum, the names and notes of its marks, what is written on it, its passages, its boat. All of them for no word.
std::vector<const SheetInDrawer*> found_among(const std::vector<const SheetInDrawer*>& sheets, const std::string& typed);

}  // namespace fogsheet
