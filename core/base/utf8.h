// UTF-8, strictly: what a user typed or a text from outside holds. Source: Unicode 15 chapter 3.9, table 3-7 (well-formed
// byte sequences): no overlong forms, no surrogates, nothing past U+10FFFF.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace fogsheet {

inline constexpr char32_t k_replacement_character = 0xFFFD;

/// One code point a call, moving `text` past it; U+FFFD for a byte that begins none, past which it moves. `text` must not
/// be empty.
char32_t next_code_point(std::string_view& text);

bool is_utf8(std::string_view text);

/// Code points; each broken byte counts one.
std::size_t count_characters(std::string_view text);

/// The same text with U+FFFD for each broken byte, and without what turns the direction of writing and does not turn it back
/// by the line's end: it would turn the figures of a sentence that the text stands in. Only of nothing else: U+FFFD. Never longer
/// than three bytes a byte. Source: Unicode Standard Annex #9, The Bidirectional Algorithm, section 2 and BD9 to BD13.
std::string repaired_utf8(std::string_view text);

/// As many whole characters from the start of a well-formed text as take at most so many bytes.
std::string_view fitting(std::string_view text, std::size_t most_bytes);

/// Without ASCII white space and no-break spaces at either end.
std::string_view trimmed(std::string_view text);

}  // namespace fogsheet
