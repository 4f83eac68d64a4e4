#include "tests/core/xml_check.h"

#include <set>
#include <string>
#include <vector>

#include "core/base/utf8.h"

namespace fogsheet {
namespace {

constexpr std::string_view k_name_characters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_:.";
constexpr std::string_view k_space = " \t\r\n";

bool holds_only_xml_characters(std::string_view text) {
  if (!is_utf8(text)) return false;
  while (!text.empty()) {
    const char32_t c = next_code_point(text);
    if ((c < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == 0xFFFE || c == 0xFFFF) return false;
  }
  return true;
}

bool entities_are_known(std::string_view text) {
  for (std::size_t at = text.find('&'); at != std::string_view::npos; at = text.find('&', at + 1)) {
    bool known = false;
    for (const std::string_view entity : {"&amp;", "&lt;", "&gt;", "&quot;", "&apos;"}) known |= text.substr(at, entity.size()) == entity;
    if (!known) return false;
  }
  return true;
}

std::string_view taken(std::string_view& text, std::string_view of) {
  const std::size_t length = std::min(text.find_first_not_of(of), text.size());
  const std::string_view part = text.substr(0, length);
  text.remove_prefix(length);
  return part;
}

// The attributes inside a tag, up to its end.
bool attributes_are_well_formed(std::string_view inside) {
  std::set<std::string> names;
  while (!inside.empty()) {
    const bool spaced = !taken(inside, k_space).empty();
    if (inside.empty()) return true;
    const std::string name(taken(inside, k_name_characters));
    if (!spaced || name.empty() || !names.insert(name).second) return false;
    if (inside.substr(0, 2) != "=\"") return false;
    const std::size_t end = inside.find('"', 2);
    if (end == std::string_view::npos) return false;
    const std::string_view value = inside.substr(2, end - 2);
    if (value.find('<') != std::string_view::npos || !entities_are_known(value)) return false;
    inside.remove_prefix(end + 1);
  }
  return true;
}

}  // namespace

bool is_well_formed_xml(std::string_view text) {
  if (!holds_only_xml_characters(text)) return false;
  std::vector<std::string> open;
  bool root_seen = false;
  while (!text.empty()) {
    const std::size_t tag = std::min(text.find('<'), text.size());
    const std::string_view between = text.substr(0, tag);
    if (!entities_are_known(between) || between.find("]]>") != std::string_view::npos) return false;
    if (open.empty() && between.find_first_not_of(k_space) != std::string_view::npos) return false;
    text.remove_prefix(tag);
    if (text.empty()) break;
    const std::size_t end = text.find('>');
    if (end == std::string_view::npos) return false;
    std::string_view inside = text.substr(1, end - 1);
    text.remove_prefix(end + 1);
    if (!inside.empty() && inside.front() == '/') {
      inside.remove_prefix(1);
      if (open.empty() || open.back() != inside) return false;
      open.pop_back();
      continue;
    }
    if (open.empty() && root_seen) return false;
    root_seen = true;
    const bool empty_element = !inside.empty() && inside.back() == '/';
    if (empty_element) inside.remove_suffix(1);
    const std::string name(taken(inside, k_name_characters));
    if (name.empty() || !attributes_are_well_formed(inside)) return false;
    if (!empty_element) open.push_back(name);
  }
  return root_seen && open.empty();
}

}  // namespace fogsheet
