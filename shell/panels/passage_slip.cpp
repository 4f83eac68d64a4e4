// The passage card on the screen: what to hold on each leg, towards what, when to expect it; how the course of the leg in hand
// comes about; what stands against it.
#include "core/passage/danger_pass.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/passage_entries.h"
#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

Press open_slip(const char* slip) { return {"open-slip", Value::object({{"slip", slip}})}; }

void add_no_passage(Panel& slip, const Session& session) {
  slip.items.push_back(HeadingItem{.text = "Passage card"});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(LineItem{.text = words::nothing_planned(), .tone = LineTone::soft});
  const bool can = !session.document().legs.empty();
  slip.items.push_back(ButtonItem{.name = "make-passage", .label = "A passage of these legs", .look = ButtonLook::main, .enabled = can,
                                  .reason = can ? "" : words::sentence({.fault = Fault::no_legs_for_passage}), .on_press = {"make-passage"}});
}

/// The first line of a cell is what is acted on; what belongs to it stands under it.
TableItem legs_table(const Session& session, const Passage& passage, const PassagePlan& plan) {
  const Document& document = session.document();
  TableItem table{.name = "passage-legs", .caption = "Press a course for its leg", .columns = {{"hold"}, {"towards, leaving"}, {"expect", true}}};
  for (const PlannedLeg& leg : plan.legs) {
    const PassageLeg& entered = passage.legs[leg.place];
    const Mark* to = document.marks.find(leg.to);
    const words::CourseToHold hold = words::course_to_hold(leg, session.settings.rounding);
    const bool runs = !leg.problem && leg.speed_kn > 0;
    const std::string more = leg.courses.size() > 1 ? ", then " + std::to_string(leg.courses.size() - 1) + " more" : "";
    std::string under = plan.homeward ? "" : words::leave_mark(document, entered, false);
    if (to) under += (under.empty() ? "" : "\n") + words::distance(leg.rhumb.distance_nm).text() + (runs ? " at " + words::speed(leg.run.speed_over_ground_kn) + " kn" : "");
    table.rows.push_back({leg.problem ? "–" : hold.figures + "°\n" + hold.under + more,
                          (to ? to->name : entered.name) + (under.empty() ? "" : "\n" + under),
                          runs && plan.has_times ? words::clock(passage, leg.run.arrival_s) + "\n" + words::window(passage, leg) : ""});
    table.row_presses.push_back({"open-passage-leg", Value::object({{"leg", static_cast<double>(leg.place)}})});
  }
  return table;
}

void add_cautions(Panel& slip, const Session& session, const Passage& passage, const PassagePlan& plan) {
  if (plan.problem) slip.items.push_back(CautionItem{.text = plan.homeward ? "The way home" : "Times", .advice = words::sentence(*plan.problem)});
  bool not_entered = false;
  for (const PlannedLeg& leg : plan.legs) {
    if (leg.problem && !(plan.problem && leg.problem->fault == plan.problem->fault)) slip.items.push_back(words::leg_problem(leg));
    if (!leg.problem && leg.run.gap) slip.items.push_back(words::gap_in_streams(passage, leg));
    not_entered = not_entered || leg.stream == StreamEntry::not_entered;
  }
  if (not_entered) slip.items.push_back(words::stream_not_entered());
  for (const DangerPass& pass : danger_passes(session.document(), plan))
    if (pass.in_doubt()) slip.items.push_back(words::danger_caution(session.document(), passage, plan, pass));
}

void add_doubt(Panel& slip, const Session& session, const PassagePlan& plan) {
  slip.items.push_back(HeadingItem{.text = "How far out you may be, 19 times in 20", .level = 3});
  for (const PlannedLeg& leg : plan.legs)
    if (!leg.problem && leg.speed_kn > 0) slip.items.push_back(LineItem{.text = session.document().marks.find(leg.to)->name, .value = words::to_either_side(leg)});
}

void add_alternatives(Panel& slip, const Session& session) {
  const Passages& passages = *session.document().passages;
  ChoiceItem choice{.name = "passage", .label = "Passage", .chosen = std::to_string(passages.in_hand.value), .argument = "id", .is_long = true, .on_choose = {"choose-passage"}};
  for (const Passage& each : passages.all) choice.options.push_back({std::to_string(each.id.value), words::passage_title(session.document(), each)});
  if (choice.options.size() > 1) slip.items.push_back(std::move(choice));
  slip.items.push_back(ButtonItem{.name = "duplicate-passage", .label = "Another way to do it", .on_press = {"duplicate-passage"}});
  slip.items.push_back(ButtonItem{.name = "strike-out-passage", .label = "Strike this passage out", .on_press = {"strike-out-passage"}});
}

}  // namespace

Panel passage_slip(const Session& session) {
  Panel slip{.name = "passage", .label = "Passage card"};
  const Passage* passage = session.passage();
  if (!passage) {
    add_no_passage(slip, session);
    return slip;
  }
  const bool home = session.desk.way_home && passage->home_time;
  const PassagePlan& plan = session.plan(home);
  const Rounding rounding = session.settings.rounding;
  slip.items.push_back(HeadingItem{.text = home ? "The way home" : words::passage_title(session.document(), *passage), .beside = words::passage_beside(*passage, plan)});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(legs_table(session, *passage, plan));
  slip.items.push_back(LineItem{.text = "in all", .value = words::distance(plan.distance_nm).text() + (plan.complete && plan.hours > 0 ? " · " + words::minutes_between(plan.legs.front().run.departure_s, plan.legs.back().run.arrival_s) : ""), .tone = LineTone::strong});
  add_cautions(slip, session, *passage, plan);
  const std::size_t in_hand = std::min(session.desk.passage_leg, plan.legs.empty() ? 0 : plan.legs.size() - 1);
  for (const PlannedLeg& leg : plan.legs) {
    if (leg.place != in_hand || leg.problem) continue;
    slip.items.push_back(HeadingItem{.text = "Leg " + std::to_string(leg.place + 1) + ": how " + words::course_to_hold(leg, rounding).text() + " comes about", .level = 3});
    slip.items.push_back(words::course_sum(leg, leg.courses.front(), rounding, session.variation_of(*session.document().legs.find(passage->legs[leg.place].leg))));
  }
  if (plan.hours > 0) add_doubt(slip, session, plan);
  add_alternatives(slip, session);
  slip.items.push_back(LineItem{.text = words::times_are_unrounded() + " " + words::doubts_taken(plan, session.document()), .tone = LineTone::soft});
  slip.items.push_back(LineItem{.text = words::small_card_leaves_out(), .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "passage-details", .label = "Speed, times, stream", .look = ButtonLook::main, .on_press = open_slip("passage-details")});
  slip.items.push_back(ButtonItem{.name = "next-leg", .label = "Under way", .on_press = open_slip("next-leg")});
  slip.items.push_back(ButtonItem{.name = "print-passage-card", .label = "Print the card", .on_press = {"print-passage-card"}});
  slip.items.push_back(ButtonItem{.name = "print-small-card", .label = "Print it small, A6", .on_press = {"print-passage-card", Value::object({{"size", "small"}})}});
  if (passage->home_time) slip.items.push_back(ButtonItem{.name = "way-home", .label = home ? "The way out" : "The way home", .on_press = {"way-home"}});
  return slip;
}

}  // namespace fogsheet
