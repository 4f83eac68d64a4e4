// Texts that were written by other programs than ours and load for ever (tests/core/fixtures), and what they say.
#pragma once

#include <string_view>

#include "core/document/document.h"

namespace fogsheet {

inline constexpr std::string_view k_text_of_format_1 =
#include "tests/core/fixtures/document_format_1.inc"
    ;

inline constexpr std::string_view k_text_with_details =
#include "tests/core/fixtures/document_format_1_details.inc"
    ;

inline constexpr std::string_view k_text_with_compass =
#include "tests/core/fixtures/document_format_1_compass.inc"
    ;

inline constexpr std::string_view k_text_with_passage =
#include "tests/core/fixtures/document_format_1_passage.inc"
    ;

inline constexpr std::string_view k_packed_text =
#include "tests/core/fixtures/document_format_1_packed.inc"
    ;

inline constexpr std::string_view k_packed_text_with_passage =
#include "tests/core/fixtures/document_format_1_packed_passage.inc"
    ;

/// What the first of these texts says, written out.
Document document_of_format_1();
/// The same with what later sections hold.
Document document_with_details();
/// And with the card that it is steered by.
Document document_with_compass();
/// And with two passages, one of them with all that it can hold.
Document document_with_passages();

}  // namespace fogsheet
