// What the straight-edge reads: both rings large, the rings unrolled, the exact course beside it, and the sum.
#include "core/directions/direction_figures.h"
#include "core/figure/reading_strip.h"
#include "core/formats/svg.h"
#include "core/instruments/rose_reading.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"

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

void add_reading(const Session& session, const StraightEdge& edge, Panel& slip) {
  const Rounding rounding = session.settings.rounding;
  const VariationInUse& variation = session.variation_of_edge();
  const RoseReading reading = read_rose(edge, variation.value, rounding);
  const double true_deg = reading.on_true_ring.deg();
  LineItem line;
  line.readings.push_back({direction_figures(true_deg, rounding), "°T", "back " + words::with_letter(reading.on_true_ring.reciprocal().deg(), rounding, Reference::true_north)});
  line.text = words::spoken(true_deg, rounding, Reference::true_north);
  if (reading.on_magnetic_ring) {
    const double magnetic_deg = reading.on_magnetic_ring->deg();
    line.readings.push_back({direction_figures(magnetic_deg, rounding), "°M", "back " + words::with_letter(reading.on_magnetic_ring->reciprocal().deg(), rounding, Reference::magnetic)});
    line.text += ", " + words::spoken(magnetic_deg, rounding, Reference::magnetic);
  }
  line.text += ", back " + words::spoken(reading.on_true_ring.reciprocal().deg(), rounding, Reference::true_north);
  slip.items.push_back(line);
  slip.items.push_back(FigureItem{.name = "strip", .text = "Both rings unrolled about the reading.", .svg = panel_svg(reading_strip(true_deg, variation.used), {0, 0, k_strip_width, k_strip_height})});
  if (const std::optional<LaidOn> laid = laid_on(session)) {
    const RhumbLeg exact = rhumb_inverse(unquantise(laid->from->at), unquantise(laid->to->at));
    slip.items.push_back(LineItem{.text = "worked out from the marks", .value = words::with_letter(exact.course.deg(), Rounding::tenths, Reference::true_north), .tone = LineTone::soft});
  }
  slip.items.push_back(words::chain_sum(reading.chain, rounding, variation));
  parts::add_variation_caution(slip, variation);
  slip.items.push_back(LineItem{.text = "As drawn, in still water.", .tone = LineTone::soft});
}

}  // namespace

Panel straight_edge_slip(const Session& session, const Tool& tool) {
  const std::optional<StraightEdge>& edge = session.desk.edge;
  Panel slip{.name = "straight-edge", .label = "Straight-edge"};
  const std::optional<LaidOn> laid = laid_on(session);
  slip.items.push_back(HeadingItem{.text = "Straight-edge", .beside = laid ? name_of(session, *laid) : ""});
  slip.items.push_back(parts::close_button());
  if (edge && edge->settled_on) add_reading(session, *edge, slip);
  else slip.items.push_back(parts::status_line(tool.status(session)));
  if (edge) {
    if (edge->settled_on) slip.items.push_back(ButtonItem{.name = "turn-edge-round", .label = "Turn round", .on_press = {"turn-edge-round"}});
    slip.items.push_back(ButtonItem{.name = "lift-edge", .label = "Let go of the edge", .on_press = {"lift-edge"}});
  }
  return slip;
}

}  // namespace fogsheet
