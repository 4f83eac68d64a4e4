#include "shell/words_of_things.h"

#include "core/document/facts.h"
#include "core/instruments/rose_reading.h"
#include "core/instruments/rough_method.h"
#include "core/positions/position_figures.h"
#include "shell/dividers.h"
#include "shell/form_words.h"
#include "shell/things.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet::words {
namespace {

std::string figures_of(const Session& session, SheetPoint at) { return position_figures(session.facts().projection->to_position(at), 2); }

/// On a mark, or at a place.
std::string on_or_at(const Session& session, const std::optional<MarkId>& on, SheetPoint at) {
  const Mark* mark = on ? session.document().marks.find(*on) : nullptr;
  return mark ? "on " + mark->name : "at " + figures_of(session, at);
}

std::string edge_part(const Session& session, EdgePart part) {
  const StraightEdge& edge = *session.desk.edge;
  if (part == EdgePart::end_a) return "Straight-edge, its start, " + on_or_at(session, edge.on_a, edge.a);
  if (part == EdgePart::end_b) return "Straight-edge, its end, " + on_or_at(session, edge.on_b, edge.b);
  if (edge.settled_on) return "Straight-edge, settled on the rose, " + edge_reads(session, edge);
  return "Straight-edge, " + on_or_at(session, edge.on_a, edge.a) + " to " + on_or_at(session, edge.on_b, edge.b) + (edge.locked ? ", its angle held" : ", not on the rose");
}

std::string dividers_part(const Session& session, DividersPart part) {
  const DividersPlace& lie = session.desk.dividers->lie;
  if (part == DividersPart::leg_a) return "Dividers, first leg, " + on_or_at(session, lie.on_a, lie.points.a);
  if (part == DividersPart::leg_b) return "Dividers, second leg, " + on_or_at(session, lie.on_b, lie.points.b);
  return "Dividers, hinge, " + distance(reading_of(session, *session.desk.dividers).distance_nm).text();
}

std::string leg_in_words(const Session& session, LegId id) {
  const Document& document = session.document();
  const LegFacts facts = session.facts_of(*document.legs.find(id));
  std::string text = leg_name(document, id) + ", " + spoken(facts.rhumb.course.deg(), session.settings.rounding, Reference::true_north);
  if (facts.has_magnetic) text += ", " + spoken(facts.magnetic.deg(), session.settings.rounding, Reference::magnetic);
  if (const ChainRow* compass = row_of(facts.chain, ChainTerm::compass_direction)) text += ", " + spoken(compass->shown_deg, session.settings.rounding, Reference::compass);
  text += ", " + distance(facts.rhumb.distance_nm).text();
  text.front() = 'L';
  return text;
}

}  // namespace

std::string edge_reads(const Session& session, const StraightEdge& edge) {
  const Rounding rounding = session.settings.rounding;
  const RoseReading reading = read_rose(edge, session.variation_of_edge().value, rounding, session.facts().card_or_none());
  std::string text = spoken(reading.on_true_ring.deg(), rounding, Reference::true_north);
  if (reading.on_magnetic_ring) text += ", " + spoken(reading.on_magnetic_ring->deg(), rounding, Reference::magnetic);
  if (const ChainRow* compass = row_of(reading.chain, ChainTerm::compass_direction)) text += ", " + spoken(compass->shown_deg, rounding, Reference::compass);
  return text + ", back " + spoken(reading.on_true_ring.reciprocal().deg(), rounding, Reference::true_north);
}

std::string instruments_read(const Session& session) {
  const Desk& desk = session.desk;
  if (session.slip == SlipId::rough_method) {
    const std::optional<RoughMean> mean = rough_mean(desk.rough.readings_deg, std::nullopt);
    return mean ? rough_mean_reads(mean->mean.mean_deg, session.settings.rounding, desk.rough.ring) : "";
  }
  if (desk.tool == ToolId::dividers) return desk.dividers ? distance(reading_of(session, *desk.dividers).distance_nm).text() : "";
  return desk.edge && desk.edge->settled_on ? edge_reads(session, *desk.edge) : "";
}

std::string thing(const Session& session, const Thing& thing) {
  const Document& document = session.document();
  if (const auto* part = std::get_if<EdgePart>(&thing)) return edge_part(session, *part);
  if (const auto* part = std::get_if<DividersPart>(&thing)) return dividers_part(session, *part);
  if (const auto* leg = std::get_if<LegId>(&thing)) return leg_in_words(session, *leg);
  const auto place = [&](GridPosition at) { return session.run && session.run->thing == thing ? figures_of(session, session.run->at) : position_figures(unquantise(at), 2); };
  if (const auto* id = std::get_if<MarkId>(&thing)) {
    const Mark& mark = *document.marks.find(*id);
    const std::string remark = mark_remark(mark);
    return mark.name + ", " + kind_label(mark.kind) + ", " + place(mark.at) + (remark.empty() ? "" : ", " + remark);
  }
  if (const auto* id = std::get_if<RoseId>(&thing)) {
    const VariationInUse& variation = session.variation_of(*id);
    return "Compass rose, variation " + variation_figures(variation) + ", " + place(document.roses.find(*id)->at);
  }
  if (const auto* id = std::get_if<NoteId>(&thing)) {
    const TextNote& note = *document.text_notes.find(*id);
    return "Note, " + quoted(note.text) + ", " + place(note.at);
  }
  return "Sheet, " + sheet_title(document) + ", 1 : " + grouped(document.sheet.scale);
}

std::string things_count(std::size_t count) { return "On the sheet: " + grouped(static_cast<int>(count)) + (count == 1 ? " thing" : " things"); }

std::string things_shown(std::size_t from, std::size_t to, std::size_t count) {
  if (from == 0 && to == count) return grouped(static_cast<int>(count)) + (count == 1 ? " thing" : " things");
  return grouped(static_cast<int>(from + 1)) + " to " + grouped(static_cast<int>(to)) + " of " + grouped(static_cast<int>(count));
}

std::string things_before(std::size_t count) { return "The " + std::to_string(count) + " before"; }
std::string things_after(std::size_t count) { return "The next " + std::to_string(count); }

std::string take_tool(const std::string& name) { return "Take in hand: " + name; }

}  // namespace fogsheet::words
