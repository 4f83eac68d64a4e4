// What changed from one document to another, by id and as bytes: which single parts, which rows of which table. The same
// for every action, so that none needs an inverse of its own; a journal keeps one a step.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/document/document.h"

namespace fogsheet {

/// Empty when the two are equal. Chunks of tables that both share are not looked into, so that it costs what changed.
std::vector<std::uint8_t> difference(const Document& from, const Document& to);

/// The document that `difference` was made towards, sharing what did not change with `from`, which it was made from.
/// Each field is checked before it is believed, and so is what only the whole document can tell (integrity.h), as far as
/// the change touches it. @param from a sound document. Faults: text_section ("step", or the table that would be unsound).
Result<Document> applied(std::span<const std::uint8_t> difference, const Document& from);

}  // namespace fogsheet
