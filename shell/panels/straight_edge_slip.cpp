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

const Mark* mark_of(const Session& session, const std::optional<MarkId>& id) { return id ? session.document().marks.find(*id) : nullptr; }

/// The leg whose line the edge lies parallel to within a degree and which it was last laid on; none for a free edge.
std::string line_read(const Session& session) {
  const std::optional<EdgeMarks>& laid = session.desk.laid_on;
  if (!laid) return "";
  const Mark* from = session.document().marks.find(laid->from);
  const Mark* to = session.document().marks.find(laid->to);
  if (!from || !to) return "";
  int number = 0;
  for (const Leg& leg : session.document().legs) {
    ++number;
    if (leg.from == laid->from && leg.to == laid->to) return "leg " + std::to_string(number) + ", " + from->name + " to " + to->name;
  }
  return from->name + " to " + to->name;
}

void add_reading(const Session& session, const StraightEdge& edge, Panel& slip) {
  const Rounding rounding = session.settings.rounding;
  const VariationInUse& variation = session.facts().variation;
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
  if (const std::optional<EdgeMarks>& laid = session.desk.laid_on) {
    const Mark* from = mark_of(session, laid->from);
    const Mark* to = mark_of(session, laid->to);
    if (from && to) {
      const RhumbLeg exact = rhumb_inverse(unquantise(from->at), unquantise(to->at));
      slip.items.push_back(LineItem{.text = "worked out from the marks", .value = words::with_letter(exact.course.deg(), Rounding::tenths, Reference::true_north), .tone = LineTone::soft});
    }
  }
  ColumnSumItem sum = words::chain_sum(reading.chain, rounding, variation);
  slip.items.push_back(sum);
  parts::add_variation_caution(slip, variation);
  slip.items.push_back(LineItem{.text = "As drawn, in still water.", .tone = LineTone::soft});
}

}  // namespace

Panel straight_edge_slip(const Session& session, const Tool& tool) {
  const std::optional<StraightEdge>& edge = session.desk.edge;
  Panel slip{.name = "straight-edge", .label = "Straight-edge"};
  slip.items.push_back(HeadingItem{.text = "Straight-edge", .beside = edge ? line_read(session) : ""});
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
