#include "core/base/clock_text.h"

#include <optional>
#include <vector>

#include "core/base/entry_tokens.h"
#include "core/base/number_text.h"
#include "core/base/typing_slips.h"

namespace fogsheet {

namespace {

using Kind = EntryToken::Kind;

constexpr std::string_view k_what = "time";
constexpr int k_minutes_per_hour = 60;
constexpr int k_hours_per_day = 24;

struct HoursMinutes {
  int hours, minutes;
};

HoursMinutes split_hundreds(double value) { return {static_cast<int>(value) / 100, static_cast<int>(value) % 100}; }

// A number of so many figures, without decimals.
bool whole_number(const EntryToken& token, int least, int most) {
  return token.kind == Kind::number && !token.number.has_mark && token.number.whole_digits >= least && token.number.whole_digits <= most;
}

// "0640", "06.40", "6:40" or "06h40" from the first tokens; `used` is how many of them. Empty for every other form.
std::optional<HoursMinutes> read_form(const std::vector<EntryToken>& tokens, std::size_t& used) {
  if (tokens.empty() || tokens[0].kind != Kind::number) return std::nullopt;
  const ScannedDecimal& first = tokens[0].number;
  const bool parted = tokens.size() >= 3 && (tokens[1].kind == Kind::colon || tokens[1].word == "h");
  if (parted && whole_number(tokens[0], 1, 2) && whole_number(tokens[2], 2, 2)) {
    used = 3;
    return HoursMinutes{static_cast<int>(first.value), static_cast<int>(tokens[2].number.value)};
  }
  used = 1;
  if (whole_number(tokens[0], 4, 4)) return split_hundreds(first.value);
  // Half a unit, so that 6.40 is not 639 hundredths.
  if (first.decimals == 2 && first.whole_digits >= 1 && first.whole_digits <= 2) return split_hundreds(first.value * 100 + 0.5);
  return std::nullopt;
}

Problem out_of_range(Fault fault, std::vector<std::string> texts, double given, double bound, const EntryToken& token) {
  return {.fault = fault, .texts = std::move(texts), .numbers = {given, bound}, .begin = token.begin, .end = token.end};
}

Result<ClockTime> read_clock_time(std::string_view text) {
  if (std::optional<Problem> unfit = unfit_entry(k_what, text)) return *unfit;
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  std::size_t used = 0;
  const std::optional<HoursMinutes> time = read_form(tokens, used);
  if (!time) return unreadable_entry(k_what, text, tokens.front().begin, tokens.back().end);
  if (used < tokens.size()) return unreadable_entry(k_what, text, tokens[used].begin, tokens.back().end);
  if (time->hours >= k_hours_per_day) return out_of_range(Fault::hours_out_of_range, {}, time->hours, k_hours_per_day, tokens[0]);
  if (time->minutes >= k_minutes_per_hour)
    return out_of_range(Fault::minutes_out_of_range, {std::string(k_what)}, time->minutes, k_minutes_per_hour, tokens[used - 1]);
  return ClockTime{.minutes = time->hours * k_minutes_per_hour + time->minutes};
}

// What has one likely reading only: 640, 6, 6 40, 24:00, 6:40 pm.
std::optional<ClockTime> likely_time(std::string_view text) {
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  if (tokens.empty() || tokens[0].kind != Kind::number) return std::nullopt;
  const ScannedDecimal& first = tokens[0].number;
  if (tokens.size() == 1 && !first.has_mark) {
    if (first.whole_digits <= 2 && first.value < k_hours_per_day) return ClockTime{static_cast<int>(first.value) * k_minutes_per_hour};
    if (first.whole_digits == 3) {
      const HoursMinutes time = split_hundreds(first.value);
      if (time.minutes < k_minutes_per_hour) return ClockTime{time.hours * k_minutes_per_hour + time.minutes};
    }
  }
  if (tokens.size() == 2 && whole_number(tokens[0], 1, 2) && whole_number(tokens[1], 2, 2)) {
    const HoursMinutes time{static_cast<int>(first.value), static_cast<int>(tokens[1].number.value)};
    if (time.hours < k_hours_per_day && time.minutes < k_minutes_per_hour) return ClockTime{time.hours * k_minutes_per_hour + time.minutes};
  }
  std::size_t used = 0;
  const std::optional<HoursMinutes> time = read_form(tokens, used);
  if (!time || time->minutes >= k_minutes_per_hour) return std::nullopt;
  if (used == tokens.size() && time->hours == k_hours_per_day && time->minutes == 0) return ClockTime{0};
  if (used + 1 == tokens.size() && time->hours >= 1 && time->hours <= 12) {
    const int hours = time->hours % 12;
    if (tokens[used].word == "am") return ClockTime{hours * k_minutes_per_hour + time->minutes};
    if (tokens[used].word == "pm") return ClockTime{(hours + 12) * k_minutes_per_hour + time->minutes};
  }
  return std::nullopt;
}

}  // namespace

Result<ClockTime> parse_clock_time(std::string_view text) {
  Result<ClockTime> time = read_clock_time(text);
  if (time.ok() || text.size() > k_longest_entry) return time;
  if (const std::optional<ClockTime> likely = likely_time(text)) {
    Problem problem = time.problem();
    problem.suggestion = print_clock_time(*likely);
    return problem;
  }
  return with_suggestion(std::move(time), likely_corrections(text), read_clock_time, print_clock_time);
}

std::string print_clock_time(ClockTime time) { return print_padded(time.minutes / k_minutes_per_hour * 100 + time.minutes % k_minutes_per_hour, 4); }

}  // namespace fogsheet
