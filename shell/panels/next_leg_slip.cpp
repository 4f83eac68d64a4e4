// Under way: one course to hold, when to expect its end, what to look for on which side, and the three ways in which a leg ends.
// Nothing else: it is read in two seconds, wet, by a dim light.
#include <algorithm>

#include "core/base/number_text.h"
#include "core/figure/passage_bar.h"
#include "core/formats/svg.h"
#include "core/passage/danger_pass.h"
#include "core/passage/progress.h"
#include "shell/form_words.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

Date day_of(const Passage& passage) {
  const DeckEntry* left = turn_entry(passage, 0);
  return left ? left->date : passage.date;
}

double now_s(const Session& session) { return static_cast<double>(session.platform.now_ms()) / 1000; }

void add_bar(Panel& slip, const PassagePlan& plan, std::size_t at, double run_nm) {
  PassageBar bar;
  double sum_nm = 0;
  for (std::size_t i = 0; i < plan.legs.size(); ++i) {
    if (i == at) bar.at_nm = sum_nm + run_nm;
    sum_nm += plan.legs[i].rhumb.distance_nm;
    bar.turns_nm.push_back(sum_nm);
  }
  slip.items.push_back(FigureItem{.name = "passage-bar", .text = print_fixed(bar.at_nm, 1) + " of " + print_fixed(sum_nm, 1) + " nm", .svg = panel_svg(passage_bar(bar), {0, 0, k_passage_bar_width, k_passage_bar_height})});
}

void add_danger(Panel& slip, const Session& session, const Passage& passage, const PassagePlan& plan, std::size_t from_leg) {
  const DangerPass* first = nullptr;
  const std::vector<DangerPass> passes = danger_passes(session.document(), plan);
  for (const DangerPass& pass : passes)
    if (pass.in_doubt() && pass.leg >= from_leg && (!first || pass.leg < first->leg)) first = &pass;
  if (!first) return;
  slip.items.push_back(CautionItem{.text = "leg " + std::to_string(first->leg + 1) + ": " + session.document().marks.find(first->danger)->name + " lies within how far out you may be",
                                   .advice = words::danger_line(session.document(), passage, plan, *first, day_of(passage))});
}

FieldItem field(const Session& session, const std::string& name, const char* label, FieldItem like) {
  like.name = "deck-" + name;
  like.label = label;
  like.on_leave = {"type-deck", Value::object({{"field", name}})};
  return parts::field(session.desk.entries, "deck/" + name, std::move(like));
}

void add_ends(Panel& slip, const Session& session, const std::string& what) {
  slip.items.push_back(field(session, "time", "Turned at (empty: now)", {.completes_at = 4, .figures_only = true, .pad = Pad::quantity}));
  slip.items.push_back(field(session, "log", "Log", {.unit = "nm", .pad = Pad::quantity}));
  slip.items.push_back(LineItem{.text = "hold a button to go on " + what, .tone = LineTone::soft});
  const std::pair<const char*, const char*> ends[] = {{"seen", "Seen"}, {"not-seen", "Not seen"}, {"passed", "Early, late"}};
  for (const auto& [how, label] : ends)
    slip.items.push_back(ButtonItem{.name = std::string("end-leg/") + how, .label = label, .hold = true, .on_press = {"end-leg", Value::object({{"how", how}})}});
}

void add_last_seen(Panel& slip, const Session& session, const Passage& passage) {
  const auto last = std::find_if(passage.deck_log.rbegin(), passage.deck_log.rend(), [](const DeckEntry& entry) { return entry.kind != DeckEntryKind::reading; });
  if (last == passage.deck_log.rend() || last->kind != DeckEntryKind::seen) return;
  slip.items.push_back(LineItem{.text = words::deck_line(session.document(), passage, static_cast<std::size_t>(passage.deck_log.rend() - last) - 1), .value = print_clock_time(last->time), .tone = LineTone::soft});
  slip.items.push_back(ChoiceItem{.name = "seen-side", .label = "It was seen to", .options = {{"port", "port"}, {"starboard", "starboard"}}, .chosen = last->side ? (*last->side == Side::port ? "port" : "starboard") : "", .argument = "text", .on_choose = {"type-seen", Value::object({{"field", "side"}})}});
  slip.items.push_back(FieldItem{.name = "seen-distance", .label = "at a distance of", .text = last->distance_nm ? words::plain_number(*last->distance_nm) : "", .unit = "nm", .pad = Pad::quantity, .on_leave = {"type-seen", Value::object({{"field", "distance"}})}});
}

void add_course(Panel& slip, const Session& session, const Passage& passage, const PassagePlan& plan, std::size_t at) {
  const PlannedLeg& leg = plan.legs[at];
  if (leg.problem) {
    slip.items.push_back(words::leg_problem(leg));
    return;
  }
  const Document& document = session.document();
  const Date day = day_of(passage);
  const HeldCourse* course = &leg.courses.front();
  for (const HeldCourse& each : leg.courses)
    if (under_way(passage).departed && now_s(session) >= each.from_s) course = &each;
  const words::CourseToHold hold = words::course_to_hold(*course, session.settings.rounding);
  const std::string north = hold.under == "compass" ? "by the steering compass" : hold.under;
  LineItem line{.text = "course to hold, " + north + ": " + hold.text()};
  line.readings.push_back({hold.figures, "°", hold.under});
  slip.items.push_back(LineItem{.text = "course to hold, " + north, .tone = LineTone::soft});
  slip.items.push_back(std::move(line));
  if (!hold.why_not.empty()) slip.items.push_back(CautionItem{.text = "No one course by compass", .advice = hold.why_not});
  const std::string later = words::courses_by_hour(passage, leg, session.settings.rounding);
  if (!later.empty()) slip.items.push_back(LineItem{.text = later});

  const Mark* to = document.marks.find(leg.to);
  const PassageLeg& entered = passage.legs[leg.place];
  const Mark* left = entered.leave ? document.marks.find(entered.leave->mark) : nullptr;
  if (plan.has_times && leg.window) {
    slip.items.push_back(LineItem{.text = "expect " + (left ? left->name : to->name), .tone = LineTone::soft});
    LineItem expect{.text = "expect " + words::window(passage, leg, day)};
    expect.readings.push_back({words::window(passage, leg, day), "", ""});
    slip.items.push_back(std::move(expect));
    const Progress progress = progress_on(document, passage, leg, now_s(session));
    const std::string by = progress.log_read ? "by the log at " + print_clock_time(*progress.log_read) : "by the clock since " + words::clock(passage, leg.run.departure_s, day);
    if (under_way(passage).departed) slip.items.push_back(LineItem{.text = by + ": " + words::distance(leg.rhumb.distance_nm - progress.run_nm).text() + " to run of " + words::distance(leg.rhumb.distance_nm).text()});
  }
  const std::string leave = words::leave_mark(document, entered, true);
  if (!leave.empty()) slip.items.push_back(LineItem{.text = leave, .tone = LineTone::strong});
  if (!entered.look_for.empty()) slip.items.push_back(LineItem{.text = entered.look_for});
  if (leg.speed_kn > 0) slip.items.push_back(LineItem{.text = "you may be " + words::to_either_side(leg)});
}

}  // namespace

Panel next_leg_slip(const Session& session) {
  const Passage* passage = session.passage();
  if (!passage) return passage_slip(session);
  const PassagePlan& plan = session.plan_under_way();
  const UnderWay state = under_way(*passage);
  const bool is_over = state.departed && state.leg >= plan.legs.size();
  Panel slip{.name = "next-leg", .label = "Next leg"};
  const std::string now = print_clock_time(session.now_in(*passage).time);
  slip.items.push_back(HeadingItem{.text = is_over ? "All legs have ended" : "Leg " + std::to_string(state.leg + 1) + " of " + std::to_string(plan.legs.size()), .beside = "now " + now});
  slip.items.push_back(parts::close_button());
  const std::size_t at = std::min(state.leg, plan.legs.empty() ? 0 : plan.legs.size() - 1);
  if (!is_over && !plan.legs.empty()) {
    const PlannedLeg& leg = plan.legs[at];
    if (state.departed && !leg.problem && plan.has_times) add_bar(slip, plan, at, progress_on(session.document(), *passage, leg, now_s(session)).run_nm);
    add_course(slip, session, *passage, plan, at);
    add_danger(slip, session, *passage, plan, at);
    if (at + 1 < plan.legs.size() && !plan.legs[at + 1].problem)
      slip.items.push_back(LineItem{.text = "then " + words::course_to_hold(plan.legs[at + 1], session.settings.rounding).text(), .value = words::distance(plan.legs[at + 1].rhumb.distance_nm).text() + " to " + session.document().marks.find(plan.legs[at + 1].to)->name});
  }
  slip.items.push_back(LineItem{.text = words::under_way_cautions(), .tone = LineTone::soft});
  if (state.departed) add_last_seen(slip, session, *passage);
  if (!state.departed) {
    slip.items.push_back(field(session, "time", "Left at (empty: now)", {.completes_at = 4, .figures_only = true, .pad = Pad::quantity}));
    slip.items.push_back(field(session, "log", "Log", {.unit = "nm", .pad = Pad::quantity}));
    slip.items.push_back(LineItem{.text = "hold the button as you leave", .tone = LineTone::soft});
    slip.items.push_back(ButtonItem{.name = "depart", .label = "We leave", .look = ButtonLook::main, .hold = true, .on_press = {"depart"}});
  } else if (!is_over) {
    add_ends(slip, session, at + 1 < plan.legs.size() ? "to leg " + std::to_string(at + 2) : "to the end");
  }
  if (state.departed) slip.items.push_back(ButtonItem{.name = "back-a-leg", .label = state.leg == 0 ? "We have not left" : "Back to leg " + std::to_string(state.leg), .on_press = {"back-a-leg"}});
  slip.items.push_back(ButtonItem{.name = "deck-log", .label = "Deck log", .on_press = {"open-slip", Value::object({{"slip", "deck-log"}})}});
  slip.items.push_back(ButtonItem{.name = "lock-touch", .label = words::lock_touch(), .on_press = {"lock-touch"}});
  slip.items.push_back(ButtonItem{.name = "the-card", .label = "The card", .on_press = {"open-slip", Value::object({{"slip", "passage"}})}});
  return slip;
}

Panel deck_log_slip(const Session& session) {
  const Passage* passage = session.passage();
  if (!passage) return passage_slip(session);
  Panel slip{.name = "deck-log", .label = "Deck log"};
  slip.items.push_back(HeadingItem{.text = "Deck log", .beside = words::passage_title(session.document(), *passage)});
  slip.items.push_back(parts::close_button());
  TableItem table{.name = "deck-log", .caption = "Times are " + zone_name(passage->zone), .columns = {{"time", true}, {"log", true}, {"what"}}, .when_empty = "Nothing was written yet."};
  for (std::size_t line = 0; line < passage->deck_log.size(); ++line) {
    const DeckEntry& entry = passage->deck_log[line];
    table.rows.push_back({print_clock_time(entry.time), entry.log_nm ? print_fixed(*entry.log_nm, 1) : "", words::deck_line(session.document(), *passage, line)});
  }
  slip.items.push_back(std::move(table));
  slip.items.push_back(field(session, "time", "Time (empty: now)", {.completes_at = 4, .figures_only = true, .pad = Pad::quantity}));
  slip.items.push_back(field(session, "log", "Log", {.unit = "nm", .pad = Pad::quantity}));
  slip.items.push_back(field(session, "note", "What there was", {}));
  slip.items.push_back(ButtonItem{.name = "write-deck-log", .label = "Write it down", .look = ButtonLook::main, .on_press = {"write-deck-log"}});
  const auto last = std::find_if(passage->deck_log.rbegin(), passage->deck_log.rend(), [](const DeckEntry& entry) { return entry.kind == DeckEntryKind::reading; });
  if (last != passage->deck_log.rend()) slip.items.push_back(ButtonItem{.name = "strike-out-deck-line", .label = "Strike the last line out", .on_press = {"strike-out-deck-line", Value::object({{"line", static_cast<double>(passage->deck_log.rend() - last) - 1}})}});
  slip.items.push_back(ButtonItem{.name = "next-leg", .label = "Next leg", .on_press = {"open-slip", Value::object({{"slip", "next-leg"}})}});
  return slip;
}

}  // namespace fogsheet
