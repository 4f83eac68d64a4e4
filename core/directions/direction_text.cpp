#include "core/directions/direction_text.h"

#include <cmath>

#include "core/base/arc_entry.h"
#include "core/base/entry_tokens.h"
#include "core/base/typing_slips.h"
#include "core/directions/direction_figures.h"

namespace fogsheet {

namespace {

constexpr double k_full_circle_deg = 360;
constexpr double k_most_correction_deg = 180;

std::optional<Reference> reference_of(std::string_view word) {
  if (word == "t" || word == "true") return Reference::true_north;
  if (word == "m" || word == "mag" || word == "magnetic") return Reference::magnetic;
  if (word == "c" || word == "compass" || word == "psc") return Reference::compass;  // psc: per standard compass
  return std::nullopt;
}

const char* letter_of(std::optional<Reference> reference) {
  if (!reference) return "";
  switch (*reference) {
    case Reference::true_north:
      return "T";
    case Reference::magnetic:
      return "M";
    case Reference::compass:
      return "C";
  }
  return "";
}

Result<TypedDirection> read_direction(std::string_view text) {
  constexpr std::string_view k_what = "direction";
  if (std::optional<Problem> unfit = unfit_entry(k_what, text)) return *unfit;
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  const Result<ArcEntry> arc = read_arc(k_what, text, tokens);
  if (!arc.ok()) return arc.problem();
  TypedDirection direction{.deg = arc->size_deg, .reference = reference_of(arc->word)};
  if (!arc->word.empty() && !direction.reference) return unreadable_entry(k_what, text, arc->word_begin, arc->word_end);
  const bool backwards = arc->sign == -1 && arc->size_deg > 0;
  if (backwards || arc->size_deg >= k_full_circle_deg) {
    Problem problem{
        .fault = Fault::direction_out_of_range, .numbers = {backwards ? -arc->size_deg : arc->size_deg}, .begin = arc->begin, .end = arc->end};
    if (arc->size_deg == k_full_circle_deg && !backwards) problem.suggestion = print_direction(0, direction.reference, Rounding::whole_degrees);
    return problem;
  }
  return direction;
}

Result<double> read_correction(std::string_view what, std::string_view text) {
  if (std::optional<Problem> unfit = unfit_entry(what, text)) return *unfit;
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  const Result<ArcEntry> arc = read_arc(what, text, tokens);
  if (!arc.ok()) return arc.problem();
  int sign = arc->sign.value_or(1);
  if (!arc->word.empty()) {
    const bool east = arc->word == "e" || arc->word == "east";
    const bool west = arc->word == "w" || arc->word == "west";
    if (!east && !west) return unreadable_entry(what, text, arc->word_begin, arc->word_end);
    sign = west ? -1 : 1;
  } else if (!arc->sign && arc->size_deg > 0) {
    return Problem{.fault = Fault::entry_part_missing, .texts = {std::string(what), "east or west"}, .begin = arc->end, .end = arc->end};
  }
  const double deg = sign < 0 ? 0 - arc->size_deg : arc->size_deg;
  if (arc->size_deg > k_most_correction_deg)
    return Problem{.fault = Fault::number_out_of_range,
                   .texts = {std::string(what)},
                   .numbers = {deg, -k_most_correction_deg, k_most_correction_deg},
                   .begin = arc->begin,
                   .end = arc->end};
  return deg;
}

}  // namespace

Result<TypedDirection> parse_direction(std::string_view text) {
  return with_suggestion(read_direction(text), likely_corrections(text), read_direction,
                         [](const TypedDirection& direction) { return print_direction(direction.deg, direction.reference, Rounding::tenths); });
}

Result<std::string> turned_direction(std::string_view text, double by_deg) {
  const Result<TypedDirection> typed = parse_direction(text);
  if (!typed.ok()) return typed.problem();
  const bool in_tenths = typed->deg != std::floor(typed->deg) || text.find_first_of(".,") != text.npos;
  const Rounding rounding = in_tenths ? Rounding::tenths : Rounding::whole_degrees;
  return direction_figures(TrueDirection(typed->deg + by_deg).deg(), rounding) + letter_of(typed->reference);
}

std::string print_direction(double deg, std::optional<Reference> reference, Rounding rounding) {
  return direction_figures(deg, rounding) + "°" + letter_of(reference);
}

Result<double> parse_correction_deg(std::string_view what, std::string_view text) {
  const auto read = [&](std::string_view typed) { return read_correction(what, typed); };
  return with_suggestion(read(text), likely_corrections(text), read, [](double deg) { return print_correction(deg, Rounding::tenths); });
}

std::string print_correction(double deg, Rounding rounding) {
  if (east_west(deg, rounding).empty()) return "0°";
  return correction_figures(deg, rounding) + "°" + east_west(deg, rounding);
}

}  // namespace fogsheet
