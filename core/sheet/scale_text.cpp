#include "core/sheet/scale_text.h"

#include <string>

#include "core/base/utf8.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_figures = 9;

bool is_group_mark(char32_t c) { return c == ' ' || c == '.' || c == ',' || c == '\'' || c == 0x2019 || c == 0xA0 || c == 0x202F; }

// What stands after "1:" or "1 to", or all of it.
std::string_view after_ratio(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon != std::string_view::npos && trimmed(text.substr(0, colon)) == "1") return trimmed(text.substr(colon + 1));
  return text;
}

}  // namespace

Result<double> parse_scale(std::string_view typed) {
  const std::string_view whole = trimmed(typed);
  if (whole.empty()) return Problem{.fault = Fault::entry_empty, .texts = {"scale"}};
  const auto unreadable = [&](std::string_view part) { return Problem{.fault = Fault::entry_unreadable, .texts = {"scale", std::string(part)}}; };
  std::string_view left = after_ratio(whole);
  double value = 0;
  std::size_t figures = 0, in_group = 0;
  bool grouped = false;
  while (!left.empty()) {
    const std::string_view before = left;
    const char32_t c = next_code_point(left);
    if (c >= '0' && c <= '9') {
      value = value * 10 + static_cast<double>(c - '0');
      ++figures;
      ++in_group;
    } else if (is_group_mark(c) && figures > 0 && (!grouped || in_group == 3)) {
      grouped = true;
      in_group = 0;
    } else {
      return unreadable(before);
    }
  }
  if (figures == 0 || figures > k_most_figures || (grouped && in_group != 3)) return unreadable(whole);
  return value;
}

}  // namespace fogsheet
