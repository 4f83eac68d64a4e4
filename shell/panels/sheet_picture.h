// A sheet as small as a row of a list: its paper, its marks and legs, nothing else.
#pragma once

#include <string>

#include "core/document/document.h"

namespace fogsheet {

/// As SVG whose inks are classes, for a page's panel.
std::string sheet_picture(const Document& document);

}  // namespace fogsheet
