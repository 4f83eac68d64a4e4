// What the straight-edge reads: both rings large, the rings unrolled, the exact course beside it, and the sum.
#include <algorithm>

#include "core/base/number_text.h"
#include "core/directions/direction_figures.h"
#include "core/figure/reading_strip.h"
#include "core/figure/thumb_wheel.h"
#include "core/formats/svg.h"
#include "core/instruments/rose_reading.h"
#include "shell/direction.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/form_words.h"
#include "shell/words.h"
#include "shell/words_of_things.h"

namespace fogsheet {
namespace {

struct LaidOn {
  const Mark* from;
  const Mark* to;
};

/// The marks that the edge's line came from; none for a line of its own.
std::optional<LaidOn> laid_on(const Session& session) {
  const std::optional<EdgeMarks>& laid = session.desk.laid_on;
  if (!laid) return std::nullopt;
  return LaidOn{session.document().marks.find(laid->from), session.document().marks.find(laid->to)};
}

/// "leg 2, Off Sarn to Off Gannet"; without the leg where there is none.
std::string name_of(const Session& session, const LaidOn& laid) {
  const std::string ends = laid.from->name + " to " + laid.to->name;
  int number = 0;
  for (const Leg& leg : session.document().legs) {
    ++number;
    if (leg.from == laid.from->id && leg.to == laid.to->id) return "leg " + std::to_string(number) + ", " + ends;
  }
  return ends;
}

ButtonItem begin_direction_button() { return {.name = "begin-direction", .label = "Set a direction", .on_press = {"begin-direction"}}; }

/// Turns the edge by tenths of a degree; under both rings unrolled where there is a reading, as one instrument.
/// @param used  the magnetic ring's; none: no ring
FigureItem turning_wheel(const Session& session, const StraightEdge& edge, bool with_strip, std::optional<Variation> used = {}) {
  Figure figure = with_strip ? reading_strip(bearing(edge).deg(), used) : Figure{};
  const double top = with_strip ? k_strip_height - k_wheel_words : 0;
  add_thumb_wheel(figure, top, session.nudged_deg);
  std::string text = words::turned_by(session.nudged_deg);
  if (edge.settled_on) text += ", " + words::spoken(bearing(edge).deg(), Rounding::tenths, Reference::true_north);
  return {.name = "turn-edge", .text = with_strip ? words::rings_turned_by_tenths() : words::turn_by_tenths(), .svg = panel_svg(figure, {0, 0, k_wheel_width, top + k_wheel_height}),
          .wheel = FigureItem::Wheel{.value = session.nudged_deg, .most = 180, .text = text, .step = 0.1, .pitch = k_wheel_tenth / k_wheel_width, .argument = "by_deg", .on_turn = {"nudge-edge"}}};
}

void add_reading(const Session& session, const StraightEdge& edge, Panel& slip) {
  const Rounding rounding = session.settings.rounding;
  const VariationInUse& variation = session.variation_of_edge();
  const RoseReading reading = read_rose(edge, variation.value, rounding, session.facts().card_or_none());
  const double true_deg = reading.on_true_ring.deg();
  LineItem line;
  line.readings.push_back({direction_figures(true_deg, rounding), "°T", "back " + words::with_letter(reading.on_true_ring.reciprocal().deg(), rounding, Reference::true_north)});
  line.text = words::edge_reads(session, edge);
  if (reading.on_magnetic_ring) {
    const double magnetic_deg = reading.on_magnetic_ring->deg();
    line.readings.push_back({direction_figures(magnetic_deg, rounding), "°M", "back " + words::with_letter(reading.on_magnetic_ring->reciprocal().deg(), rounding, Reference::magnetic)});
  }
  slip.items.push_back(line);
  if (const ChainRow* compass = row_of(reading.chain, ChainTerm::compass_direction))
    slip.items.push_back(LineItem{.text = "to steer by compass", .value = words::with_letter(compass->shown_deg, rounding, Reference::compass), .tone = LineTone::strong});
  slip.items.push_back(turning_wheel(session, edge, true, variation.used));
  slip.items.push_back(words::chain_sum(reading.chain, rounding, variation));
  if (const std::optional<LaidOn> laid = laid_on(session)) {
    const RhumbLeg exact = rhumb_inverse(unquantise(laid->from->at), unquantise(laid->to->at));
    slip.items.push_back(LineItem{.text = "worked out from the marks", .value = words::with_letter(exact.course.deg(), Rounding::tenths, Reference::true_north), .tone = LineTone::soft});
  }
  parts::add_variation_caution(slip, variation);
  if (const std::optional<LegUnderEdge> under = leg_under_edge(session)) {
    parts::add_written(slip, session, *session.document().legs.find(under->leg));
    if (reading.on_magnetic_ring) {
      ChoiceItem ring{.name = "write-ring", .label = words::to_write(), .chosen = words::reference_name(session.desk.write_ring), .argument = "reference", .on_choose = {"choose-write-ring"}};
      ring.options = {{"true", line.readings[0].figures + line.readings[0].unit}, {"magnetic", line.readings[1].figures + line.readings[1].unit}};
      slip.items.push_back(ring);
    }
  }
  slip.items.push_back(LineItem{.text = "As drawn, in still water.", .tone = LineTone::soft});
}

/// The sum from the ring it was set on, upwards; from the true ring down to the compass.
Chain chain_of_direction(const Session& session, const DirectionSet& direction, TrueDirection lies) {
  const Rounding rounding = session.settings.rounding;
  const std::optional<Variation>& variation = variation_of_direction(session).value;
  const DeviationCard* card = session.facts().card_or_none();
  if (direction.reference == Reference::compass && variation && card) return chain_from_compass(CompassDirection(direction.deg), {.variation = *variation, .card = card}, rounding);
  if (direction.reference == Reference::magnetic && variation) return chain_from_magnetic(MagneticDirection(direction.deg), *variation, rounding);
  return chain_from_true(lies, variation, rounding, card);
}

/// What was set: the rings under its hairline, and the sum upwards from the ring it was set on.
void add_set_direction(const Session& session, const Tool& tool, Panel& slip) {
  const DirectionForm& form = session.direction_form;
  const bool untyped = form.text.empty() && session.desk.direction;  // as it is after the page was loaded again
  const Reference reference = untyped ? session.desk.direction->reference : form.reference;
  const std::string text = untyped ? direction_figures(session.desk.direction->deg, session.settings.rounding) : form.text;
  slip.items.push_back(FieldItem{.name = "direction", .label = "Direction", .text = text, .unit = "°", .error = form.error, .completes_at = 3, .figures_only = true, .pad = Pad::direction, .letter = words::reference_letter(reference), .on_leave = {"type-direction"}});
  ChoiceItem ring{.name = "direction-ring", .label = "By the ring", .chosen = words::reference_name(reference), .argument = "reference", .on_choose = {"choose-direction-ring"}};
  ring.options = {{"true", "T"}, {"magnetic", "M"}, {"compass", "C"}};
  slip.items.push_back(ring);
  slip.items.push_back(parts::status_line(tool.status(session)));
  const std::optional<DirectionSet>& direction = session.desk.direction;
  if (!direction) return;
  const Rounding rounding = session.settings.rounding;
  const VariationInUse& variation = variation_of_direction(session);
  const TrueDirection lies = bearing(*session.desk.edge);
  slip.items.push_back(turning_wheel(session, *session.desk.edge, true, variation.used));
  slip.items.push_back(words::chain_sum(chain_of_direction(session, *direction, lies), rounding, variation));
  parts::add_variation_caution(slip, variation);
}

/// The line that would be drawn: how far it goes, and the button that draws it.
void add_line(const Session& session, Panel& slip) {
  const LineAlongEdge line = *line_along_edge(session);
  const Projection& projection = *session.facts().projection;
  const DirectionForm& form = session.direction_form;
  const double long_nm = rhumb_inverse(projection.to_position(line.start), projection.to_position(line.end)).distance_nm;
  slip.items.push_back(FieldItem{.name = "line-length", .label = "Length of the line", .text = form.length_error.empty() ? print_fixed(long_nm, 2) : form.length, .unit = "nm", .error = form.length_error, .pad = Pad::quantity, .on_leave = {"type-line-length"}});
  slip.items.push_back(ButtonItem{.name = "draw-line", .label = words::draw_line_from(session.document().marks.find(line.from)->name), .look = ButtonLook::main, .on_press = {"draw-line"}});
}

/// For who can't drag: the edge goes to the rose nearest to it.
void add_slide_button(const Session& session, const StraightEdge& edge, Panel& slip) {
  const std::vector<RoseInReach>& roses = session.facts().roses;
  if (roses.empty()) return;
  const SheetPoint middle = midpoint(edge.a, edge.b);
  const auto nearest = std::min_element(roses.begin(), roses.end(), [&](const RoseInReach& a, const RoseInReach& b) { return distance_mm(a.centre, middle) < distance_mm(b.centre, middle); });
  slip.items.push_back(ButtonItem{.name = "slide-to-rose", .label = words::slide_to_rose(), .on_press = {"slide-edge-to", Value::object({{"rose", std::to_string(nearest->id.value)}})}});
}

std::string heading_beside(const Session& session) {
  if (const std::optional<DirectionSet>& direction = session.desk.direction) {
    const Mark* through = direction->through ? session.document().marks.find(*direction->through) : nullptr;
    return words::set_to_direction(through ? through->name : "");
  }
  const std::optional<LaidOn> laid = laid_on(session);
  return laid ? name_of(session, *laid) : "";
}

}  // namespace

Panel straight_edge_slip(const Session& session, const Tool& tool) {
  const std::optional<StraightEdge>& edge = session.desk.edge;
  const bool setting = session.direction_form.open || session.desk.direction;
  Panel slip{.name = "straight-edge", .label = "Straight-edge"};
  slip.items.push_back(HeadingItem{.text = "Straight-edge", .beside = heading_beside(session)});
  slip.items.push_back(parts::close_button());
  if (setting) add_set_direction(session, tool, slip);
  else if (edge && edge->settled_on) add_reading(session, *edge, slip);
  if (!setting && !(edge && edge->settled_on)) slip.items.push_back(parts::status_line(tool.status(session)));
  if (edge && !setting && !edge->settled_on) slip.items.push_back(turning_wheel(session, *edge, false));
  if (edge && !setting && !edge->settled_on) add_slide_button(session, *edge, slip);
  const bool has_line = setting && line_along_edge(session);
  if (has_line) add_line(session, slip);
  else if (setting) slip.items.push_back(ButtonItem{.name = "read-edge", .label = "Read a line instead", .on_press = {"begin-direction"}});
  else if (!edge || !edge->settled_on) slip.items.push_back(begin_direction_button());
  const std::optional<LegUnderEdge> under = leg_under_edge(session);
  if (!setting && under && edge->settled_on)
    slip.items.push_back(ButtonItem{.name = "write-on-leg", .label = words::write_it_on(words::leg_number(session.document(), under->leg)), .look = ButtonLook::main,
                                    .on_press = {"write-on-leg", Value::object({{"leg", std::to_string(under->leg.value)}})}});
  if (!setting && edge && edge->settled_on) slip.items.push_back(begin_direction_button());
  if (edge) {
    if (edge->settled_on || session.desk.direction) slip.items.push_back(ButtonItem{.name = "turn-edge-round", .label = "Turn round", .on_press = {"turn-edge-round"}});
    slip.items.push_back(ButtonItem{.name = "lift-edge", .label = edge->settled_on || setting ? "Let go" : "Let go of the edge", .on_press = {"lift-edge"}});
  }
  return slip;
}

}  // namespace fogsheet
