#include "shell/passage_entries.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/clock_text.h"
#include "core/base/number_text.h"
#include "core/base/quantity_text.h"
#include "core/base/utf8.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/formats/passage_fields.h"
#include "shell/typed_entry.h"
#include "shell/typed_quantity.h"

namespace fogsheet {
namespace {

using typed::direction_shown;
using typed::no_such_field;
using typed::number_shown;
using typed::Parsed;
using typed::put;
using typed::put_optional;
using typed::put_text;

/// One of several words, by its place among them.
template <class Enum, std::size_t count>
Parsed put_word(Enum& value, const std::string& text, const char* const (&words)[count]) {
  for (std::size_t i = 0; i < count; ++i)
    if (text == words[i]) {
      value = static_cast<Enum>(i);
      return Done{};
    }
  return no_such_field(text);
}

constexpr const char* k_stream_words[] = {"none", "steady", "hours"};
constexpr const char* k_way_words[] = {"one", "hourly"};
constexpr const char* k_side_words[] = {"port", "starboard"};
constexpr const char* k_yes_no[] = {"no", "yes"};

template <class Enum, std::size_t count>
std::string word_of(Enum value, const char* const (&words)[count]) {
  return words[static_cast<std::size_t>(value)];
}

Result<double> typed_true(const std::string& text) {
  const Result<TypedDirection> typed = parse_direction(text);
  if (!typed) return typed.problem();
  if (typed->reference.value_or(Reference::true_north) == Reference::true_north) return typed->deg;
  return Problem{.fault = Fault::entry_unreadable, .texts = {"true direction", *typed->reference == Reference::magnetic ? "M" : "C"}};
}

Parsed put_minutes(std::uint32_t& minutes, const std::string& text) {
  const Result<double> typed = trimmed(text).empty() ? Result<double>(0.0) : parse_plain_number("minutes", text, 0, k_most_plot_min);
  if (!typed) return typed.problem();
  minutes = static_cast<std::uint32_t>(std::lround(*typed));
  return Done{};
}

Result<double> typed_degrees(const std::string& text) { return parse_plain_number("leeway", text, 0, k_most_leeway_deg); }
Result<Date> typed_date(const std::string& text) { return parse_iso_date(trimmed(text)); }
Result<ClockTime> typed_time(const std::string& text) { return parse_clock_time(text); }

/// "tide/0/time" parted at its first slash: "tide" and "0/time"; without one the rest is empty.
struct Parted {
  std::string head, rest;
};
Parted parted(const std::string& field) {
  const std::size_t slash = field.find('/');
  return slash == std::string::npos ? Parted{field, ""} : Parted{field.substr(0, slash), field.substr(slash + 1)};
}

Result<std::size_t> place_in(const std::string& text, std::size_t count) {
  const Result<double> place = parse_plain_number("place", text, 0, static_cast<double>(count));
  if (!place) return place.problem();
  return static_cast<std::size_t>(*place);
}

// -- wind and leeway: one without the other says nothing

Parsed put_wind(std::optional<PlannedLeeway>& leeway, const std::string& text) {
  if (trimmed(text).empty()) {
    leeway.reset();
    return Done{};
  }
  const Result<double> from = typed_true(text);
  if (!from) return from.problem();
  if (!leeway) leeway.emplace();
  leeway->wind_from_deg = *from;
  return Done{};
}

Parsed put_leeway(std::optional<PlannedLeeway>& leeway, const std::string& text) {
  const bool is_empty = trimmed(text).empty();
  if (!leeway && is_empty) return Done{};
  if (!leeway) return Fault::wind_missing;
  return is_empty ? put(leeway->angle_deg, Result<double>(0.0)) : put(leeway->angle_deg, typed_degrees(text));
}

std::string wind_text(const std::optional<PlannedLeeway>& leeway) { return leeway ? direction_shown(leeway->wind_from_deg) : ""; }
std::string leeway_text(const std::optional<PlannedLeeway>& leeway) { return leeway ? number_shown(leeway->angle_deg) : ""; }

// -- the stream: set and drift together are a stream; an hour without both is taken off the table

StreamHour* hour_in(PlannedStream& stream, int hour) {
  const auto found = std::find_if(stream.hours.begin(), stream.hours.end(), [&](const StreamHour& row) { return row.hour == hour; });
  return found == stream.hours.end() ? nullptr : &*found;
}

Parsed put_set(Stream& stream, const std::string& text) {
  const Result<double> set = typed_true(text);
  if (!set) return set.problem();
  stream.set = TrueDirection(*set);
  return Done{};
}

/// "352/0.7", "352 0.7", "352T 0.7 kn": parted at the first stroke or blank.
Result<Stream> typed_stream(const std::string& text) {
  const std::string typed(trimmed(text));
  const std::size_t part = typed.find_first_of("/ ;");
  if (part == std::string::npos) return Problem{.fault = Fault::entry_part_missing, .texts = {"stream", "drift"}};
  Stream stream;
  const Parsed set = put_set(stream, typed.substr(0, part));
  if (!set) return set.problem();
  const Parsed drift = put(stream.drift_kn, typed_knots(typed.substr(part + 1)));
  if (!drift) return drift.problem();
  return stream;
}

Parsed put_stream_hour(PlannedStream& stream, const std::string& field, const std::string& text) {
  const Result<double> hour = parse_plain_number("hour", field.front() == '-' ? field.substr(1) : field, 0, k_stream_hours);
  if (!hour) return hour.problem();
  const int wanted = static_cast<int>(*hour) * (field.front() == '-' ? -1 : 1);
  StreamHour* row = hour_in(stream, wanted);
  if (trimmed(text).empty()) {
    if (row) stream.hours.erase(stream.hours.begin() + (row - stream.hours.data()));
    return Done{};
  }
  const Result<Stream> typed = typed_stream(text);
  if (!typed) return typed.problem();
  if (!row) row = &stream.hours.emplace_back(StreamHour{.hour = wanted});
  row->stream = *typed;
  stream.entry = StreamEntry::by_hour;
  return Done{};
}

Parsed put_stream(PlannedStream& stream, const std::string& field, const std::string& text) {
  const Parted part = parted(field);
  if (field == "kind") return put_word(stream.entry, text, k_stream_words);
  if (field == "source") return put_text(stream.source, text);
  if (part.head == "hour" && !part.rest.empty()) return put_stream_hour(stream, part.rest, text);
  if (field != "set" && field != "drift") return no_such_field(field);
  stream.entry = StreamEntry::steady;
  return field == "set" ? put_set(stream.steady, text) : put(stream.steady.drift_kn, typed_knots(text));
}

std::string stream_text(const PlannedStream& stream, const std::string& field) {
  const Parted part = parted(field);
  if (field == "kind") return word_of(stream.entry, k_stream_words);
  if (field == "source") return stream.source;
  const bool was_entered = !(stream.steady == Stream{});
  if (field == "set") return was_entered ? direction_shown(stream.steady.set.deg()) : "";
  if (field == "drift") return was_entered ? number_shown(stream.steady.drift_kn) : "";
  for (const StreamHour& row : stream.hours)
    if (part.head == "hour" && std::to_string(row.hour) == part.rest) return direction_shown(row.stream.set.deg()) + "/" + number_shown(row.stream.drift_kn);
  return "";
}

// -- a leg's own; what it has not is the passage's

Parsed put_leave(const Document& document, std::optional<MarkToLeave>& leave, const std::string& text) {
  if (text.empty() || text == "none") {
    leave.reset();
    return Done{};
  }
  for (const Mark& mark : document.marks)
    if (std::to_string(mark.id.value) == text) {
      if (!leave) leave.emplace();
      leave->mark = mark.id;
      return Done{};
    }
  return Problem{.fault = Fault::mark_unknown, .texts = {text}};
}

Parsed put_leg(const Document& document, const Passage& passage, PassageLeg& leg, const std::string& field, const std::string& text) {
  const Parted part = parted(field);
  if (field == "speed") return put_optional(leg.speed_kn, text, typed_knots);
  if (field == "wind") return put_wind(leg.leeway, text);
  if (field == "leeway") {
    if (!leg.leeway && passage.leeway && !trimmed(text).empty()) leg.leeway = passage.leeway;
    return put_leeway(leg.leeway, text);
  }
  if (field == "look-for") return put_text(leg.look_for, text);
  if (field == "leave") return put_leave(document, leg.leave, text);
  if (field == "triangle") return put_word(leg.triangle, text, k_yes_no);
  if (field == "way" && text == "passage") {
    leg.way.reset();
    return Done{};
  }
  if (field == "way") return put_word(leg.way.emplace(), text, k_way_words);
  if (part.head == "stream" && part.rest == "kind" && text == "passage") {
    leg.stream.reset();
    return Done{};
  }
  if (part.head == "stream") {
    if (!leg.stream) leg.stream.emplace();
    return put_stream(*leg.stream, part.rest, text);
  }
  if (!leg.leave) return no_such_field(field);
  if (field == "side") return put_word(leg.leave->side, text, k_side_words);
  if (field == "distance") return put(leg.leave->distance_nm, typed_nm(text));
  return no_such_field(field);
}

std::string leg_text(const PassageLeg& leg, const std::string& field) {
  const Parted part = parted(field);
  if (field == "speed") return number_shown(leg.speed_kn);
  if (field == "wind") return wind_text(leg.leeway);
  if (field == "leeway") return leeway_text(leg.leeway);
  if (field == "look-for") return leg.look_for;
  if (field == "triangle") return word_of(leg.triangle, k_yes_no);
  if (field == "way") return leg.way ? word_of(*leg.way, k_way_words) : "passage";
  if (part.head == "stream") return leg.stream ? stream_text(*leg.stream, part.rest) : part.rest == "kind" ? "passage" : "";
  if (!leg.leave) return field == "leave" ? "none" : "";
  if (field == "leave") return std::to_string(leg.leave->mark.value);
  if (field == "side") return word_of(leg.leave->side, k_side_words);
  return field == "distance" ? number_shown(leg.leave->distance_nm) : "";
}

// -- high and low waters

constexpr const char* k_tide_words[] = {"low", "high"};

Parsed put_tide(Passage& passage, std::size_t place, const std::string& field, const std::string& text) {
  const bool is_new = place == passage.tides.size();
  if (is_new) passage.tides.push_back({.date = passage.date, .is_high = true});
  Tide& tide = passage.tides[place];
  if (field == "time" && trimmed(text).empty()) {
    passage.tides.erase(passage.tides.begin() + static_cast<std::ptrdiff_t>(place));
    return Done{};
  }
  if (field == "time") return put(tide.time, typed_time(text));
  if (field == "date") return put(tide.date, typed_date(text));
  if (field == "kind") return put_word(tide.is_high, text, k_tide_words);
  if (field == "height") return put_optional(tide.height_m, text, typed_metres);
  return no_such_field(field);
}

std::string tide_text(const Tide& tide, const std::string& field) {
  if (field == "time") return print_clock_time(tide.time);
  if (field == "date") return iso_date(tide.date);
  if (field == "kind") return word_of(tide.is_high, k_tide_words);
  return field == "height" ? number_shown(tide.height_m) : "";
}

// -- the passage's own

struct OwnField {
  const char* name;
  Parsed (*put)(Passage& passage, const std::string& text);
  std::string (*text)(const Passage& passage);
};

constexpr const char* k_time_words[] = {"departure", "arrival"};

const OwnField k_own_fields[] = {
    {"name", [](Passage& p, const std::string& text) { return put_text(p.name, text); }, [](const Passage& p) { return p.name; }},
    {"speed", [](Passage& p, const std::string& text) { return put_optional(p.speed_kn, text, typed_knots); }, [](const Passage& p) { return number_shown(p.speed_kn); }},
    {"wind", [](Passage& p, const std::string& text) { return put_wind(p.leeway, text); }, [](const Passage& p) { return wind_text(p.leeway); }},
    {"leeway", [](Passage& p, const std::string& text) { return put_leeway(p.leeway, text); }, [](const Passage& p) { return leeway_text(p.leeway); }},
    {"way", [](Passage& p, const std::string& text) { return put_word(p.way, text, k_way_words); }, [](const Passage& p) { return word_of(p.way, k_way_words); }},
    {"date", [](Passage& p, const std::string& text) { return put(p.date, typed_date(text)); }, [](const Passage& p) { return iso_date(p.date); }},
    {"time", [](Passage& p, const std::string& text) { return put_optional(p.time, text, typed_time); }, [](const Passage& p) { return p.time ? print_clock_time(*p.time) : ""; }},
    {"times", [](Passage& p, const std::string& text) { return put_word(p.is_arrival, text, k_time_words); }, [](const Passage& p) { return word_of(p.is_arrival, k_time_words); }},
    {"zone", [](Passage& p, const std::string& text) { return put(p.zone, parse_zone(text)); }, [](const Passage& p) { return zone_name(p.zone); }},
    {"home-date", [](Passage& p, const std::string& text) { return put_optional(p.home_date, text, typed_date); }, [](const Passage& p) { return iso_date(p.home_date.value_or(p.date)); }},
    {"home-time", [](Passage& p, const std::string& text) { return put_optional(p.home_time, text, typed_time); }, [](const Passage& p) { return p.home_time ? print_clock_time(*p.home_time) : ""; }},
    {"tide-place", [](Passage& p, const std::string& text) { return put_text(p.tide_place, text); }, [](const Passage& p) { return p.tide_place; }},
    {"visibility", [](Passage& p, const std::string& text) { return put_optional(p.visibility_nm, text, typed_nm); }, [](const Passage& p) { return number_shown(p.visibility_nm); }},
    {"turn-back", [](Passage& p, const std::string& text) { return put_text(p.turn_back, text); }, [](const Passage& p) { return p.turn_back; }},
    {"note", [](Passage& p, const std::string& text) { return put_text(p.note, text); }, [](const Passage& p) { return p.note; }},
    {"plot-every", [](Passage& p, const std::string& text) { return put_minutes(p.plot_every_min, text); }, [](const Passage& p) { return p.plot_every_min == 0 ? "" : std::to_string(p.plot_every_min); }},
};

Parsed put_field(const Document& document, Passage& passage, const std::string& field, const std::string& text) {
  for (const OwnField& own : k_own_fields)
    if (field == own.name) return own.put(passage, text);
  const Parted part = parted(field);
  if (part.head == "stream") return put_stream(passage.stream, part.rest, text);
  const Parted row = parted(part.rest);
  if (part.head == "leg") {
    const Result<std::size_t> leg = place_in(row.head, passage.legs.size());
    if (!leg) return leg.problem();
    if (*leg == passage.legs.size()) return no_such_field(field);
    return put_leg(document, passage, passage.legs[*leg], row.rest, text);
  }
  if (part.head == "tide") {
    const Result<std::size_t> tide = place_in(row.head, passage.tides.size());
    if (!tide) return tide.problem();
    return put_tide(passage, *tide, row.rest, text);
  }
  return no_such_field(field);
}

}  // namespace

Result<Passage> with_field(const Document& document, Passage passage, const std::string& field, const std::string& text) {
  const Parsed parsed = put_field(document, passage, field, text);
  if (!parsed) return parsed.problem();
  return as_kept(std::move(passage));
}

std::string field_text(const Passage& passage, const std::string& field) {
  for (const OwnField& own : k_own_fields)
    if (field == own.name) return own.text(passage);
  const Parted part = parted(field);
  if (part.head == "stream") return stream_text(passage.stream, part.rest);
  const Parted row = parted(part.rest);
  const auto place = [&](std::size_t count) {
    const Result<std::size_t> found = place_in(row.head, count);
    return found ? *found : count;
  };
  if (part.head == "leg" && place(passage.legs.size()) < passage.legs.size()) return leg_text(passage.legs[place(passage.legs.size())], row.rest);
  if (part.head == "tide" && place(passage.tides.size()) < passage.tides.size()) return tide_text(passage.tides[place(passage.tides.size())], row.rest);
  return "";
}

std::string leg_field_name(std::size_t leg, const std::string& name) { return "leg/" + std::to_string(leg) + "/" + name; }
std::string tide_field_name(std::size_t tide, const char* name) { return "tide/" + std::to_string(tide) + "/" + name; }
std::string stream_hour_field_name(int hour) { return "stream/hour/" + std::to_string(hour); }

}  // namespace fogsheet
