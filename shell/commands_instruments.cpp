#include "shell/commands_instruments.h"

#include <cmath>

#include "core/base/quantity_text.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/document/actions.h"
#include "shell/arguments.h"
#include "shell/direction.h"
#include "shell/dividers.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_rough_readings = 60;

std::optional<Fault> dividers_off(const Session& session) { return session.desk.dividers ? std::nullopt : std::optional(Fault::no_dividers); }

std::optional<Fault> no_last_step(const Session& session) {
  if (!session.desk.dividers) return Fault::no_dividers;
  return steps_of(session, *session.desk.dividers).empty() ? std::optional(Fault::no_leg_to_step) : std::nullopt;
}

Value answer(const Result<Done>& result) { return result.ok() ? done() : refused(result.problem()); }

/// A point of the dividers: on the mark named, or at a position.
Result<FirstEnd> point_argument(const Session& session, const Value& arguments, const std::string& name) {
  if (!arguments.has(name + "_lat_deg")) {
    const Result<MarkId> mark = mark_argument(session.document(), arguments, name.c_str());
    if (!mark) return mark.problem();
    return FirstEnd{place_of(session, *mark), *mark};
  }
  const Result<double> lat = number_argument(arguments, (name + "_lat_deg").c_str()), lon = number_argument(arguments, (name + "_lon_deg").c_str());
  for (const Result<double>* each : {&lat, &lon})
    if (!*each) return each->problem();
  const Result<GridPosition> at = checked_position(*lat, *lon);
  if (!at) return at.problem();
  return FirstEnd{session.facts().projection->to_sheet({*lat, *lon}), std::nullopt};
}

void show_dividers(Session& session) {
  session.desk.tool = ToolId::dividers;
  session.slip = SlipId::dividers;
  session.message = {};
}

/// Sets the edge to what stands in the slip, or says in place why that can't be.
void apply_typed_direction(Session& session) {
  DirectionForm& form = session.direction_form;
  form.error.clear();
  if (form.text.empty()) return;
  const Result<TypedDirection> typed = parse_direction(form.text);
  if (typed.ok() && typed->reference) form.reference = *typed->reference;
  const Result<Done> set = typed.ok() ? set_direction(session, typed->deg, form.reference) : Result<Done>(typed.problem());
  if (!set.ok()) form.error = words::sentence(set.problem());
}

Value run_begin_direction(Session& session, const Value&) {
  session.direction_form.open = !session.direction_form.open && !session.desk.direction;
  session.desk.direction.reset();
  session.desk.tool = ToolId::straight_edge;
  session.slip = SlipId::straight_edge;
  return done();
}

Value run_type_direction(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  session.direction_form.text = *text;
  session.direction_form.open = true;
  apply_typed_direction(session);
  return done();
}

Value run_choose_direction_ring(Session& session, const Value& arguments) {
  const Result<Reference> reference = reference_argument(arguments, "reference");
  if (!reference) return refused(reference.problem());
  DirectionForm& form = session.direction_form;
  form.reference = *reference;
  // A letter that was typed gives way to the ring chosen after it.
  const Result<TypedDirection> typed = parse_direction(form.text);
  if (typed.ok() && typed->reference) form.text = direction_figures(typed->deg, session.settings.rounding);
  apply_typed_direction(session);
  return done();
}

Value run_type_line_length(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  DirectionForm& form = session.direction_form;
  form.length = *text;
  form.length_error.clear();
  if (text->empty()) {
    if (session.desk.direction) session.desk.direction->line_mm.reset();
    return done();
  }
  const Result<Length> length = parse_length(*text);
  const Result<Done> set = length.ok() ? set_line_length(session, length->nm()) : Result<Done>(length.problem());
  if (!set.ok()) form.length_error = words::sentence(set.problem());
  return done();
}

Value run_draw_line(Session& session, const Value& arguments) {
  if (arguments.has("distance_nm")) {
    const Result<double> distance_nm = number_argument(arguments, "distance_nm");
    if (!distance_nm) return refused(distance_nm.problem());
    const Result<Done> set = set_line_length(session, *distance_nm);
    if (!set) return refused(set.problem());
  }
  const Result<LegId> made = draw_line(session);
  if (!made) return refused(made.problem());
  select_leg(session, *made);
  return done_with(made->value);
}

Value run_write_on_leg(Session& session, const Value& arguments) {
  const std::optional<LegUnderEdge> under = leg_under_edge(session);
  Result<LegId> leg = Fault::edge_on_no_leg;
  if (arguments.has("leg")) leg = leg_argument(session.document(), arguments, "leg");
  else if (under) leg = under->leg;
  if (!leg) return refused(leg.problem());
  Reference ring = session.desk.write_ring;
  if (arguments.has("reference")) {
    const Result<Reference> reference = reference_argument(arguments, "reference");
    if (!reference) return refused(reference.problem());
    ring = *reference;
  }
  if (!arguments.has("bearing_deg")) return answer(write_reading(session, *leg, ring));
  const Result<double> bearing_deg = number_argument(arguments, "bearing_deg");
  if (!bearing_deg) return refused(bearing_deg.problem());
  if (ring == Reference::compass) return refused({.fault = Fault::reference_not_usable, .texts = {"compass"}});
  const Document before = session.document();
  const Result<Done> written = write_on_leg(session.history(), *leg, *bearing_deg, ring);
  if (written.ok()) session.settle_desk(before);
  return answer(written);
}

Value run_rub_out_reading(Session& session, const Value& arguments) {
  const Result<LegId> leg = leg_argument(session.document(), arguments, "leg");
  if (!leg) return refused(leg.problem());
  const Document before = session.document();
  const Result<Done> rubbed = rub_out_reading(session.history(), *leg);
  if (rubbed.ok()) session.settle_desk(before);
  return answer(rubbed);
}

Value run_choose_write_ring(Session& session, const Value& arguments) {
  const Result<Reference> reference = reference_argument(arguments, "reference");
  if (!reference) return refused(reference.problem());
  if (*reference == Reference::compass) return refused({.fault = Fault::reference_not_usable, .texts = {"compass"}});
  session.desk.write_ring = *reference;
  return done();
}

Value run_open_dividers(Session& session, const Value& arguments) {
  const Result<FirstEnd> from = point_argument(session, arguments, "from"), to = point_argument(session, arguments, "to");
  for (const Result<FirstEnd>* each : {&from, &to})
    if (!*each) return refused(each->problem());
  const Result<Done> opened = open_dividers(session, *from, *to);
  if (opened.ok()) show_dividers(session);
  return answer(opened);
}

Value run_set_dividers(Session& session, const Value& arguments) {
  const Result<double> distance_nm = number_argument(arguments, "distance_nm");
  if (!distance_nm) return refused(distance_nm.problem());
  const Result<Done> set = set_dividers(session, *distance_nm);
  if (set.ok()) show_dividers(session);
  return answer(set);
}

Value run_set_dividers_typed(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  DividersForm& form = session.dividers_form;
  form.distance = *text;
  form.distance_error.clear();
  if (text->empty()) return done();
  const Result<Length> length = parse_length(*text);
  const Result<Done> set = length.ok() ? set_dividers(session, length->nm()) : Result<Done>(length.problem());
  if (!set.ok()) form.distance_error = words::sentence(set.problem());
  return done();
}

Value run_walk_dividers(Session& session, const Value&) {
  walk_dividers(session);
  return done();
}

Result<LegId> leg_wanted(const Session& session, const Value& arguments) {
  if (arguments.has("leg")) return leg_argument(session.document(), arguments, "leg");
  const std::vector<LegId> legs = legs_to_step(session);
  if (legs.empty()) return Problem{.fault = Fault::no_leg_to_step};
  return session.desk.dividers->stepped ? session.desk.dividers->stepped->leg : legs.front();
}

Value run_step_off(Session& session, const Value& arguments) {
  const Result<LegId> leg = leg_wanted(session, arguments);
  if (!leg) return refused(leg.problem());
  std::optional<int> steps;
  if (arguments.has("steps")) {
    const Result<double> count = number_argument(arguments, "steps");
    if (!count) return refused(count.problem());
    constexpr double k_countable = 1e6;
    steps = std::abs(*count) < k_countable && *count == std::round(*count) ? static_cast<int>(*count) : 0;
  }
  session.dividers_form.steps.clear();
  session.dividers_form.steps_error.clear();
  return answer(step_off(session, *leg, steps));
}

Value run_step_off_typed(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  DividersForm& form = session.dividers_form;
  form.steps = *text;
  form.steps_error.clear();
  const Result<LegId> leg = leg_wanted(session, Value::object());
  if (!leg) return refused(leg.problem());
  std::optional<int> steps;
  if (!text->empty()) {
    constexpr double k_most_steps = 1000;
    const Result<double> count = parse_plain_number("steps", *text, 1, k_most_steps);
    if (!count) {
      form.steps_error = words::sentence(count.problem());
      return done();
    }
    steps = static_cast<int>(std::lround(*count));
  }
  const Result<Done> stepped = step_off(session, *leg, steps);
  if (!stepped.ok()) form.steps_error = words::sentence(stepped.problem());
  return done();
}

Value run_mark_last_step(Session& session, const Value&) {
  const Position at = session.facts().projection->to_position(steps_of(session, *session.desk.dividers).back());
  const Document before = session.document();
  const Result<MarkId> made = add_mark(session.history(), {.name = words::unused_name(before, MarkKind::turn), .lat_deg = at.lat_deg, .lon_deg = at.lon_deg, .kind = MarkKind::turn});
  if (!made) return refused(made.problem());
  session.settle_desk(before);
  return done_with(made->value);
}

Value run_lift_dividers(Session& session, const Value&) {
  lift_dividers(session);
  session.dividers_form = {};
  return done();
}

Value run_rough_reading(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  RoughMethod& rough = session.desk.rough;
  rough.typed = *text;
  rough.typed_error.clear();
  if (text->empty()) return done();
  const Result<TypedDirection> read = parse_direction(*text);
  if (!read) {
    rough.typed_error = words::sentence(read.problem());
  } else if (rough.readings_deg.size() >= k_most_rough_readings) {
    rough.typed_error = words::sentence({.fault = Fault::table_full, .texts = {"readings"}, .numbers = {k_most_rough_readings}});
  } else if (read->reference == Reference::compass) {
    rough.typed_error = words::sentence({.fault = Fault::reference_not_usable, .texts = {"compass"}});
  } else if (read->reference && *read->reference != rough.ring && !rough.readings_deg.empty()) {
    rough.typed_error = words::other_ring(rough.ring);
  } else {
    if (read->reference) rough.ring = *read->reference;
    rough.readings_deg.push_back(read->deg);
    rough.typed.clear();
  }
  return done();
}

Value run_remove_rough_reading(Session& session, const Value& arguments) {
  const Result<double> index = number_argument(arguments, "index");
  if (!index) return refused(index.problem());
  std::vector<double>& readings = session.desk.rough.readings_deg;
  if (!(*index >= 0 && *index < static_cast<double>(readings.size())))
    return refused({.fault = Fault::number_out_of_range, .texts = {"index"}, .numbers = {*index, 0, static_cast<double>(readings.size()) - 1}});
  readings.erase(readings.begin() + static_cast<std::ptrdiff_t>(*index));
  return done();
}

Value run_set_rough_ring(Session& session, const Value& arguments) {
  const Result<std::string> ring = text_argument(arguments, "ring");
  if (!ring) return refused(ring.problem());
  if (*ring != "true" && *ring != "magnetic") return refused({.fault = Fault::entry_unreadable, .texts = {"ring", *ring}});
  session.desk.rough.ring = *ring == "true" ? Reference::true_north : Reference::magnetic;
  session.desk.rough.typed_error.clear();
  return done();
}

Value run_set_rough_run(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  RoughMethod& rough = session.desk.rough;
  rough.run = *text;
  const Result<Length> length = parse_length(*text);
  rough.run_error = text->empty() || length.ok() ? "" : words::sentence(length.problem());
  return done();
}

Value run_clear_rough(Session& session, const Value&) {
  session.desk.rough = {.ring = session.desk.rough.ring};
  return done();
}

}  // namespace

std::vector<Command> instrument_commands() {
  return {
      {"begin-direction", "Set a direction", "", {}, nullptr, run_begin_direction},
      {"type-direction", "Set the edge to what was typed", "", {{"text", "as typed"}}, nullptr, run_type_direction},
      {"choose-direction-ring", "Choose the ring of the direction", "", {{"reference", "true, magnetic or compass"}}, nullptr, run_choose_direction_ring},
      {"type-line-length", "Set how far the line goes", "", {{"text", "as typed"}}, nullptr, run_type_line_length},
      {"draw-line", "Draw the line along the edge", "", {{"distance_nm", "nm", true}}, nullptr, run_draw_line},
      {"write-on-leg", "Write the reading on a leg", "", {{"leg", "id of a leg", true}, {"bearing_deg", "deg, [0, 360)", true}, {"reference", "true or magnetic", true}}, nullptr, run_write_on_leg},
      {"rub-out-reading", "Rub out the reading of a leg", "", {{"leg", "id of a leg"}}, nullptr, run_rub_out_reading},
      {"choose-write-ring", "Choose the ring whose reading is written", "", {{"reference", "true or magnetic"}}, nullptr, run_choose_write_ring},
      {"open-dividers", "Open the dividers between two places", "",
       {{"from", "id of a mark", true}, {"to", "id of a mark", true}, {"from_lat_deg", "deg", true}, {"from_lon_deg", "deg", true}, {"to_lat_deg", "deg", true}, {"to_lon_deg", "deg", true}},
       nullptr, run_open_dividers},
      {"set-dividers", "Set the dividers to a distance", "", {{"distance_nm", "nm"}}, nullptr, run_set_dividers},
      {"set-dividers-typed", "Set the dividers to what was typed", "", {{"text", "as typed"}}, nullptr, run_set_dividers_typed},
      {"walk-dividers", "Walk them to the latitude scale, or back", "", {}, dividers_off, run_walk_dividers},
      {"step-off", "Step off along a leg", "", {{"leg", "id of a leg", true}, {"steps", "count", true}}, dividers_off, run_step_off},
      {"step-off-typed", "Step off so many as typed", "", {{"text", "as typed"}}, dividers_off, run_step_off_typed},
      {"mark-last-step", "A mark at the last step", "", {}, no_last_step, run_mark_last_step},
      {"lift-dividers", "Take the dividers off", "", {}, dividers_off, run_lift_dividers},
      {"rough-reading", "Add a rough reading", "", {{"text", "as typed"}}, nullptr, run_rough_reading},
      {"remove-rough-reading", "Take a rough reading out", "", {{"index", "from 0"}}, nullptr, run_remove_rough_reading},
      {"set-rough-ring", "Choose the ring of the rough readings", "", {{"ring", "true or magnetic"}}, nullptr, run_set_rough_ring},
      {"set-rough-run", "Set the distance to run", "", {{"text", "as typed"}}, nullptr, run_set_rough_run},
      {"clear-rough", "Start the rough method again", "", {}, nullptr, run_clear_rough},
  };
}

}  // namespace fogsheet
