// The text in a file's bytes, as UTF-8: by its byte order mark, else UTF-8 where it is that, else Windows-1252, which is what
// text of one byte a character mostly is (common practice, no source).
#pragma once

#include <string>
#include <string_view>

namespace fogsheet {

/// Without its byte order mark, well formed; half a character becomes U+FFFD.
std::string text_of_file(std::string_view bytes);

/// The character of a byte of Windows-1252. Source: the Unicode Consortium's mapping table CP1252.TXT, from memory; the five
/// bytes it leaves open are the control characters of that number, as the WHATWG Encoding standard has it.
char32_t windows_1252(unsigned char byte);

/// Adds a character to a UTF-8 text; U+FFFD for what is none.
void add_character(std::string& text, char32_t character);

}  // namespace fogsheet
