#include "core/base/instant.h"

#include <cmath>
#include <cstdlib>
#include <vector>

#include "core/base/entry_tokens.h"
#include "core/base/number_text.h"

namespace fogsheet {

namespace {

using Kind = EntryToken::Kind;

constexpr std::string_view k_zone = "time zone";
constexpr int k_minutes_per_hour = 60;

// Quotient rounded down, so that times before 1970 fall on the right day.
std::int64_t floor_divide(std::int64_t value, std::int64_t by) { return value / by - (value % by < 0 ? 1 : 0); }

bool is_universal(const std::string& word) { return word == "utc" || word == "ut" || word == "gmt" || word == "z"; }

bool is_whole(const EntryToken& token, int most_digits) {
  return token.kind == Kind::number && !token.number.has_mark && token.number.whole_digits <= most_digits;
}

struct Offset {
  int hours = 0;
  int minutes = 0;
};

// "1", "01", "530", "0530", "5:30", the tokens after the sign to the end.
std::optional<Offset> read_offset(const std::vector<EntryToken>& tokens, std::size_t at) {
  if (at >= tokens.size() || !is_whole(tokens[at], 4)) return std::nullopt;
  const int first = static_cast<int>(tokens[at].number.value);
  if (at + 1 == tokens.size()) {
    if (tokens[at].number.whole_digits <= 2) return Offset{.hours = first};
    return Offset{.hours = first / 100, .minutes = first % 100};
  }
  const bool parted = at + 3 == tokens.size() && tokens[at + 1].kind == Kind::colon && tokens[at].number.whole_digits <= 2;
  if (!parted || !is_whole(tokens[at + 2], 2) || tokens[at + 2].number.whole_digits != 2) return std::nullopt;
  return Offset{.hours = first, .minutes = static_cast<int>(tokens[at + 2].number.value)};
}

}  // namespace

Instant nearest_instant(double seconds) { return {static_cast<std::int64_t>(std::floor(seconds + 0.5))}; }

std::string zone_name(const Zone& zone) {
  if (!zone.name.empty()) return zone.name;
  if (zone.minutes_east == 0) return "UTC";
  const int size = std::abs(zone.minutes_east);
  const std::string minutes = size % k_minutes_per_hour == 0 ? "" : ":" + print_padded(size % k_minutes_per_hour, 2);
  return (zone.minutes_east < 0 ? "UTC-" : "UTC+") + std::to_string(size / k_minutes_per_hour) + minutes;
}

Result<Zone> parse_zone(std::string_view text) {
  if (std::optional<Problem> unfit = unfit_entry(k_zone, text)) return *unfit;
  const std::vector<EntryToken> tokens = entry_tokens(text, CommaMeans::decimal_mark);
  // Before the sign stands the name, in whatever letters: no figure and no other sign is among them.
  std::size_t sign = 0;
  while (sign < tokens.size() && tokens[sign].kind != Kind::plus && tokens[sign].kind != Kind::minus && tokens[sign].kind != Kind::number) ++sign;
  const bool universal = sign == 1 && is_universal(tokens[0].word);
  std::string name = sign == 0 ? "" : std::string(text.substr(tokens[0].begin, tokens[sign - 1].end - tokens[0].begin));
  if (sign == tokens.size()) {
    if (universal) return Zone{.minutes_east = 0, .name = tokens[0].word == "utc" ? "" : std::move(name)};
    return Problem{
        .fault = Fault::entry_part_missing, .texts = {std::string(k_zone), "hours from UTC"}, .begin = tokens[0].begin, .end = tokens.back().end};
  }
  const EntryToken& mark = tokens[sign];
  const std::optional<Offset> offset = mark.kind == Kind::plus || mark.kind == Kind::minus ? read_offset(tokens, sign + 1) : std::nullopt;
  if (!offset) return unreadable_entry(k_zone, text, mark.begin, tokens.back().end);
  if (offset->minutes >= k_minutes_per_hour)
    return Problem{.fault = Fault::minutes_out_of_range,
                   .texts = {std::string(k_zone)},
                   .numbers = {static_cast<double>(offset->minutes), k_minutes_per_hour},
                   .begin = mark.begin,
                   .end = tokens.back().end};
  const int size = offset->hours * k_minutes_per_hour + offset->minutes;
  const int minutes_east = mark.kind == Kind::minus ? -size : size;
  if (minutes_east < k_westmost_zone_min || minutes_east > k_eastmost_zone_min) {
    constexpr double k_an_hour = k_minutes_per_hour;
    return Problem{.fault = Fault::number_out_of_range,
                   .texts = {std::string(k_zone)},
                   .numbers = {minutes_east / k_an_hour, k_westmost_zone_min / k_an_hour, k_eastmost_zone_min / k_an_hour},
                   .begin = mark.begin,
                   .end = tokens.back().end};
  }
  if (universal) name.clear();  // "UT+1" is UTC+1 under no name of its own
  return Zone{.minutes_east = minutes_east, .name = std::move(name)};
}

Instant instant_of(Date date, ClockTime time, const Zone& zone) {
  return {unix_day(date) * k_seconds_per_day + (time.minutes - zone.minutes_east) * std::int64_t{k_seconds_per_minute}};
}

LocalTime local_time(Instant instant, const Zone& zone) {
  const std::int64_t local = instant.seconds + zone.minutes_east * std::int64_t{k_seconds_per_minute};
  const std::int64_t day = floor_divide(local, k_seconds_per_day);
  const int of_day = static_cast<int>(local - day * k_seconds_per_day);
  return {.date = date_of_unix_day(day), .time = {of_day / k_seconds_per_minute}, .seconds = of_day % k_seconds_per_minute};
}

std::string iso_instant(Instant instant) {
  const LocalTime utc = local_time(instant, {});
  const int hours = utc.time.minutes / k_minutes_per_hour, minutes = utc.time.minutes % k_minutes_per_hour;
  return iso_date(utc.date) + "T" + print_padded(hours, 2) + ":" + print_padded(minutes, 2) + ":" + print_padded(utc.seconds, 2) + "Z";
}

Result<Instant> parse_iso_instant(std::string_view text) {
  const Problem unreadable{.fault = Fault::instant_unreadable, .texts = {std::string(text.substr(0, 40))}};
  constexpr std::string_view k_form = "YYYY-MM-DDThh:mm:ssZ";
  constexpr std::size_t k_date = 10;
  if (text.size() != k_form.size()) return unreadable;
  const Result<Date> date = parse_iso_date(text.substr(0, k_date));
  if (!date.ok()) return unreadable;
  int fields[3] = {0, 0, 0};
  for (std::size_t i = k_date; i < k_form.size(); ++i) {
    const bool figure = k_form[i] == 'h' || k_form[i] == 'm' || k_form[i] == 's';
    if (figure ? text[i] < '0' || text[i] > '9' : text[i] != k_form[i]) return unreadable;
    if (figure) {
      int& field = fields[(i - k_date - 1) / 3];
      field = field * 10 + (text[i] - '0');
    }
  }
  if (fields[0] >= 24 || fields[1] >= k_minutes_per_hour || fields[2] >= k_seconds_per_minute) return unreadable;
  return Instant{instant_of(*date, {fields[0] * k_minutes_per_hour + fields[1]}, {}).seconds + fields[2]};
}

ClockFigures clock_figures(Instant instant, const Zone& zone, Date reference) {
  const LocalTime shown = local_time({instant.seconds + k_seconds_per_minute / 2}, zone);
  return {.figures = print_clock_time(shown.time), .days_after = static_cast<int>(unix_day(shown.date) - unix_day(reference))};
}

}  // namespace fogsheet
