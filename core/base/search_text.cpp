#include "core/base/search_text.h"

#include <algorithm>

namespace fogsheet {
namespace {

// A code point of two bytes, small for great.
unsigned folded(unsigned code) {
  if (code >= 0xC0 && code <= 0xDE && code != 0xD7) return code + 0x20;
  const bool even = (code >= 0x100 && code <= 0x12E) || (code >= 0x132 && code <= 0x136) || (code >= 0x14A && code <= 0x176);
  const bool odd = (code >= 0x139 && code <= 0x147) || (code >= 0x179 && code <= 0x17D);
  if ((even && code % 2 == 0) || (odd && code % 2 == 1)) return code + 1;
  if (code == 0x178) return 0xFF;
  if (code == 0x386) return 0x3AC;
  if (code >= 0x388 && code <= 0x38A) return code + 0x25;
  if (code == 0x38C) return 0x3CC;
  if (code == 0x38E || code == 0x38F) return code + 0x3F;
  if (code >= 0x391 && code <= 0x3AB && code != 0x3A2) return code + 0x20;
  if (code == 0x3C2) return 0x3C3;
  if (code >= 0x410 && code <= 0x42F) return code + 0x20;
  if (code >= 0x400 && code <= 0x40F) return code + 0x50;
  return code;
}

}  // namespace

void fold(std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if (byte >= 'A' && byte <= 'Z') text[i] = static_cast<char>(byte + 0x20);
    if (byte < 0xC3 || byte > 0xDF || i + 1 == text.size()) continue;
    const unsigned code = folded((byte & 0x1Fu) << 6 | (static_cast<unsigned char>(text[i + 1]) & 0x3Fu));
    text[i] = static_cast<char>(0xC0 | code >> 6);
    text[++i] = static_cast<char>(0x80 | (code & 0x3F));
  }
}

Search::Search(std::string_view typed) {
  for (std::size_t at = 0; at < typed.size();) {
    const std::size_t end = std::min(typed.find_first_of(" \t\n", at), typed.size());
    if (end > at) {
      words_.push_back({std::string(typed.substr(at, end - at))});
      fold(words_.back().text);
    }
    at = end + 1;
  }
  missing_ = words_.size();
}

void Search::look_in(std::string_view text) {
  if (missing_ == 0) return;
  folded_.assign(text);
  fold(folded_);
  for (Word& word : words_) {
    if (word.is_found || folded_.find(word.text) == std::string::npos) continue;
    word.is_found = true;
    --missing_;
  }
}

void Search::begin_anew() {
  for (Word& word : words_) word.is_found = false;
  missing_ = words_.size();
}

}  // namespace fogsheet
