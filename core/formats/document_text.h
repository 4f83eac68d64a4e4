// A document as a line of text: "1:" and base64url of tagged sections with lengths and a checksum. The same in a link's
// fragment, in a saved file and in a QR code.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/document/document.h"

namespace fogsheet {

inline constexpr int k_document_format = 1;
inline constexpr std::size_t k_most_text_bytes = 40'000'000;  // refused unread beyond; the fullest sheet there can be has under 36 000 000

std::string encode_document(const Document& document);

/// Reads "1:...", or a link (anything up to its '#'), with white space around it. Checks every field before it is
/// believed. Faults: text_*, each with the place or the section.
/// @param left_out  set when a later program has put in what is not understood here and may be left out
Result<Document> decode_document(std::string_view text, bool* left_out = nullptr);

}  // namespace fogsheet
