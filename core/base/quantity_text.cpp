#include "core/base/quantity_text.h"

#include <optional>
#include <span>
#include <vector>

#include "core/base/entry_tokens.h"
#include "core/base/number_text.h"
#include "core/base/typing_slips.h"
#include "core/base/units.h"

namespace fogsheet {

namespace {

using Kind = EntryToken::Kind;

struct SignedNumber {
  double value = 0;
  std::size_t begin = 0, end = 0;
  std::span<const EntryToken> unit;  // the tokens after it
};

// A number with or without sign, and what follows it.
Result<SignedNumber> read_number(std::string_view what, std::string_view text, std::span<const EntryToken> tokens) {
  const bool has_sign = tokens[0].kind == Kind::minus || tokens[0].kind == Kind::plus;
  const std::size_t at = has_sign ? 1 : 0;
  if (at >= tokens.size())
    return Problem{.fault = Fault::entry_part_missing, .texts = {std::string(what), "number"}, .begin = text.size(), .end = text.size()};
  if (tokens[at].kind != Kind::number) return unreadable_entry(what, text, tokens[at].begin, tokens[at].end);
  const double size = tokens[at].number.value;
  return SignedNumber{
      .value = tokens[0].kind == Kind::minus ? 0 - size : size, .begin = tokens[0].begin, .end = tokens[at].end, .unit = tokens.subspan(at + 1)};
}

Problem out_of_range(std::string_view what, const SignedNumber& number, double least, double most) {
  return {.fault = Fault::number_out_of_range,
          .texts = {std::string(what)},
          .numbers = {number.value, least, most},
          .begin = number.begin,
          .end = number.end};
}

Problem unknown_unit(std::string_view what, std::string_view text, std::span<const EntryToken> unit) {
  const std::size_t begin = unit.front().begin, end = unit.back().end;
  return {.fault = Fault::unit_unknown, .texts = {std::string(what), std::string(text.substr(begin, end - begin))}, .begin = begin, .end = end};
}

std::optional<LengthUnit> length_unit(std::string_view text, std::span<const EntryToken> unit) {
  if (unit.size() != 1) return std::nullopt;
  const std::string& word = unit[0].word;
  if (word == "nm" || word == "nmi" || word == "mile" || word == "miles") return LengthUnit::nautical_miles;
  if (word == "c" || word == "cable" || word == "cables" || word == "cbl") return LengthUnit::cables;
  if (word == "ft" || word == "foot" || word == "feet") return LengthUnit::feet;
  // A lone capital M is a nautical mile on charts and a metre to those who type in capitals.
  const bool lone_capital = text[unit[0].begin] == 'M' && word.size() == 1;
  const bool metres = word == "m" || word == "metre" || word == "metres" || word == "meter" || word == "meters";
  return metres && !lone_capital ? std::optional(LengthUnit::metres) : std::nullopt;
}

double metres_per(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::nautical_miles:
      return k_metres_per_nm;
    case LengthUnit::cables:
      return k_metres_per_cable;
    case LengthUnit::metres:
      return 1;
    case LengthUnit::feet:
      return k_metres_per_foot;
  }
  return 1;
}

std::optional<SpeedUnit> speed_unit(std::span<const EntryToken> unit) {
  if (unit.size() == 1) {
    const std::string& word = unit[0].word;
    if (word == "kn" || word == "kt" || word == "kts" || word == "knot" || word == "knots") return SpeedUnit::knots;
  }
  if (unit.size() == 3 && unit[0].word == "m" && unit[1].kind == Kind::slash && unit[2].word == "s") return SpeedUnit::metres_per_second;
  return std::nullopt;
}

// As many decimals as a person types, no trailing noughts.
std::string print_shortly(double value) {
  std::string printed = print_fixed(value, 3);
  printed.erase(printed.find_last_not_of('0') + 1);
  if (printed.back() == '.') printed.pop_back();
  return printed;
}

const char* symbol_of(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::nautical_miles:
      return " nm";
    case LengthUnit::cables:
      return " cables";
    case LengthUnit::metres:
      return " m";
    case LengthUnit::feet:
      return " ft";
  }
  return "";
}

const char* symbol_of(SpeedUnit unit) { return unit == SpeedUnit::knots ? " kn" : " m/s"; }

Result<Length> read_length(std::string_view text, LengthUnit bare) {
  constexpr std::string_view k_what = "distance";
  if (std::optional<Problem> unfit = unfit_entry(k_what, text)) return *unfit;
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  const Result<SignedNumber> number = read_number(k_what, text, tokens);
  if (!number.ok()) return number.problem();
  const bool stroke = number->unit.size() == 1 && number->unit[0].kind == Kind::minute;
  const std::optional<LengthUnit> unit = number->unit.empty() ? bare : stroke ? LengthUnit::nautical_miles : length_unit(text, number->unit);
  if (!unit) return unknown_unit(k_what, text, number->unit);
  const double most = k_longest_length_nm * k_metres_per_nm / metres_per(*unit);
  if (!(number->value >= 0 && number->value <= most)) return out_of_range(k_what, *number, 0, most);
  if (stroke) {  // feet to some, to navigators minutes of latitude
    const std::string figure = print_shortly(number->value);
    return Problem{.fault = Fault::entry_ambiguous,
                   .texts = {std::string(k_what), figure + symbol_of(LengthUnit::nautical_miles), figure + symbol_of(LengthUnit::feet)}};
  }
  return Length{.value = number->value, .unit = *unit};
}

Result<Speed> read_speed(std::string_view text) {
  constexpr std::string_view k_what = "speed";
  if (std::optional<Problem> unfit = unfit_entry(k_what, text)) return *unfit;
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  const Result<SignedNumber> number = read_number(k_what, text, tokens);
  if (!number.ok()) return number.problem();
  const std::optional<SpeedUnit> unit = number->unit.empty() ? SpeedUnit::knots : speed_unit(number->unit);
  if (!unit) return unknown_unit(k_what, text, number->unit);
  const double most = *unit == SpeedUnit::knots ? k_fastest_speed_kn : k_fastest_speed_kn * k_metres_per_second_per_knot;
  if (!(number->value >= 0 && number->value <= most)) return out_of_range(k_what, *number, 0, most);
  return Speed{.value = number->value, .unit = *unit};
}

Result<double> read_plain_number(std::string_view what, std::string_view text, double least, double most) {
  if (std::optional<Problem> unfit = unfit_entry(what, text)) return *unfit;
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  const Result<SignedNumber> number = read_number(what, text, tokens);
  if (!number.ok()) return number.problem();
  if (!number->unit.empty()) return unreadable_entry(what, text, number->unit.front().begin, number->unit.back().end);
  if (!(number->value >= least && number->value <= most)) return out_of_range(what, *number, least, most);
  return number->value;
}

}  // namespace

double Length::metres() const { return value * metres_per(unit); }
double Length::nm() const { return unit == LengthUnit::nautical_miles ? value : metres() / k_metres_per_nm; }
double Speed::knots() const { return unit == SpeedUnit::knots ? value : value / k_metres_per_second_per_knot; }

Result<Length> parse_length(std::string_view text, LengthUnit bare) {
  const auto read = [bare](std::string_view typed) { return read_length(typed, bare); };
  return with_suggestion(read(text), likely_corrections(text), read,
                         [](Length length) { return print_shortly(length.value) + symbol_of(length.unit); });
}

std::string print_length(Length length, int decimals) { return print_fixed(length.value, decimals) + symbol_of(length.unit); }

Result<Speed> parse_speed(std::string_view text) {
  return with_suggestion(read_speed(text), likely_corrections(text), read_speed,
                         [](Speed speed) { return print_shortly(speed.value) + symbol_of(speed.unit); });
}

std::string print_speed(Speed speed, int decimals) { return print_fixed(speed.value, decimals) + symbol_of(speed.unit); }

Result<double> parse_plain_number(std::string_view what, std::string_view text, double least, double most) {
  const auto read = [&](std::string_view typed) { return read_plain_number(what, typed, least, most); };
  return with_suggestion(read(text), likely_corrections(text), read, print_shortly);
}

}  // namespace fogsheet
