#include "core/base/utf8.h"

#include <algorithm>
#include <iterator>
#include <vector>

#include "core/base/check.h"

namespace fogsheet {
namespace {

constexpr std::string_view k_replacement = "\xEF\xBF\xBD";
constexpr std::string_view k_no_break_space = "\xC2\xA0";

// How many bytes the sequence has that begins `text`, 0 when none does; its value in `code_point`.
struct Sequence {
  std::size_t length = 0;
  char32_t code_point = k_replacement_character;
};

Sequence first_sequence(std::string_view text) {
  const auto byte = [&](std::size_t place) { return static_cast<unsigned char>(text[place]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) return {1, lead};
  const std::size_t length = lead < 0xC2 ? 0 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : lead < 0xF5 ? 4 : 0;
  if (length == 0 || text.size() < length) return {};
  char32_t code_point = lead & (0x7Fu >> length);
  for (std::size_t place = 1; place < length; ++place) {
    if ((byte(place) & 0xC0u) != 0x80) return {};
    code_point = code_point << 6 | (byte(place) & 0x3Fu);
  }
  const bool overlong = (length == 3 && code_point < 0x800) || (length == 4 && code_point < 0x10000);
  const bool surrogate = code_point >= 0xD800 && code_point <= 0xDFFF;
  if (overlong || surrogate || code_point > 0x10FFFF) return {};
  return {length, code_point};
}

bool is_embedding(char32_t c) { return c == 0x202A || c == 0x202B || c == 0x202D || c == 0x202E; }
bool is_isolate(char32_t c) { return c >= 0x2066 && c <= 0x2068; }
constexpr char32_t k_end_of_embedding = 0x202C, k_end_of_isolate = 0x2069;
constexpr std::size_t k_turn_bytes = 3;  // each of these

constexpr std::size_t k_deepest = 125;  // of them within each other (UAX #9, BD2): further ones have no effect

// What turns the direction of writing in a text, as it is built up, and is not turned back yet.
class OpenTurns {
 public:
  explicit OpenTurns(std::string& text) : text_(text) {}

  /// Before the character is put on; false when it is to be left out.
  bool meet(char32_t character) {
    if (is_embedding(character) || is_isolate(character)) {
      if (open_.size() == k_deepest) return false;
      open_.push_back({text_.size(), is_isolate(character)});
    } else if (character == k_end_of_embedding) {
      if (!open_.empty() && !open_.back().is_isolate) open_.pop_back();
    } else if (character == k_end_of_isolate) {
      const auto last = std::find_if(open_.rbegin(), open_.rend(), [](const Turn& turn) { return turn.is_isolate; });
      if (last != open_.rend()) open_.erase(std::prev(last.base()), open_.end());
    } else if (character == '\n') {
      leave_out();
    }
    return true;
  }

  void leave_out() {
    for (; !open_.empty(); open_.pop_back()) text_.erase(open_.back().at, k_turn_bytes);
  }

 private:
  struct Turn {
    std::size_t at;
    bool is_isolate;
  };
  std::string& text_;
  std::vector<Turn> open_;
};

bool is_space(char c) { return c == ' ' || (c >= '\t' && c <= '\r'); }

}  // namespace

char32_t next_code_point(std::string_view& text) {
  SHEET_CHECK(!text.empty(), "no character is left");
  const Sequence sequence = first_sequence(text);
  text.remove_prefix(sequence.length == 0 ? 1 : sequence.length);
  return sequence.code_point;
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = first_sequence(text).length;
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

std::size_t count_characters(std::string_view text) {
  std::size_t count = 0;
  for (; !text.empty(); ++count) next_code_point(text);
  return count;
}

std::string repaired_utf8(std::string_view text) {
  std::string repaired;
  OpenTurns turns(repaired);
  const bool is_empty = text.empty();
  while (!text.empty()) {
    const auto [length, character] = first_sequence(text);
    if (turns.meet(character)) repaired += length == 0 ? k_replacement : text.substr(0, length);
    text.remove_prefix(length == 0 ? 1 : length);
  }
  turns.leave_out();
  return repaired.empty() && !is_empty ? std::string(k_replacement) : repaired;
}

std::string_view fitting(std::string_view text, std::size_t most_bytes) {
  if (text.size() <= most_bytes) return text;
  std::size_t size = most_bytes;
  while (size > 0 && (static_cast<unsigned char>(text[size]) & 0xC0u) == 0x80) --size;
  return text.substr(0, size);
}

std::string_view trimmed(std::string_view text) {
  for (;;) {
    if (!text.empty() && is_space(text.front())) text.remove_prefix(1);
    else if (text.substr(0, k_no_break_space.size()) == k_no_break_space) text.remove_prefix(k_no_break_space.size());
    else break;
  }
  for (;;) {
    if (!text.empty() && is_space(text.back())) text.remove_suffix(1);
    else if (text.size() >= k_no_break_space.size() && text.substr(text.size() - k_no_break_space.size()) == k_no_break_space)
      text.remove_suffix(k_no_break_space.size());
    else break;
  }
  return text;
}

}  // namespace fogsheet
