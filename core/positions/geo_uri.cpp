#include "core/positions/geo_uri.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/base/number_text.h"

namespace fogsheet {

namespace {

constexpr std::string_view k_what = "position";
constexpr std::string_view k_scheme = "geo:";

char small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string in_small_letters(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(), small);
  return result;
}

bool is_letter_or_digit(char c) { return (small(c) >= 'a' && small(c) <= 'z') || (c >= '0' && c <= '9'); }

int hex_value(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  return small(c) >= 'a' && small(c) <= 'f' ? small(c) - 'a' + 10 : -1;
}

Problem unreadable(std::string_view text, std::size_t begin, std::size_t end) {
  return {.fault = Fault::entry_unreadable, .texts = {std::string(k_what), std::string(text.substr(begin, end - begin))}, .begin = begin, .end = end};
}

// num = [ "-" ] 1*DIGIT [ "." 1*DIGIT ]
std::optional<double> geo_number(std::string_view text, bool may_be_negative) {
  const bool negative = may_be_negative && !text.empty() && text.front() == '-';
  if (negative) text.remove_prefix(1);
  const auto scanned = scan_decimal(text);
  if (!scanned || scanned->length != text.size() || scanned->whole_digits == 0) return std::nullopt;
  if (scanned->has_mark && scanned->decimals == 0) return std::nullopt;
  return negative ? 0 - scanned->value : scanned->value;
}

// labeltext, pname = 1*( alphanum / "-" )
bool is_label(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return is_letter_or_digit(c) || c == '-'; });
}

// pvalue = 1*( unreserved / "[" / "]" / ":" / "&" / "+" / "$" / %-sign and two hexadecimal digits )
std::optional<std::string> parameter_value(std::string_view text) {
  constexpr std::string_view k_marks = "-_.!~*'()[]:&+$";
  if (text.empty()) return std::nullopt;
  std::string value;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '%') {
      if (i + 2 >= text.size() || hex_value(text[i + 1]) < 0 || hex_value(text[i + 2]) < 0) return std::nullopt;
      value += static_cast<char>(hex_value(text[i + 1]) * 16 + hex_value(text[i + 2]));
      i += 2;
    } else if (is_letter_or_digit(text[i]) || k_marks.find(text[i]) != std::string_view::npos) {
      value += text[i];
    } else {
      return std::nullopt;
    }
  }
  return value;
}

struct Piece {
  std::string_view text;
  std::size_t begin, end;
};

std::vector<Piece> split(std::string_view text, std::size_t begin, std::size_t end, char mark) {
  std::vector<Piece> pieces;
  for (std::size_t at = begin;;) {
    const std::size_t next = std::min(text.find(mark, at), end);
    pieces.push_back({.text = text.substr(at, next - at), .begin = at, .end = next});
    if (next == end) return pieces;
    at = next + 1;
  }
}

std::vector<GeoUri::Parameter> in_order(std::vector<GeoUri::Parameter> parameters) {
  std::sort(parameters.begin(), parameters.end(), [](const GeoUri::Parameter& a, const GeoUri::Parameter& b) {
    return std::tie(a.name, a.value, a.has_value) < std::tie(b.name, b.value, b.has_value);
  });
  return parameters;
}

Result<GeoUri> read_coordinates(std::string_view text, const Piece& path) {
  const std::vector<Piece> pieces = split(text, path.begin, path.end, ',');
  if (pieces.size() < 2)
    return Problem{.fault = Fault::entry_part_missing, .texts = {std::string(k_what), "longitude"}, .begin = path.end, .end = path.end};
  if (pieces.size() > 3) return unreadable(text, pieces[3].begin, path.end);
  double numbers[3] = {0, 0, 0};
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const std::optional<double> number = geo_number(pieces[i].text, true);
    if (!number) return unreadable(text, pieces[i].begin, pieces[i].end);
    numbers[i] = *number;
  }
  GeoUri uri{.position = {.lat_deg = numbers[0], .lon_deg = numbers[1]}};
  if (pieces.size() == 3) uri.altitude_m = numbers[2];
  return uri;
}

// The ranges of WGS 84, for latitude and longitude as they stand first in the path.
std::optional<Problem> off_the_earth(Position position, std::string_view text, const Piece& path) {
  const std::vector<Piece> pieces = split(text, path.begin, path.end, ',');
  if (std::abs(position.lat_deg) > 90)
    return Problem{.fault = Fault::latitude_out_of_range, .numbers = {position.lat_deg, 90}, .begin = pieces[0].begin, .end = pieces[0].end};
  if (std::abs(position.lon_deg) > 180)
    return Problem{.fault = Fault::longitude_out_of_range, .numbers = {position.lon_deg, 180}, .begin = pieces[1].begin, .end = pieces[1].end};
  return std::nullopt;
}

}  // namespace

Result<GeoUri> parse_geo_uri(std::string_view text) {
  if (text.empty()) return Problem{.fault = Fault::entry_empty, .texts = {std::string(k_what)}};
  if (in_small_letters(text.substr(0, k_scheme.size())) != k_scheme) return unreadable(text, 0, std::min(k_scheme.size(), text.size()));
  const std::vector<Piece> pieces = split(text, k_scheme.size(), text.size(), ';');
  Result<GeoUri> coordinates = read_coordinates(text, pieces.front());
  if (!coordinates.ok()) return coordinates;
  GeoUri uri = std::move(coordinates).value();

  for (std::size_t i = 1; i < pieces.size(); ++i) {
    const Piece& piece = pieces[i];
    const std::size_t equals = piece.text.find('=');
    const bool has_value = equals != std::string_view::npos;
    const std::string name = in_small_letters(piece.text.substr(0, equals));
    const std::string_view value = has_value ? piece.text.substr(equals + 1) : std::string_view();
    if (!is_label(name)) return unreadable(text, piece.begin, piece.end);
    if (name == "crs") {  // first, if at all
      if (i != 1 || !is_label(value)) return unreadable(text, piece.begin, piece.end);
      uri.system = in_small_letters(value);
    } else if (name == "u") {  // before all parameters but crs
      const std::optional<double> uncertainty_m = geo_number(value, false);
      if (!uncertainty_m || uri.uncertainty_m || !uri.parameters.empty()) return unreadable(text, piece.begin, piece.end);
      uri.uncertainty_m = uncertainty_m;
    } else {
      const std::optional<std::string> plain = has_value ? parameter_value(value) : std::string();
      if (!plain) return unreadable(text, piece.begin, piece.end);
      uri.parameters.push_back({.name = name, .value = *plain, .has_value = has_value});
    }
  }
  if (uri.is_wgs84()) {
    if (std::optional<Problem> problem = off_the_earth(uri.position, text, pieces.front())) return *problem;
  }
  return uri;
}

bool equal(const GeoUri& a, const GeoUri& b) {
  if (a.system != b.system || a.position.lat_deg != b.position.lat_deg) return false;
  const bool at_pole = a.is_wgs84() && std::abs(a.position.lat_deg) == 90;
  const auto longitude = [](const GeoUri& uri) { return uri.is_wgs84() ? reduce_longitude_deg(uri.position.lon_deg) : uri.position.lon_deg; };
  if (!at_pole && longitude(a) != longitude(b)) return false;
  if (a.altitude_m != b.altitude_m || a.uncertainty_m != b.uncertainty_m) return false;
  return in_order(a.parameters) == in_order(b.parameters);
}

std::string print_geo_uri(GridPosition position) {
  constexpr int k_decimals = 6;
  const Position deg = unquantise(position);
  return std::string(k_scheme) + print_fixed(deg.lat_deg, k_decimals) + "," + print_fixed(deg.lon_deg, k_decimals);
}

}  // namespace fogsheet
