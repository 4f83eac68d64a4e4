// One leg of the passage: how its course comes about, what is left on which side, and what it has of its own.
#include <algorithm>
#include <cmath>

#include "core/figure/passage_plot.h"
#include "shell/panels/panels.h"
#include "shell/panels/passage_parts.h"
#include "shell/words.h"
#include "shell/words_of_passage.h"
#include "shell/words_of_triangle.h"

namespace fogsheet {
namespace {

/// How its triangle is laid off by hand, and how well that was done.
void add_triangle(Panel& slip, const Session& session, const PlannedLeg& leg) {
  const Rounding rounding = session.settings.rounding;
  const std::optional<StraightEdge>& edge = session.desk.edge;
  const std::vector<LaidTriangle> triangles = triangles_of(session.document(), leg, *session.facts().projection);
  if (triangles.empty()) return;
  slip.items.push_back(HeadingItem{.text = words::triangle_by_hand(), .level = 3});
  const LaidTriangle& first = triangles.front();
  for (std::string& step : words::laying_off(first, session.document().marks.find(leg.from)->name, rounding)) slip.items.push_back(LineItem{.text = std::move(step)});
  if (triangles.size() > 1) slip.items.push_back(LineItem{.text = words::triangles_hour_by_hour(), .tone = LineTone::soft});
  if (!edge || !edge->settled_on) return;
  // Of several, the one that the edge comes nearest to.
  const auto off_deg = [&](const LaidTriangle& each) { return std::abs(reduce_difference_deg(2 * (each.water_track.deg() - bearing(*edge).deg()))); };
  const LaidTriangle& nearest = *std::min_element(triangles.begin(), triangles.end(), [&](const LaidTriangle& a, const LaidTriangle& b) { return off_deg(a) < off_deg(b); });
  if (std::optional<std::string> beside = words::edge_beside_worked_out(nearest, bearing(*edge), rounding)) slip.items.push_back(LineItem{.text = std::move(*beside), .tone = LineTone::strong});
}

}  // namespace

Panel passage_leg_slip(const Session& session) {
  const Passage* passage = session.passage();
  if (!passage || session.desk.passage_leg >= passage->legs.size()) return passage_slip(session);
  const std::size_t place = session.desk.passage_leg;
  const Document& document = session.document();
  const PassagePlan& plan = session.plan();
  const PlannedLeg& leg = plan.legs[place];
  const PassageLeg& entered = passage->legs[place];
  const Rounding rounding = session.settings.rounding;
  const Mark* from = document.marks.find(leg.from);
  const Mark* to = document.marks.find(leg.to);
  Panel slip{.name = "passage-leg", .label = "Leg of the passage"};
  PassageFields fields(slip, session, *passage);
  const auto name = [&](const char* field) { return leg_field_name(place, field); };
  slip.items.push_back(HeadingItem{.text = from && to ? from->name + " to " + to->name : entered.name, .beside = "leg " + std::to_string(place + 1) + " of " + std::to_string(passage->legs.size())});
  slip.items.push_back(parts::close_button());
  if (leg.problem) {
    slip.items.push_back(words::leg_problem(leg));
  } else {
    const words::CourseToHold hold = words::course_to_hold(leg, rounding);
    LineItem line{.text = "hold " + hold.text()};
    line.readings.push_back({hold.figures, "°", hold.under});
    if (plan.has_times && leg.speed_kn > 0) line.readings.push_back({words::clock(*passage, leg.run.arrival_s), "", words::window(*passage, leg)});
    slip.items.push_back(std::move(line));
    const VariationInUse& variation = session.variation_of(*document.legs.find(entered.leg));
    for (const HeldCourse& course : leg.courses) {
      if (leg.courses.size() > 1) slip.items.push_back(LineItem{.text = "from " + words::clock(*passage, course.from_s), .value = words::course_to_hold(course, rounding).text(), .tone = LineTone::strong});
      slip.items.push_back(words::course_sum(leg, course, rounding, variation));
    }
    if (leg.speed_kn > 0) {
      slip.items.push_back(LineItem{.text = "distance", .value = words::distance(leg.rhumb.distance_nm).text()});
      slip.items.push_back(LineItem{.text = "speed through the water, over ground", .value = words::speed(leg.speed_kn) + ", " + words::speed(leg.run.speed_over_ground_kn) + " kn"});
      slip.items.push_back(LineItem{.text = "time", .value = words::minutes_between(leg.run.departure_s, leg.run.arrival_s)});
      slip.items.push_back(LineItem{.text = "how far out, 19 times in 20", .value = words::to_either_side(leg)});
    }
  }
  fields.mark(name("leave"), "Leave a mark");
  if (entered.leave) {
    fields.choice(name("side"), "to", {{"port", "port"}, {"starboard", "starboard"}});
    fields.field(name("distance"), "at a distance of", {.unit = "nm", .pad = Pad::quantity});
  }
  fields.field(name("look-for"), "What to look for");
  slip.items.push_back(HeadingItem{.text = "On this leg alone", .level = 3});
  fields.field(name("speed"), "Speed through the water", {.unit = "kn", .pad = Pad::quantity});
  fields.field(name("wind"), "Wind from", {.unit = "°T", .completes_at = 3, .figures_only = true, .pad = Pad::quantity});
  fields.field(name("leeway"), "Leeway", {.unit = "°", .pad = Pad::quantity});
  fields.choice(name("way"), "With the stream", {{"passage", "as the passage"}, {"one", "one heading"}, {"hourly", "hour by hour"}});
  fields.stream(leg_field_name(place, ""), entered.stream ? entered.stream->entry : StreamEntry::not_entered, true);
  if (!leg.problem && leg.stream != StreamEntry::not_entered) fields.choice(name("triangle"), "Its triangle on the sheet", {{"no", "not drawn"}, {"yes", "drawn"}});
  if (entered.triangle) add_triangle(slip, session, leg);
  const auto leg_argument = Value::object({{"leg", static_cast<double>(place)}});
  slip.items.push_back(ButtonItem{.name = "leave-leg-out", .label = "Leave it out of the passage", .on_press = {"leave-leg-out", leg_argument}});
  return slip;
}

}  // namespace fogsheet
