#include "tests/values/csv.h"

namespace fogsheet::values {

std::optional<std::vector<std::vector<std::string>>> read_csv(std::string_view text) {
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  std::vector<std::vector<std::string>> lines;
  std::vector<std::string> fields;
  std::string field;
  bool quoted = false, was_quoted = false;
  const auto end_line = [&] {
    const bool blank = fields.empty() && field.empty() && !was_quoted;
    fields.push_back(std::move(field));
    if (!blank) lines.push_back(std::move(fields));
    fields.clear();
    field.clear();
    was_quoted = false;
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted) {
      if (c != '"') {
        field += c;
      } else if (i + 1 < text.size() && text[i + 1] == '"') {
        field += '"';
        ++i;
      } else {
        quoted = false;
      }
    } else if (c == '"') {
      if (!field.empty() || was_quoted) return std::nullopt;
      quoted = was_quoted = true;
    } else if (c == ',') {
      fields.push_back(std::move(field));
      field.clear();
      was_quoted = false;
    } else if (c == '\n') {
      end_line();
    } else if (c != '\r') {
      field += c;
    }
  }
  if (quoted) return std::nullopt;
  if (!field.empty() || !fields.empty() || was_quoted) end_line();
  return lines;
}

}  // namespace fogsheet::values
