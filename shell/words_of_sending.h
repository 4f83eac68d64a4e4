// What is said of a sheet that goes to somebody else, and of one that came.
#pragma once

#include <string>
#include <vector>

#include "core/document/document.h"

namespace fogsheet::words {

inline std::string send_title() { return "Send it"; }
inline std::string code_title() { return "Show it as a code"; }

/// A line each: marks and legs, notes, passages, card.
std::vector<std::string> holds(const Document& document);
/// The same in one: "5 marks, 4 legs; passage “outward”".
std::string holds_in_short(const Document& document);

std::string where_it_goes();
std::string characters(std::size_t count);
inline std::string link_too_long() { return "Too long for many messages"; }
std::string link_too_long_advice(std::size_t most);
std::string not_taken_to_share();
std::string code_too_long(std::size_t most);

std::string how_to_read_code();
std::string code_glares();
inline std::string code_is_made() { return "It is being made."; }
std::string code_is_old();
std::string code_says(std::size_t characters);

/// A mark's position as a `geo:` link.
inline std::string copy_its_place() { return "Copy its place"; }
std::string copied(bool is_link);
std::string not_copied(bool is_link);

std::string link_arrived();
std::string link_opened(const Document& document);
std::string here_already(const Document& document);

}  // namespace fogsheet::words
