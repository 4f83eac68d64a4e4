#include "core/positions/position_text.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <span>
#include <vector>

#include "core/base/arc_entry.h"
#include "core/base/entry_tokens.h"
#include "core/base/typing_slips.h"
#include "core/base/utf8.h"
#include "core/positions/geo_uri.h"
#include "core/positions/iso6709.h"
#include "core/positions/position_figures.h"

namespace fogsheet {

namespace {

using Kind = EntryToken::Kind;
using Tokens = std::span<const EntryToken>;

constexpr std::string_view k_what = "position";

enum class Axis { latitude, longitude };

const char* name_of(Axis axis) { return axis == Axis::latitude ? "latitude" : "longitude"; }
Axis other(Axis axis) { return axis == Axis::latitude ? Axis::longitude : Axis::latitude; }

struct Hemisphere {
  Axis axis;
  int sign;
};

std::optional<Hemisphere> hemisphere(const std::string& word) {
  if (word == "n" || word == "north") return Hemisphere{Axis::latitude, 1};
  if (word == "s" || word == "south") return Hemisphere{Axis::latitude, -1};
  if (word == "e" || word == "east") return Hemisphere{Axis::longitude, 1};
  if (word == "w" || word == "west") return Hemisphere{Axis::longitude, -1};
  return std::nullopt;
}

std::optional<Axis> axis_label(const EntryToken& token) {
  if (token.kind != Kind::word) return std::nullopt;
  if (token.word == "lat" || token.word == "latitude") return Axis::latitude;
  if (token.word == "lon" || token.word == "long" || token.word == "lng" || token.word == "longitude") return Axis::longitude;
  return std::nullopt;
}

bool is_hemisphere(const EntryToken& token) { return token.kind == Kind::word && hemisphere(token.word).has_value(); }

enum class Oriented { no, by_sign, by_letter };

struct Coordinate {
  std::optional<Axis> axis;  // where a label or a letter says it
  double deg = 0;
  Oriented oriented = Oriented::no;
  int parts = 0;
  std::size_t begin = 0, end = 0;
};

// One latitude or longitude, label and all. `expected` gives the bound and names it in problems; letters may overrule it.
Result<Coordinate> read_coordinate(std::string_view text, Tokens tokens, Axis expected) {
  Coordinate coordinate;
  if (!tokens.empty()) {
    if (const auto labelled = axis_label(tokens.front())) {
      coordinate.axis = labelled;
      tokens = tokens.subspan(1);
      if (!tokens.empty() && tokens.front().kind == Kind::colon) tokens = tokens.subspan(1);
    }
  }
  for (const EntryToken& token : tokens)
    if (is_hemisphere(token)) expected = hemisphere(token.word)->axis;
  if (coordinate.axis) expected = *coordinate.axis;

  const RunOn run_on = expected == Axis::latitude ? RunOn::latitude : RunOn::longitude;
  const Result<ArcEntry> arc = read_arc(name_of(expected), text, tokens, run_on);
  if (!arc.ok()) return arc.problem();
  coordinate.begin = arc->begin;
  coordinate.end = arc->end;
  coordinate.parts = arc->parts;
  int sign = arc->sign.value_or(1);
  if (arc->sign) coordinate.oriented = Oriented::by_sign;
  if (!arc->word.empty()) {
    const auto letter = hemisphere(arc->word);
    if (!letter || letter->axis != expected) return unreadable_entry(name_of(expected), text, arc->word_begin, arc->word_end);
    coordinate.axis = letter->axis;
    coordinate.oriented = Oriented::by_letter;
    sign = letter->sign;
  }
  coordinate.deg = sign < 0 ? 0 - arc->size_deg : arc->size_deg;
  const double bound_deg = expected == Axis::latitude ? 90 : 180;
  if (arc->size_deg > bound_deg)
    return Problem{.fault = expected == Axis::latitude ? Fault::latitude_out_of_range : Fault::longitude_out_of_range,
                   .numbers = {coordinate.deg, bound_deg},
                   .begin = arc->begin,
                   .end = arc->end};
  return coordinate;
}

Problem missing(Axis axis, const char* part, std::size_t at) {
  return {.fault = Fault::entry_part_missing, .texts = {name_of(axis), part}, .begin = at, .end = at};
}

// A coordinate without letter or sign is refused when the other one has a letter, or when minutes were typed and nothing at
// all says north or south, east or west: then half of the world's sailors would mean the other side.
std::optional<Problem> hemisphere_missing(const Coordinate& coordinate, Axis axis, Oriented the_other) {
  if (coordinate.oriented != Oriented::no || coordinate.deg == 0) return std::nullopt;
  const bool told_by_convention = the_other == Oriented::by_sign || (the_other == Oriented::no && coordinate.parts == 1);
  if (told_by_convention) return std::nullopt;
  return missing(axis, axis == Axis::latitude ? "north or south" : "east or west", coordinate.end);
}

// Where the second coordinate begins, and how many tokens part it from the first.
struct Cut {
  std::size_t first_end;
  std::size_t second_begin;
};

template <class Matches>
std::vector<std::size_t> places(Tokens tokens, const Matches& matches) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < tokens.size(); ++i)
    if (matches(tokens[i])) found.push_back(i);
  return found;
}

Result<Cut> cut_in_two(std::string_view text, Tokens tokens) {
  const auto separators =
      places(tokens, [](const EntryToken& t) { return t.kind == Kind::comma || t.kind == Kind::semicolon || t.kind == Kind::slash; });
  if (separators.size() > 1) {
    const EntryToken& extra = tokens[separators[1]];
    return unreadable_entry(k_what, text, extra.begin, extra.end);
  }
  if (separators.size() == 1) return Cut{separators[0], separators[0] + 1};
  const auto before = [](std::size_t at) { return Cut{at, at}; };

  const auto labels = places(tokens, [](const EntryToken& t) { return axis_label(t).has_value(); });
  if (labels.size() == 2) return before(labels[1]);

  const auto letters = places(tokens, is_hemisphere);
  if (!letters.empty()) {
    const bool letter_first = letters[0] == 0;
    if (letter_first && letters.size() > 1) return before(letters[1]);
    if (!letter_first) return before(letters[0] + 1);
  }
  const auto signs = places(tokens, [](const EntryToken& t) { return t.kind == Kind::minus || t.kind == Kind::plus; });
  if (!signs.empty() && signs.back() > 0) return before(signs.back());

  const auto rings = places(tokens, [](const EntryToken& t) { return t.kind == Kind::degree; });
  if (rings.size() == 2) return before(rings[1] - 1);

  const auto numbers = places(tokens, [](const EntryToken& t) { return t.kind == Kind::number; });
  if (numbers.size() >= 2 && numbers.size() % 2 == 0) return before(numbers[numbers.size() / 2]);
  return before(tokens.size());
}

Result<Position> read_position(std::string_view text, Tokens tokens) {
  // 50.12.34: where the first number ends is a guess.
  for (std::size_t i = 1; i < tokens.size(); ++i)
    if (tokens[i].kind == Kind::number && tokens[i - 1].kind == Kind::number && !tokens[i].after_space)
      return unreadable_entry(k_what, text, tokens[i].begin, tokens[i].end);
  const Result<Cut> cut = cut_in_two(text, tokens);
  if (!cut.ok()) return cut.problem();
  const Tokens first_tokens = tokens.first(cut->first_end);
  const Tokens second_tokens = tokens.subspan(cut->second_begin);
  const Result<Coordinate> first = read_coordinate(text, first_tokens, Axis::latitude);
  if (!first.ok()) return first.problem();
  const Axis first_axis = first->axis.value_or(Axis::latitude);
  if (second_tokens.empty()) return missing(other(first_axis), "number", text.size());
  const Result<Coordinate> second = read_coordinate(text, second_tokens, other(first_axis));
  if (!second.ok()) return second.problem();
  const Axis second_axis = second->axis.value_or(other(first_axis));
  if (first_axis == second_axis && first->axis) {
    return Problem{
        .fault = Fault::entry_part_twice, .texts = {std::string(k_what), name_of(second_axis)}, .begin = second->begin, .end = second->end};
  }

  if (auto problem = hemisphere_missing(*first, other(second_axis), second->oriented)) return *problem;
  if (auto problem = hemisphere_missing(*second, second_axis, first->oriented)) return *problem;
  const bool swapped = second_axis == Axis::latitude;
  const double lat_deg = swapped ? second->deg : first->deg;
  const double lon_deg = swapped ? first->deg : second->deg;
  return Position{.lat_deg = lat_deg, .lon_deg = reduce_longitude_deg(lon_deg)};
}

Result<double> read_one(std::string_view text, Tokens tokens, Axis axis) {
  const Result<Coordinate> coordinate = read_coordinate(text, tokens, axis);
  if (!coordinate.ok()) return coordinate.problem();
  if (coordinate->axis.value_or(axis) != axis) return unreadable_entry(name_of(axis), text, coordinate->begin, coordinate->end);
  if (auto problem = hemisphere_missing(*coordinate, axis, Oriented::no)) return *problem;
  return coordinate->deg;
}

// "50,5,4,25": two decimals, or degrees and minutes twice.
bool is_four_bare_numbers(std::string_view text) {
  return std::count(text.begin(), text.end(), ',') == 3 && text.find_first_not_of("0123456789, ") == std::string_view::npos;
}

std::string print_found(Position position) { return position_figures(position, 4); }
std::string print_found_latitude(double lat_deg) { return latitude_figures(lat_deg, 4); }
std::string print_found_longitude(double lon_deg) { return longitude_figures(lon_deg, 4); }

// A comma between digits may be a decimal mark or part two numbers. Both are tried; what reads both ways with different
// results is refused with both.
Result<Position> read_typed_position(std::string_view text) {
  const Result<Position> parted = read_position(text, entry_tokens(text, CommaMeans::separator));
  if (text.find(',') == std::string_view::npos) return parted;
  const Result<Position> decimal = read_position(text, entry_tokens(text, CommaMeans::decimal_mark));
  if (decimal.ok() && is_four_bare_numbers(text)) {
    std::string minutes(text);
    std::replace(minutes.begin(), minutes.end(), ',', ' ');
    return Problem{.fault = Fault::entry_ambiguous, .texts = {std::string(k_what), print_found(*decimal), minutes}};
  }
  if (!decimal.ok() && !parted.ok()) return decimal;
  if (!decimal.ok()) return parted;
  if (!parted.ok() || *parted == *decimal) return decimal;
  return Problem{.fault = Fault::entry_ambiguous, .texts = {std::string(k_what), print_found(*decimal), print_found(*parted)}};
}

// Nothing parts one coordinate: a comma in it is a decimal mark.
template <Axis axis>
Result<double> read_typed_coordinate(std::string_view text) {
  return read_one(text, entry_tokens(text, CommaMeans::decimal_mark), axis);
}

// Latitude and longitude in the other order.
std::string with_halves_swapped(std::string_view text) {
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::separator);
  const Result<Cut> cut = cut_in_two(text, tokens);
  if (!cut.ok() || cut->first_end == 0 || cut->second_begin >= tokens.size()) return {};
  const std::size_t middle = tokens[cut->second_begin].begin;
  const std::size_t first_end = tokens[cut->first_end - 1].end;
  return std::string(text.substr(middle)) + "; " + std::string(text.substr(0, first_end));
}

// Dashes and colons between figures, as some write degrees and minutes (50-12.34N), made blanks; empty where there are none.
std::string with_blanks_for_dashes(std::string_view text) {
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  std::string corrected;
  std::size_t done = 0;
  for (std::size_t i = 1; i + 1 < tokens.size(); ++i) {
    const bool parts = tokens[i].kind == Kind::minus || tokens[i].kind == Kind::colon;
    if (!parts || tokens[i - 1].kind != Kind::number || tokens[i + 1].kind != Kind::number) continue;
    if (tokens[i].after_space || tokens[i + 1].after_space) continue;
    corrected += std::string(text.substr(done, tokens[i].begin - done)) + " ";
    done = tokens[i].end;
  }
  return done == 0 ? corrected : corrected + std::string(text.substr(done));
}

// Reads, and where that fails looks for what was likely meant.
template <class Value, class Read, class Print>
Result<Value> read_or_suggest(std::string_view what, std::string_view text, const Read& read, const Print& print) {
  if (std::optional<Problem> unfit = unfit_entry(what, text)) return *unfit;
  Result<Value> reading = read(text);
  if (reading.ok() || reading.problem().fault == Fault::entry_ambiguous) return reading;
  std::vector<std::string> corrections = likely_corrections(text);
  corrections.push_back(with_blanks_for_dashes(text));
  if (what == k_what && reading.problem().fault == Fault::latitude_out_of_range) corrections.push_back(with_halves_swapped(text));
  return with_suggestion(std::move(reading), corrections, read, print);
}

bool begins_as_geo_uri(std::string_view text) {
  return text.size() >= 4 && (text[0] | 0x20) == 'g' && (text[1] | 0x20) == 'e' && (text[2] | 0x20) == 'o' && text[3] == ':';
}

// A sign first, a solidus last, nothing that parts or marks a position typed by hand.
bool looks_like_iso6709(std::string_view text) {
  if (text.size() < 2 || (text.front() != '+' && text.front() != '-') || text.back() != '/') return false;
  return text.substr(0, text.size() - 1).find_first_of(" \t,;'\"") == std::string_view::npos;
}

// The position of a reading by a machine's grammar, places in the text moved by what was trimmed off.
template <class Reading>
Result<Position> position_of(const Result<Reading>& reading, std::size_t trimmed_off) {
  if (reading.ok()) {
    if (!reading->is_wgs84()) return Problem{.fault = Fault::datum_unknown, .texts = {reading->system}};
    const Position position = reading->position;
    return Position{.lat_deg = position.lat_deg, .lon_deg = reduce_longitude_deg(position.lon_deg)};
  }
  Problem problem = reading.problem();
  problem.begin += trimmed_off;
  problem.end += trimmed_off;
  return problem;
}

// Whole parts of 0.0001' as degrees, minutes and seconds of three decimals, which is finer.
std::string print_dms(std::int32_t grid, int degree_digits, char positive, char negative) {
  constexpr std::int64_t k_thousandths_of_second_per_grid = 6;
  const std::int64_t all = std::abs(static_cast<std::int64_t>(grid)) * k_thousandths_of_second_per_grid;
  const std::int64_t seconds = all / 1000;
  return print_padded(seconds / 3600, degree_digits) + "°" + print_padded(seconds / 60 % 60, 2) + "′" + print_padded(seconds % 60, 2) + "." +
         print_padded(all % 1000, 3) + "″" + (grid < 0 ? negative : positive);
}

}  // namespace

Result<Position> parse_position(std::string_view text) {
  const std::string_view inner = trimmed(text);
  const std::size_t trimmed_off = static_cast<std::size_t>(inner.data() - text.data());
  if (inner.size() <= k_longest_entry) {
    if (begins_as_geo_uri(inner)) return position_of(parse_geo_uri(inner), trimmed_off);
    if (looks_like_iso6709(inner)) return position_of(parse_iso6709(inner), trimmed_off);
  }
  return read_or_suggest<Position>(k_what, text, read_typed_position, print_found);
}

Result<double> parse_latitude_deg(std::string_view text) {
  return read_or_suggest<double>("latitude", text, read_typed_coordinate<Axis::latitude>, print_found_latitude);
}

Result<double> parse_longitude_deg(std::string_view text) {
  const Result<double> lon_deg = read_or_suggest<double>("longitude", text, read_typed_coordinate<Axis::longitude>, print_found_longitude);
  if (!lon_deg.ok()) return lon_deg;
  return reduce_longitude_deg(*lon_deg);
}

std::string print_position(GridPosition position, PositionForm form) {
  constexpr int k_minute_decimals = 4;  // the grid's own
  constexpr int k_degree_decimals = 6;  // 0.6 of the grid's step
  const Position deg = unquantise(position);
  switch (form) {
    case PositionForm::degrees_minutes:
      return position_figures(deg, k_minute_decimals);
    case PositionForm::degrees_minutes_seconds:
      return print_dms(position.lat, 2, 'N', 'S') + " " + print_dms(position.lon, 3, 'E', 'W');
    case PositionForm::decimal_degrees:
      return print_fixed(deg.lat_deg, k_degree_decimals) + ", " + print_fixed(deg.lon_deg, k_degree_decimals);
    case PositionForm::iso6709:
      return print_iso6709(position);
    case PositionForm::geo_uri:
      return print_geo_uri(position);
  }
  return {};
}

}  // namespace fogsheet
