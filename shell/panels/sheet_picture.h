// A sheet as small as a row of a list: its paper, its marks and legs, nothing else.
#pragma once

#include <span>
#include <string>

#include "core/document/document.h"
#include "core/sheet/paper.h"

namespace fogsheet {

/// As SVG whose inks are classes, for a page's panel.
/// @param pages  of paper that it comes to lie on, mm of the sheet: outlined, and seen whole
std::string sheet_picture(const Document& document, std::span<const SheetRect> pages = {});

}  // namespace fogsheet
