// Documents as texts were written before they were packed: such texts load for ever, so what reads them is tested with more
// of them than the pinned ones. What no action allows can be written too, to see it refused.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/document/document.h"

namespace fogsheet {

std::string plain_text_of(const Document& document);

/// A text of these bytes, with a checksum that is right.
std::string text_of_bytes(std::vector<std::uint8_t> bytes);

}  // namespace fogsheet
