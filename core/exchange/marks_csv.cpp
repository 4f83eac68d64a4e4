#include "core/exchange/marks_csv.h"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "core/exchange/file_text.h"
#include "core/positions/position_text.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_columns = 200;  // what stands in later ones is not looked at
constexpr int k_decimals = 7;

/// One record after the other; quotes inside quotes are doubled, and line ends inside them belong to the field.
class Records {
 public:
  Records(std::string_view text, char parting) : text_(text), parting_(parting) {}

  bool at_end() const { return at_ >= text_.size(); }
  std::size_t line() const { return line_; }
  bool broken() const { return broken_; }

  std::vector<std::string> next() {
    std::vector<std::string> fields;
    for (bool more = true; more;) {
      std::string field = next_field(more);
      if (fields.size() < k_most_columns) fields.push_back(std::move(field));
    }
    return fields;
  }

 private:
  std::string next_field(bool& more) {
    std::string field;
    bool quoted = at_ < text_.size() && text_[at_] == '"';
    if (quoted) ++at_;
    for (; at_ < text_.size(); ++at_) {
      const char c = text_[at_];
      line_ += c == '\n';
      if (quoted) {
        if (c != '"') field += c;
        else if (at_ + 1 < text_.size() && text_[at_ + 1] == '"') field += text_[++at_];
        else quoted = false;
      } else if (c == parting_) {
        ++at_;
        return field;
      } else if (c == '\n') {
        ++at_;
        more = false;
        return field;
      } else if (c != '\r') {
        field += c;
      }
    }
    broken_ = broken_ || quoted;
    more = false;
    return field;
  }

  std::string_view text_;
  char parting_;
  std::size_t at_ = 0, line_ = 1;
  bool broken_ = false;
};

enum Column { name, latitude, longitude, position, kind, radius, height, note, columns };

// Ways to call each, as letters_of has them.
constexpr std::array<std::array<std::string_view, 5>, columns> k_called = {{
    {"name", "mark", "title", "waypoint", "label"},
    {"latitude", "lat", "", "", ""},
    {"longitude", "lon", "lng", "long", ""},
    {"position", "pos", "place", "coordinates", "latlon"},
    {"kind", "type", "", "", ""},
    {"radiusnm", "", "", "", ""},
    {"heightm", "", "", "", ""},
    {"note", "notes", "description", "desc", "comment"},
}};

using Places = std::array<std::optional<std::size_t>, columns>;

// In small letters, without blanks, lines and brackets, and without the unit of an angle.
std::string letters_of(std::string_view head) {
  std::string letters;
  for (const char c : head) {
    if (c >= 'A' && c <= 'Z') letters += static_cast<char>(c + 32);
    else if (static_cast<unsigned char>(c) > ' ' && c != '_' && c != '-' && c != '.' && c != '(' && c != ')') letters += c;
  }
  if (letters.ends_with("deg")) letters.resize(letters.size() - 3);
  return letters;
}

Places places_of(const std::vector<std::string>& head) {
  Places places;
  for (std::size_t i = 0; i < head.size(); ++i) {
    const std::string letters = letters_of(head[i]);
    if (letters.empty()) continue;
    for (std::size_t column = 0; column < columns; ++column) {
      const auto& called = k_called[column];
      if (!places[column] && std::find(called.begin(), called.end(), letters) != called.end()) places[column] = i;
    }
  }
  return places;
}

bool has_place(const Places& places) { return places[position] || (places[latitude] && places[longitude]); }

ReadPlace place_in(const std::vector<std::string>& fields, const Places& places, const auto& field) {
  if (places[latitude] && places[longitude]) {
    const Result<double> lat = parse_latitude_deg(field(fields, places[latitude])), lon = parse_longitude_deg(field(fields, places[longitude]));
    return lat && lon ? ReadPlace{*lat, *lon} : ReadPlace{};
  }
  const Result<Position> at = parse_position(field(fields, places[position]));
  return at ? ReadPlace{at->lat_deg, at->lon_deg} : ReadPlace{};
}

std::string_view field_of(const std::vector<std::string>& fields, std::optional<std::size_t> place) { return place && *place < fields.size() ? std::string_view(fields[*place]) : std::string_view(); }

double number_in(std::string_view text) {
  std::string plain(trimmed(text));
  std::replace(plain.begin(), plain.end(), ',', '.');
  return parse_number(plain).value_or(0);
}

/// Whether a program that computes in tables would, or would but for apostrophes before it.
bool looks_like_formula(std::string_view text) {
  const std::size_t first = text.find_first_not_of('\'');
  return first != std::string_view::npos && std::string_view("=+-@").find(text[first]) != std::string_view::npos;
}

/// An apostrophe keeps a formula from being computed (common practice, no source); it is taken off again when it is read.
std::string as_words(std::string_view text) { return (looks_like_formula(text) ? "'" : "") + std::string(text); }

std::string words_in(std::string_view text) {
  if (text.starts_with('\'') && looks_like_formula(text)) text.remove_prefix(1);
  return std::string(text);
}

std::string field(std::string_view text) {
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(text);
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

}  // namespace

Result<MarksAndLines> read_marks_csv(std::string_view bytes) {
  const std::string text = text_of_file(bytes);
  for (const char parting : {',', ';', '\t'}) {
    Records records(text, parting);
    const std::vector<std::string> head = records.next();
    const Places places = places_of(head);
    if (!has_place(places)) continue;
    Collector collector;
    while (!records.at_end()) {
      collector.at_line(records.line());
      const std::size_t line = records.line();
      const std::vector<std::string> fields = records.next();
      if (records.broken()) return Problem{.fault = Fault::file_broken, .texts = {"CSV"}, .numbers = {static_cast<double>(line)}};
      if (std::all_of(fields.begin(), fields.end(), [](const std::string& each) { return trimmed(each).empty(); })) continue;
      collector.mark({.name = words_in(field_of(fields, places[name])),
                      .kind = mark_kind_named(letters_of(field_of(fields, places[kind]))).value_or(MarkKind::other),
                      .radius_nm = number_in(field_of(fields, places[radius])),
                      .height_m = number_in(field_of(fields, places[height])),
                      .note = words_in(field_of(fields, places[note]))},
                     place_in(fields, places, field_of), fields.front());
    }
    return collector.take();
  }
  const std::string_view first = std::string_view(text).substr(0, text.find_first_of("\r\n"));
  return Problem{.fault = Fault::file_without_columns, .texts = {std::string(fitting(repaired_utf8(first), 60))}};
}

std::string marks_csv(const MarksAndLines& all) {
  std::string text = "name,latitude,longitude,kind,radius_nm,height_m,note\r\n";
  for (const FileMark& mark : all.marks) {
    const Position at = unquantise(mark.at);
    text += field(as_words(mark.name)) + "," + print_fixed(at.lat_deg, k_decimals) + "," + print_fixed(at.lon_deg, k_decimals) + "," + std::string(mark_kind_name(mark.kind)) + ",";
    if (mark.radius_nm > 0) text += print_fixed(mark.radius_nm, 3);
    text += ",";
    if (mark.height_m > 0) text += print_fixed(mark.height_m, 1);
    text += "," + field(as_words(mark.note)) + "\r\n";
  }
  return text;
}

}  // namespace fogsheet
