#include "core/formats/boat_fields.h"

#include <algorithm>

#include "core/formats/field_list.h"

namespace fogsheet {
namespace {

template <class Fields>
void describe(Fields& f, CardField& field) {
  f.number("horizontal field", field.horizontal_nt, 1, 0, k_most_field_nt);
  f.number("dip", field.inclination_deg, k_parts_per_card_degree, -90, 90);
}

template <class Fields>
void describe_field(Fields& f, std::optional<CardField>& field) {
  optional_field(f, field, [&](CardField& it) { describe(f, it); });
}

template <class Fields>
void describe_read(Fields& f, const char* name, std::optional<double>& deg) {
  optional_field(f, deg, [&](double& it) { f.direction(name, it, k_parts_per_read_degree); });
}

/// Of trusted bearings: they are never by the compass that is being looked at.
template <class Fields>
void describe_reference(Fields& f, Reference& reference) {
  enum_field(f, "reference", reference, Reference::magnetic);
}

template <class Fields>
void describe(Fields& f, CheckRow& row) {
  f.text("object", row.object, k_most_name_bytes);
  describe_read(f, "trusted bearing", row.trusted_deg);
  describe_read(f, "reading", row.read_deg);
  f.flag(row.left_out);
}

template <class Fields>
void describe(Fields& f, Check& check) {
  f.text("place", check.place, k_most_name_bytes);
  describe_reference(f, check.reference);
  f.number("variation", check.variation_deg, k_parts_per_variation_degree, -k_most_variation_deg, k_most_variation_deg);
  list_field(f, "bearings", check.rows, k_most_rows, [&](CheckRow& row) { describe(f, row); });
}

template <class Fields>
void describe(Fields& f, SwingRow& row) {
  f.direction("heading", row.heading_deg, k_parts_per_read_degree);
  describe_read(f, "reading", row.read_deg);
  describe_read(f, "trusted bearing", row.trusted_deg);
  optional_field(f, row.speed_kn, [&](double& kn) { f.number("speed", kn, k_parts_per_knot, 1 / k_parts_per_knot, k_most_speed_kn); });
  enum_field(f, "turning", row.turning, TurningTo::port);
  std::uint32_t minute = static_cast<std::uint32_t>(row.minute + 1);
  f.whole("time", minute, 0, 24 * 60);
  row.minute = static_cast<int>(minute) - 1;
  f.flag(row.left_out);
}

template <class Fields>
void describe(Fields& f, Swing& swing) {
  enum_field(f, "method", swing.method, SwingMethod::satellite);
  f.text("place", swing.place, k_most_name_bytes);
  f.text("object", swing.object, k_most_name_bytes);
  describe_read(f, "bearing", swing.object_deg);
  describe_reference(f, swing.reference);
  f.number("variation", swing.variation_deg, k_parts_per_variation_degree, -k_most_variation_deg, k_most_variation_deg);
  f.number("uncertainty", swing.variation_sd_deg, k_parts_per_variation_degree, 0, k_most_variation_deg);
  optional_field(f, swing.object_nm, [&](double& nm) { f.number("distance", nm, k_parts_per_nm, 1 / k_parts_per_nm, k_most_object_nm); });
  optional_field(f, swing.circle_m, [&](double& m) { f.number("circle", m, 1, 1, k_most_circle_m); });
  describe_field(f, swing.field);
  list_field(f, "readings", swing.rows, k_most_rows, [&](SwingRow& row) { describe(f, row); });
}

template <class Fields>
void describe(Fields& f, TypedCard& card) {
  f.text("by", card.by, k_most_name_bytes);
  list_field(f, "card", card.entries, k_most_rows, [&](DeviationEntry& entry) {
    double heading_deg = entry.heading.deg();
    f.direction("heading", heading_deg, 1);
    entry.heading = CompassDirection(heading_deg);
    f.number("deviation", entry.deviation.deg, k_parts_per_card_degree, -k_most_card_deviation_deg, k_most_card_deviation_deg);
  });
  std::sort(card.entries.begin(), card.entries.end(), [](const DeviationEntry& a, const DeviationEntry& b) { return a.heading.deg() < b.heading.deg(); });
  describe_field(f, card.field);
}

template <class Fields>
void describe(Fields& f, Trial& trial) {
  list_field(f, "things", trial.rows, k_most_rows, [&](TrialRow& row) {
    f.text("thing", row.thing, k_most_name_bytes);
    describe_read(f, "off", row.off_deg);
    describe_read(f, "on", row.on_deg);
  });
}

template <class Fields>
void describe(Fields& f, Remark& remark) {
  f.flag(remark.adjusted);
  f.text("note", remark.text, k_most_note_bytes, true);
}

/// The kinds a log entry may be of, by their place among them.
template <std::size_t place = 0>
void emplace_kind(LogEntryKind& what, std::size_t wanted) {
  if constexpr (place < std::variant_size_v<LogEntryKind>) {
    if (place == wanted) what.emplace<place>();
    else emplace_kind<place + 1>(what, wanted);
  }
}

template <class Fields>
void describe(Fields& f, LogEntry& entry) {
  f.cut();
  f.whole("id", entry.id.value, 1, k_most_id - 1);
  f.date("date", entry.date);
  auto kind = static_cast<unsigned>(entry.what.index());
  f.code("kind", kind, std::variant_size_v<LogEntryKind>);
  if (!f.ok()) return;
  if (kind != entry.what.index()) emplace_kind(entry.what, kind);
  std::visit([&](auto& what) { describe(f, what); }, entry.what);
}

template <class Fields>
void describe(Fields& f, Compass& compass) {
  f.cut();
  f.whole("id", compass.id.value, 1, k_most_id - 1);
  f.text("name", compass.name, k_most_name_bytes, true);
  enum_field(f, "kind", compass.kind, CompassKind::hand_bearing);
  list_field(f, "log", compass.log, k_most_log_entries, [&](LogEntry& entry) { describe(f, entry); });
}

template <class Fields>
void describe(Fields& f, Boat& boat) {
  f.text("name", boat.name, k_most_name_bytes, true);
  f.whole("next id", boat.next_id, 1, k_most_id);
  list_field(f, "compasses", boat.compasses, k_most_compasses, [&](Compass& compass) { describe(f, compass); });
}

template <class Fields>
void describe(Fields& f, KeptCard& card) {
  f.text("boat", card.boat, k_most_name_bytes, true);
  f.text("compass", card.compass, k_most_name_bytes, true);
  f.date("date", card.date);
  enum_field(f, "source", card.source, CardSource::nought);
  list_field(f, "card", card.points, k_most_rows, [&](KeptCardPoint& point) {
    f.direction("heading", point.heading_deg, 1);
    f.number("deviation", point.deviation_deg, k_parts_per_card_degree, -k_most_card_deviation_deg, k_most_card_deviation_deg);
    f.number("uncertainty", point.sd_deg, k_parts_per_card_degree, 0, k_most_card_deviation_deg);
  });
  describe_field(f, card.field);
  f.flag(card.in_links);
}

template <class Value>
FieldWriter written(Value value) {
  FieldWriter f;
  describe(f, value);
  return f;
}

/// The heading that two neighbours share; entries are in order. Empty when they ascend.
template <class Entries, class HeadingOf>
std::optional<double> heading_twice(const Entries& entries, HeadingOf heading_of) {
  for (std::size_t i = 1; i < entries.size(); ++i)
    if (heading_of(entries[i]) <= heading_of(entries[i - 1])) return heading_of(entries[i]);
  return std::nullopt;
}

std::optional<double> heading_twice(const LogEntry& entry) {
  const auto* card = std::get_if<TypedCard>(&entry.what);
  return card ? heading_twice(card->entries, [](const DeviationEntry& each) { return each.heading.deg(); }) : std::nullopt;
}

std::optional<double> heading_twice(const KeptCard& card) {
  return heading_twice(card.points, [](const KeptCardPoint& each) { return each.heading_deg; });
}

bool are_ids_sound(const Boat& boat) {
  std::vector<std::uint32_t> ids;
  for (const Compass& compass : boat.compasses) {
    ids.push_back(compass.id.value);
    for (const LogEntry& entry : compass.log) ids.push_back(entry.id.value);
  }
  std::sort(ids.begin(), ids.end());
  return std::adjacent_find(ids.begin(), ids.end()) == ids.end() && (ids.empty() || ids.back() < boat.next_id);
}

bool are_cards_sound(const Boat& boat) {
  for (const Compass& compass : boat.compasses)
    for (const LogEntry& entry : compass.log)
      if (heading_twice(entry)) return false;
  return true;
}

Problem unsound(const char* what) { return {.fault = Fault::text_section, .texts = {what}}; }

template <class Value>
Result<Value> checked(Value value) {
  FieldChecker f;
  describe(f, value);
  if (f.problem()) return *f.problem();
  return value;
}

template <class Value>
Result<Value> checked_with_headings(Value value) {
  Result<Value> kept = checked(std::move(value));
  if (!kept) return kept;
  if (const std::optional<double> twice = heading_twice(*kept)) return Problem{.fault = Fault::card_heading_twice, .numbers = {*twice}};
  return kept;
}

}  // namespace

std::vector<std::uint8_t> bytes_of(const Boat& boat) { return written(boat).bytes(); }
std::vector<std::uint8_t> bytes_of(const KeptCard& card) { return written(card).bytes(); }

std::vector<std::vector<std::uint8_t>> pieces_of(const Boat& boat) {
  const FieldWriter f = written(boat);
  std::vector<std::size_t> cuts = f.cuts();
  cuts.push_back(f.bytes().size());
  std::vector<std::vector<std::uint8_t>> pieces;
  std::size_t from = 0;
  for (const std::size_t to : cuts) {
    pieces.emplace_back(f.bytes().begin() + static_cast<std::ptrdiff_t>(from), f.bytes().begin() + static_cast<std::ptrdiff_t>(to));
    from = to;
  }
  return pieces;
}

Result<Boat> boat_from(std::span<const std::uint8_t> bytes) {
  Boat boat;
  FieldReader f(bytes);
  describe(f, boat);
  if (!f.at_end() || !are_ids_sound(boat) || !are_cards_sound(boat)) return unsound("boat");
  return boat;
}

Result<KeptCard> kept_card_from(std::span<const std::uint8_t> bytes) {
  KeptCard card;
  FieldReader f(bytes);
  describe(f, card);
  if (!f.at_end() || card.points.empty() || heading_twice(card)) return unsound("compass");
  return card;
}

Result<Boat> as_kept(Boat boat) { return checked(std::move(boat)); }
Result<LogEntry> as_kept(LogEntry entry) { return checked_with_headings(std::move(entry)); }
Result<KeptCard> as_kept(KeptCard card) { return checked_with_headings(std::move(card)); }

}  // namespace fogsheet
