// A document as one range-coded section: all its fields in the order below, each as likely as it is. What is usual takes next
// to nothing: ids that follow on, legs that begin where the last ended, a sheet without a compass. Places are counted in the
// cells of the smallest area round the middle that holds them all, and where they are whole 0.1', 0.01' or 0.001', as
// typed ones are, in those. The sections that most sheets lack are inside as the bytes they have on their own.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/document/document.h"

namespace fogsheet {

/// @param document  one that check_document lets pass
std::vector<std::uint8_t> pack(const Document& document);

/// Fields are within their bounds, or the fault is text_section, naming the part; what only the whole document can
/// tell is check_document's business. Any bytes mean something: a checksum must vouch for them.
Result<Document> unpack(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
