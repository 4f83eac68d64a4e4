#include "core/base/entry_tokens.h"

#include "core/base/utf8.h"

namespace fogsheet {

namespace {

using Kind = EntryToken::Kind;

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }
bool is_letter(char32_t c) { return (c >= U'A' && c <= U'Z') || (c >= U'a' && c <= U'z'); }

// White space, and the marks of direction that come along when text is copied from a page.
bool is_space(char32_t c) {
  return c == U' ' || (c >= 0x09 && c <= 0x0D) || c == 0xA0 || c == 0x1680 || (c >= 0x2000 && c <= 0x200B) || c == 0x200E || c == 0x200F ||
         c == 0x202F || c == 0x205F || c == 0x2060 || c == 0x3000 || c == 0xFEFF;
}

Kind kind_of(char32_t c) {
  switch (c) {
    case U'+':
      return Kind::plus;
    case U'-':
    case 0x2010:  // hyphen
    case 0x2011:  // hyphen that does not break
    case 0x2012:  // figure dash
    case 0x2013:  // en dash
    case 0x2212:  // minus sign
      return Kind::minus;
    case 0xB0:   // degree sign
    case 0xBA:   // masculine ordinal
    case 0x2DA:  // ring above
      return Kind::degree;
    case U'\'':
    case U'`':
    case 0xB4:    // acute accent
    case 0x2B9:   // modifier prime
    case 0x2018:  // curly quotes
    case 0x2019:
    case 0x2032:  // prime
      return Kind::minute;
    case U'"':
    case 0x2BA:   // modifier double prime
    case 0x201C:  // curly quotes
    case 0x201D:
    case 0x2033:  // double prime
      return Kind::second;
    case U',':
      return Kind::comma;
    case U';':
      return Kind::semicolon;
    case U'/':
      return Kind::slash;
    case U':':
      return Kind::colon;
    default:
      return Kind::other;
  }
}

bool digit_at(std::string_view text, std::size_t at) { return at < text.size() && is_digit(static_cast<unsigned char>(text[at])); }

}  // namespace

std::vector<EntryToken> entry_tokens(std::string_view text, CommaMeans comma) {
  std::vector<EntryToken> tokens;
  bool after_space = true;
  std::string_view rest = text;
  while (!rest.empty()) {
    EntryToken token{.begin = text.size() - rest.size(), .after_space = after_space};
    std::string_view after_one = rest;
    const char32_t c = next_code_point(after_one);
    if (is_space(c)) {
      rest = after_one;
      after_space = true;
      continue;
    }
    if (is_digit(c) || (c == U'.' && digit_at(rest, 1))) {
      token.kind = Kind::number;
      token.number = *scan_decimal(rest);
      const std::size_t mark = token.number.length;
      const bool comma_inside =
          comma == CommaMeans::decimal_mark && !token.number.has_mark && mark < rest.size() && rest[mark] == ',' && digit_at(rest, mark + 1);
      if (comma_inside) token.number = *scan_decimal(rest, ",");
      rest.remove_prefix(token.number.length);
    } else if (is_letter(c)) {
      token.kind = Kind::word;
      while (!rest.empty() && is_letter(static_cast<unsigned char>(rest.front()))) {
        token.word += static_cast<char>(rest.front() | 0x20);
        rest.remove_prefix(1);
      }
    } else {
      token.kind = kind_of(c);
      rest = after_one;
    }
    token.end = text.size() - rest.size();
    after_space = false;
    // Two strokes are the seconds' mark.
    const bool second_stroke = token.kind == Kind::minute && !tokens.empty() && tokens.back().kind == Kind::minute && !token.after_space;
    if (second_stroke) {
      tokens.back().kind = Kind::second;
      tokens.back().end = token.end;
    } else {
      tokens.push_back(std::move(token));
    }
  }
  return tokens;
}

std::optional<Problem> unfit_entry(std::string_view what, std::string_view text) {
  if (text.size() > k_longest_entry)
    return Problem{.fault = Fault::entry_too_long,
                   .texts = {std::string(what)},
                   .numbers = {static_cast<double>(text.size()), static_cast<double>(k_longest_entry)}};
  if (entry_tokens(text, CommaMeans::separator).empty()) return Problem{.fault = Fault::entry_empty, .texts = {std::string(what)}};
  return std::nullopt;
}

Problem unreadable_entry(std::string_view what, std::string_view text, std::size_t begin, std::size_t end) {
  return {.fault = Fault::entry_unreadable, .texts = {std::string(what), std::string(text.substr(begin, end - begin))}, .begin = begin, .end = end};
}

}  // namespace fogsheet
