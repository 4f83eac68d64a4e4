#include "core/formats/passage_fields.h"

#include <algorithm>
#include <tuple>

#include "core/document/document.h"
#include "core/formats/field_list.h"

namespace fogsheet {
namespace {

constexpr std::uint32_t k_minutes_a_day = 24 * 60;

template <class Fields>
void describe(Fields& f, ClockTime& time) {
  auto minutes = static_cast<std::uint32_t>(time.minutes);
  f.whole("time", minutes, 0, k_minutes_a_day - 1);
  time.minutes = static_cast<int>(minutes);
}

template <class Fields>
void describe_speed(Fields& f, std::optional<double>& kn) {
  optional_field(f, kn, [&](double& it) { f.number("speed", it, k_parts_per_passage_knot, 1 / k_parts_per_passage_knot, k_most_boat_speed_kn); });
}

template <class Fields>
void describe_leeway(Fields& f, std::optional<PlannedLeeway>& leeway) {
  optional_field(f, leeway, [&](PlannedLeeway& it) {
    f.direction("wind", it.wind_from_deg, k_parts_per_passage_degree);
    f.number("leeway", it.angle_deg, k_parts_per_passage_degree, 0, k_most_leeway_deg);
  });
}

template <class Fields>
void describe(Fields& f, Stream& stream) {
  double set_deg = stream.set.deg();
  f.direction("set", set_deg, k_parts_per_passage_degree);
  stream.set = TrueDirection(set_deg);
  f.number("drift", stream.drift_kn, k_parts_per_passage_knot, 0, k_greatest_drift_kn);
}

template <class Fields>
void describe(Fields& f, PlannedStream& stream) {
  enum_field(f, "stream", stream.entry, StreamEntry::by_hour);
  describe(f, stream.steady);
  list_field(f, "hours", stream.hours, k_most_stream_hours, [&](StreamHour& row) {
    double hour = row.hour;
    f.number("hour", hour, 1, -k_stream_hours, k_stream_hours);
    row.hour = static_cast<int>(hour);
    describe(f, row.stream);
  });
  f.text("source", stream.source, k_most_name_bytes);
}

template <class Fields>
void describe(Fields& f, MarkToLeave& leave) {
  f.whole("mark", leave.mark.value, 1, k_most_id - 1);
  enum_field(f, "side", leave.side, Side::starboard);
  f.number("distance", leave.distance_nm, k_parts_per_passage_nm, 0, k_most_leave_nm);
}

template <class Fields>
void describe(Fields& f, PassageLeg& leg) {
  f.whole("leg", leg.leg.value, 1, k_most_id - 1);
  f.text("leg", leg.name, k_most_note_bytes);
  describe_speed(f, leg.speed_kn);
  describe_leeway(f, leg.leeway);
  optional_field(f, leg.stream, [&](PlannedStream& it) { describe(f, it); });
  optional_field(f, leg.way, [&](Way& it) { enum_field(f, "way", it, Way::hour_by_hour); });
  optional_field(f, leg.leave, [&](MarkToLeave& it) { describe(f, it); });
  f.text("look for", leg.look_for, k_most_name_bytes);
  f.flag(leg.triangle);
}

template <class Fields>
void describe(Fields& f, Tide& tide) {
  f.date("date", tide.date);
  describe(f, tide.time);
  f.flag(tide.is_high);
  optional_field(f, tide.height_m, [&](double& m) { f.number("height", m, k_parts_per_metre, -k_most_tide_m, k_most_tide_m); });
}

template <class Fields>
void describe_log(Fields& f, std::optional<double>& nm) {
  optional_field(f, nm, [&](double& it) { f.number("log", it, k_parts_per_passage_nm, 0, k_most_log_nm); });
}

template <class Fields>
void describe(Fields& f, DeckEntry& entry) {
  enum_field(f, "kind", entry.kind, DeckEntryKind::passed);
  f.date("date", entry.date);
  describe(f, entry.time);
  describe_log(f, entry.log_nm);
  optional_field(f, entry.side, [&](Side& it) { enum_field(f, "side", it, Side::starboard); });
  optional_field(f, entry.distance_nm, [&](double& it) { f.number("distance", it, k_parts_per_passage_nm, 0, k_most_leave_nm); });
  f.text("note", entry.note, k_most_name_bytes);
}

template <class Fields>
void describe(Fields& f, Zone& zone) {
  double minutes = zone.minutes_east;
  f.number("zone", minutes, 1, k_westmost_zone_min, k_eastmost_zone_min);
  zone.minutes_east = static_cast<int>(minutes);
  f.text("zone", zone.name, k_most_name_bytes);
}

template <class Fields>
void describe(Fields& f, Passage& passage) {
  f.whole("id", passage.id.value, 1, k_most_id - 1);
  f.text("name", passage.name, k_most_name_bytes);
  list_field(f, "legs", passage.legs, k_most_passage_legs, [&](PassageLeg& leg) { describe(f, leg); });
  describe_speed(f, passage.speed_kn);
  describe_leeway(f, passage.leeway);
  describe(f, passage.stream);
  enum_field(f, "way", passage.way, Way::hour_by_hour);
  f.date("date", passage.date);
  optional_field(f, passage.time, [&](ClockTime& it) { describe(f, it); });
  f.flag(passage.is_arrival);
  describe(f, passage.zone);
  optional_field(f, passage.home_date, [&](Date& it) { f.date("date", it); });
  optional_field(f, passage.home_time, [&](ClockTime& it) { describe(f, it); });
  f.text("tide place", passage.tide_place, k_most_name_bytes);
  list_field(f, "tides", passage.tides, k_most_tides, [&](Tide& tide) { describe(f, tide); });
  optional_field(f, passage.visibility_nm, [&](double& it) { f.number("visibility", it, k_parts_per_passage_nm, 0, k_most_visibility_nm); });
  f.whole("minutes", passage.plot_every_min, 0, k_most_plot_min);
  f.text("turn back", passage.turn_back, k_most_note_bytes);
  f.text("note", passage.note, k_most_note_bytes);
  list_field(f, "deck log", passage.deck_log, k_most_deck_entries, [&](DeckEntry& entry) { describe(f, entry); });
}

template <class Fields>
void describe(Fields& f, Passages& passages) {
  list_field(f, "passages", passages.all, k_most_passages, [&](Passage& passage) { describe(f, passage); });
  f.whole("passage", passages.in_hand.value, 0, k_most_id - 1);
  f.whole("next id", passages.next_id, 1, k_most_id);
}

bool hours_ascend(const PlannedStream& stream) {
  return std::adjacent_find(stream.hours.begin(), stream.hours.end(), [](const StreamHour& a, const StreamHour& b) { return a.hour >= b.hour; }) == stream.hours.end();
}

bool is_sound(const Passage& passage) {
  return hours_ascend(passage.stream) && std::all_of(passage.legs.begin(), passage.legs.end(), [](const PassageLeg& leg) { return !leg.stream || hours_ascend(*leg.stream); });
}

bool are_ids_sound(const Passages& passages) {
  std::vector<std::uint32_t> ids;
  for (const Passage& passage : passages.all) ids.push_back(passage.id.value);
  std::sort(ids.begin(), ids.end());
  const bool in_hand_there = passages.all.empty() ? passages.in_hand == PassageId{} : find(passages, passages.in_hand) != nullptr;
  return in_hand_there && std::adjacent_find(ids.begin(), ids.end()) == ids.end() && (ids.empty() || ids.back() < passages.next_id);
}

void put_in_order(PlannedStream& stream) {
  std::stable_sort(stream.hours.begin(), stream.hours.end(), [](const StreamHour& a, const StreamHour& b) { return a.hour < b.hour; });
}

template <class Row>
void put_in_order_of_time(std::vector<Row>& rows) {
  std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return std::tie(a.date, a.time) < std::tie(b.date, b.time); });
}

std::optional<Problem> hour_twice(const PlannedStream& stream) {
  for (std::size_t i = 1; i < stream.hours.size(); ++i)
    if (stream.hours[i].hour == stream.hours[i - 1].hour) return Problem{.fault = Fault::stream_hour_twice, .numbers = {static_cast<double>(stream.hours[i].hour)}};
  return std::nullopt;
}

}  // namespace

std::vector<std::uint8_t> bytes_of(const Passages& passages) {
  FieldWriter f;
  Passages value = passages;
  describe(f, value);
  return f.bytes();
}

Result<Passages> passages_from(std::span<const std::uint8_t> bytes) {
  Passages passages;
  FieldReader f(bytes);
  describe(f, passages);
  if (!f.at_end() || !are_ids_sound(passages) || !std::all_of(passages.all.begin(), passages.all.end(), is_sound))
    return Problem{.fault = Fault::text_section, .texts = {"passages"}};
  return passages;
}

Result<Passage> as_kept(Passage passage) {
  put_in_order(passage.stream);
  for (PassageLeg& leg : passage.legs)
    if (leg.stream) put_in_order(*leg.stream);
  put_in_order_of_time(passage.tides);
  FieldChecker f;
  describe(f, passage);
  if (f.problem()) return *f.problem();
  if (const std::optional<Problem> twice = hour_twice(passage.stream)) return *twice;
  for (const PassageLeg& leg : passage.legs)
    if (leg.stream)
      if (const std::optional<Problem> twice = hour_twice(*leg.stream)) return *twice;
  return passage;
}

}  // namespace fogsheet
