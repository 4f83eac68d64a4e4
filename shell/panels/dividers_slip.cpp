// What the dividers read, and what can be done with their opening.
#include "core/base/number_text.h"
#include "core/directions/direction_figures.h"
#include "core/earth/rhumb.h"
#include "shell/dividers.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

const std::string& name_of(const Session& session, MarkId mark) { return session.document().marks.find(mark)->name; }

std::string between(const Session& session, const DividersOnSheet& dividers) {
  const DividersPlace& place = dividers.work ? *dividers.work : dividers.lie;
  return place.on_a && place.on_b ? name_of(session, *place.on_a) + " to " + name_of(session, *place.on_b) : "";
}

void add_reading(const Session& session, const DividersOnSheet& dividers, Panel& slip) {
  const DividersReading reading = reading_of(session, dividers);
  const words::DistanceWords distance = words::distance(reading.distance_nm);
  LineItem line{.text = distance.text()};
  line.readings.push_back({distance.figures, "\u00A0" + distance.unit, print_fixed(reading.scale_minutes, 2) + "′ of latitude"});
  slip.items.push_back(line);
  slip.items.push_back(LineItem{.text = words::how_dividers_read(dividers.work.has_value()), .tone = LineTone::soft});
}

/// What is left of a stepped leg, read where it lies.
double rest_nm(const Session& session, const SteppedLeg& stepped) {
  const SheetPoint end = place_of(session, stepped.towards);
  const Dividers rest = opened_to({end, place_of(session, stepped.from)}, stepped.rest_mm);
  return read_dividers(rest, *session.facts().projection).distance_nm;
}

void add_steps(const Session& session, const DividersOnSheet& dividers, Panel& slip) {
  const Document& document = session.document();
  if (dividers.stepped) {
    const SteppedLeg& stepped = *dividers.stepped;
    const double step_nm = reading_of(session, dividers).distance_nm;
    slip.items.push_back(HeadingItem{.text = words::leg_name(document, stepped.leg), .beside = "from " + name_of(session, stepped.from), .level = 3});
    slip.items.push_back(LineItem{.text = words::steps(stepped.steps, step_nm), .tone = LineTone::strong});
    if (!stepped.counted) slip.items.push_back(LineItem{.text = "and over", .value = words::distance(rest_nm(session, stepped)).text()});
    const RhumbLeg exact = rhumb_inverse(place_of(document, stepped.from), place_of(document, stepped.towards));
    slip.items.push_back(LineItem{.text = "worked out from the marks", .value = print_fixed(exact.distance_nm, 2) + " nm", .tone = LineTone::soft});
    slip.items.push_back(FieldItem{.name = "steps", .label = "Steps; empty: as many as it holds", .text = session.dividers_form.steps, .error = session.dividers_form.steps_error, .figures_only = true, .pad = Pad::quantity, .on_leave = {"step-off-typed"}});
    if (!steps_of(session, dividers).empty()) slip.items.push_back(ButtonItem{.name = "mark-last-step", .label = "A mark at the last step", .on_press = {"mark-last-step"}});
  }
  for (const LegId leg : legs_to_step(session)) {
    if (dividers.stepped && dividers.stepped->leg == leg) continue;
    slip.items.push_back(ButtonItem{.name = "step-off/" + std::to_string(leg.value), .label = "Step along " + words::leg_number(document, leg), .on_press = {"step-off", Value::object({{"leg", std::to_string(leg.value)}})}});
  }
}

}  // namespace

Panel dividers_slip(const Session& session, const Tool& tool) {
  const std::optional<DividersOnSheet>& dividers = session.desk.dividers;
  Panel slip{.name = "dividers", .label = "Dividers"};
  slip.items.push_back(HeadingItem{.text = "Dividers", .beside = dividers ? between(session, *dividers) : ""});
  slip.items.push_back(parts::close_button());
  if (dividers) add_reading(session, *dividers, slip);
  if (!dividers || session.desk.first_point) slip.items.push_back(parts::status_line(tool.status(session)));
  if (dividers) add_steps(session, *dividers, slip);
  slip.items.push_back(FieldItem{.name = "distance", .label = "Set them to a distance", .text = session.dividers_form.distance, .unit = "nm", .error = session.dividers_form.distance_error, .pad = Pad::quantity, .on_leave = {"set-dividers-typed"}});
  if (dividers) {
    slip.items.push_back(ButtonItem{.name = "walk-dividers", .label = dividers->work ? "Back to the work" : "To the latitude scale", .on_press = {"walk-dividers"}});
    slip.items.push_back(ButtonItem{.name = "lift-dividers", .label = "Take them off", .on_press = {"lift-dividers"}});
  }
  return slip;
}

}  // namespace fogsheet
