// base64url without padding. Source: RFC 4648 section 5; left-over bits must be zero, so that each byte string has one text.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fogsheet {

std::string base64url_encode(std::span<const std::uint8_t> bytes);

/// Faults: text_bad_character (begin: where), text_cut_short (a length of 1 modulo 4, or left-over bits).
Result<std::vector<std::uint8_t>> base64url_decode(std::string_view text);

}  // namespace fogsheet
