#include "shell/read.h"

#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/document/written.h"
#include "core/formats/document_text.h"
#include "core/instruments/rose_reading.h"
#include "shell/dividers.h"
#include "shell/commands_drawer.h"
#include "shell/read_compass.h"
#include "shell/read_passage.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

std::string id_text(std::uint32_t id) { return std::to_string(id); }

Value sheet_value(const Document& document) {
  const Position middle = unquantise(document.sheet.middle);
  return Value::object({{"name", words::sheet_title(document)}, {"mid_lat_deg", middle.lat_deg}, {"mid_lon_deg", middle.lon_deg},
                        {"scale", document.sheet.scale}, {"paper", paper_name(document.sheet.paper)}, {"date", iso_date(document.sheet.date)}, {"datum", document.sheet.datum}, {"note", document.sheet.note}, {"signs", document.sheet.signs == SignSet::b ? "b" : "a"}});
}

const char* zone_name(FieldZone zone) {
  switch (zone) {
    case FieldZone::normal: return "normal";
    case FieldZone::caution: return "caution";
    case FieldZone::blackout: return "blackout";
  }
  return "normal";
}

Value variation_value(const Session& session) {
  const VariationInUse& variation = session.facts().variation;
  Value value = Value::object({{"source", variation.source == VariationSource::printed ? "printed" : "model"},
                               {"value_deg", variation.value ? Value(variation.value->deg) : Value()},
                               {"zone", zone_name(variation.zone)},
                               {"uncertainty_deg", variation.uncertainty_deg},
                               {"used_deg", variation.used ? Value(variation.used->deg) : Value()}});
  if (const std::optional<ChartNote>& note = session.document().chart_note)
    value.set("printed", Value::object({{"value_deg", note->printed.value_deg}, {"year", note->printed.year}, {"annual_change_min", note->printed.annual_change_min}}));
  return value;
}

Value marks_value(const Document& document) {
  Value list = Value::list();
  for (const Mark& mark : document.marks) {
    const Position at = unquantise(mark.at);
    Value each = Value::object({{"id", id_text(mark.id.value)}, {"name", mark.name}, {"kind", mark_kind_name(mark.kind)}, {"lat_deg", at.lat_deg}, {"lon_deg", at.lon_deg}});
    if (mark.kind == MarkKind::danger) each.set("radius_nm", mark.radius_nm);
    if (mark.height_m > 0) each.set("height_m", mark.height_m);
    if (!mark.note.empty()) each.set("note", mark.note);
    list.add(each);
  }
  return list;
}

Value leg_value(const Session& session, const Leg& leg) {
  const Rounding rounding = session.settings.rounding;
  const VariationInUse& variation = session.variation_of(leg);
  const LegFacts facts = session.facts_of(leg);
  Value shown = Value::object({{"true", words::with_letter(facts.rhumb.course.deg(), rounding, Reference::true_north)}});
  if (facts.has_magnetic) {
    // The shown magnetic course is the sum's, so that what stands beside it adds up.
    const ChainRow& last = *row_of(facts.chain, ChainTerm::magnetic_direction);
    shown.set("variation", print_correction(variation.used->deg, rounding));
    shown.set("magnetic", words::with_letter(last.shown_deg, rounding, Reference::magnetic));
    const ChainRow* compass = row_of(facts.chain, ChainTerm::compass_direction);
    shown.set("deviation", compass ? print_correction(row_of(facts.chain, ChainTerm::deviation)->shown_deg, rounding) : words::no_deviation(facts.chain, rounding));
    if (compass) shown.set("compass", words::with_letter(compass->shown_deg, rounding, Reference::compass));
    shown.set("back_magnetic", words::with_letter(last.shown_deg + 180, rounding, Reference::magnetic));
  }
  shown.set("back_true", words::with_letter(facts.rhumb.course.reciprocal().deg(), rounding, Reference::true_north));
  shown.set("distance", distance_figures(facts.rhumb.distance_nm) + " nm");
  Value value = Value::object({{"id", id_text(leg.id.value)},
                        {"from", id_text(leg.from.value)},
                        {"to", id_text(leg.to.value)},
                        {"course_true_deg", facts.rhumb.course.deg()},
                        {"course_magnetic_deg", facts.has_magnetic ? Value(facts.magnetic.deg()) : Value()},
                        {"course_compass_deg", facts.compass ? Value(facts.compass->deg()) : Value()},
                        {"variation_deg", variation.value ? Value(variation.value->deg) : Value()},
                        {"distance_nm", facts.rhumb.distance_nm},
                        {"shown", shown}});
  if (leg.written)
    value.set("written", Value::object({{"bearing_deg", leg.written->bearing_deg}, {"reference", words::reference_name(leg.written->reference)},
                                        {"revision", static_cast<double>(leg.written->revision)}, {"stale", is_stale(session.document(), leg)}}));
  return value;
}

Value roses_value(const Session& session) {
  Value list = Value::list();
  for (const Rose& rose : session.document().roses) {
    const Position at = unquantise(rose.at);
    const VariationInUse& variation = session.variation_of(rose.id);
    list.add(Value::object({{"id", id_text(rose.id.value)}, {"lat_deg", at.lat_deg}, {"lon_deg", at.lon_deg}, {"variation_deg", variation.value ? Value(variation.value->deg) : Value()}, {"radius_mm", rose.radius_mm}, {"own_place", rose.own_place}}));
  }
  return list;
}

Value notes_value(const Document& document) {
  Value list = Value::list();
  for (const TextNote& note : document.text_notes) {
    const Position at = unquantise(note.at);
    list.add(Value::object({{"id", id_text(note.id.value)}, {"text", note.text}, {"lat_deg", at.lat_deg}, {"lon_deg", at.lon_deg}}));
  }
  return list;
}

Value edge_value(const Session& session) {
  const std::optional<StraightEdge>& edge = session.desk.edge;
  if (!edge) return Value();
  const Rounding rounding = session.settings.rounding;
  const VariationInUse& variation = session.variation_of_edge();
  Value on = Value::list();
  for (const std::optional<MarkId>& mark : {edge->on_a, edge->on_b})
    if (mark) on.add(id_text(mark->value));
  const RoseReading reading = read_rose(*edge, variation.value, rounding, session.facts().card_or_none());
  const bool has_magnetic = variation.used.has_value();
  const MagneticDirection magnetic = has_magnetic ? to_magnetic(bearing(*edge), *variation.used) : MagneticDirection();
  Value shown = Value::object();
  if (edge->settled_on) {
    shown.set("true", words::with_letter(bearing(*edge).deg(), rounding, Reference::true_north));
    shown.set("back_true", words::with_letter(bearing(*edge).reciprocal().deg(), rounding, Reference::true_north));
    if (has_magnetic) {
      shown.set("variation", print_correction(variation.used->deg, rounding));
      const double magnetic_deg = row_of(reading.chain, ChainTerm::magnetic_direction)->shown_deg;
      shown.set("magnetic", words::with_letter(magnetic_deg, rounding, Reference::magnetic));
      shown.set("back_magnetic", words::with_letter(magnetic_deg + 180, rounding, Reference::magnetic));
      if (const ChainRow* compass = row_of(reading.chain, ChainTerm::compass_direction)) shown.set("compass", words::with_letter(compass->shown_deg, rounding, Reference::compass));
    }
  }
  return Value::object({{"on", on},
                        {"locked", edge->locked},
                        {"settled_on", edge->settled_on ? Value(id_text(edge->settled_on->value)) : Value()},
                        {"bearing_true_deg", bearing(*edge).deg()},
                        {"bearing_magnetic_deg", has_magnetic ? Value(magnetic.deg()) : Value()},
                        {"shown", shown}});
}

Value dividers_value(const Session& session) {
  const DividersOnSheet& dividers = *session.desk.dividers;
  const DividersReading reading = reading_of(session, dividers);
  const DividersPlace& place = dividers.work ? *dividers.work : dividers.lie;
  Value on = Value::list();
  for (const std::optional<MarkId>& mark : {place.on_a, place.on_b})
    if (mark) on.add(id_text(mark->value));
  Value value = Value::object({{"on", on},
                               {"on_scale", dividers.work.has_value()},
                               {"distance_nm", reading.distance_nm},
                               {"scale_minutes", reading.scale_minutes},
                               {"shown", Value::object({{"distance", words::distance(reading.distance_nm).text()}})}});
  if (dividers.stepped)
    value.set("stepped", Value::object({{"leg", id_text(dividers.stepped->leg.value)}, {"from", id_text(dividers.stepped->from.value)}, {"steps", dividers.stepped->steps}}));
  return value;
}

const char* keeping_name(Keeping keeping) {
  switch (keeping) {
    case Keeping::waiting: return "waiting";
    case Keeping::nothing: return "nothing";
    case Keeping::writing: return "writing";
    case Keeping::kept: return "kept";
    case Keeping::failed: return "failed";
    case Keeping::off: return "off";
  }
  return "off";
}

/// The sheets of the drawer as open-sheet and the others name them, the last changed first; then those taken out.
Value drawer_value(const Sheets& sheets) {
  Value list = Value::list();
  for (const std::vector<const SheetInDrawer*>& some : {sheets.shown(), sheets.removed()})
    for (const SheetInDrawer* sheet : some)
      list.add(Value::object({{"key", key_text(sheet->key)}, {"name", words::sheet_title(sheet->history.now())}, {"in_hand", sheet == &sheets.in_hand()}, {"removed", sheet->removed_ms != 0}}));
  return list;
}

/// Labels of the steps around the present one; which state of its past the sheet is in; and up to which it is kept.
Value history_value(const Session& session) {
  const Label* undo = undo_label(session);
  const Label* redo = redo_label(session);
  const History& history = session.history();
  const std::optional<std::size_t> kept = session.keeper.kept_state(session.sheets.in_hand().key);
  const auto number = [](std::size_t state) { return Value(static_cast<double>(state)); };
  return Value::object({{"undo_label", undo ? Value(words::label_of(*undo)) : Value()},
                        {"redo_label", redo ? Value(words::label_of(*redo)) : Value()},
                        {"step", number(history.state())},
                        {"first_step", number(history.first_state())},
                        {"last_step", number(history.last_state())},
                        {"kept", Value::object({{"state", keeping_name(session.keeper.keeping())}, {"step", kept ? number(*kept) : Value()}, {"follows", session.keeper.follows(session.sheets.in_hand().key)}})},
                        {"drawer", drawer_value(session.sheets)},
                        {"boats", boats_value(session)}});
}

}  // namespace

Value read_session(const Session& session) {
  const Document& document = session.document();
  Value legs = Value::list();
  for (const Leg& leg : document.legs) legs.add(leg_value(session, leg));
  Value value = Value::object({{"format", k_document_format},
                               {"sheet", sheet_value(document)},
                               {"variation", variation_value(session)},
                               {"marks", marks_value(document)},
                               {"legs", legs},
                               {"roses", roses_value(session)},
                               {"notes", notes_value(document)},
                               {"edge", edge_value(session)},
                               {"compass", compass_value(session)},
                               {"passage", passage_value(session)},
                               {"history", history_value(session)}});
  if (session.desk.dividers) value.set("dividers", dividers_value(session));  // none on: nothing that two sheets could differ in
  return value;
}

}  // namespace fogsheet
