#include "shell/commands_desk.h"

#include <cmath>

#include "core/directions/direction_figures.h"
#include "core/document/actions.h"
#include "shell/arguments.h"
#include "shell/commands_files.h"
#include "shell/direction.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/rose_tool.h"
#include "shell/tools/straight_edge_tool.h"
#include "shell/tools/target.h"
#include "shell/tools/tool.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

std::optional<Fault> edge_not_on(const Session& session) { return session.desk.edge ? std::nullopt : std::optional(Fault::no_edge); }

void show_edge(Session& session, StraightEdge edge) {
  session.set_edge(std::move(edge));
  session.desk.tool = ToolId::straight_edge;
  session.slip = SlipId::straight_edge;
  session.message = {};
}

Value run_lay_edge(Session& session, const Value& arguments) {
  const Result<MarkId> from = mark_argument(session.document(), arguments, "from"), to = mark_argument(session.document(), arguments, "to");
  for (const Result<MarkId>* each : {&from, &to})
    if (!*each) return refused(each->problem());
  const SheetPoint a = place_of(session, *from), b = place_of(session, *to);
  if (distance_mm(a, b) < k_least_edge_mm) return refused({.fault = Fault::edge_of_no_length});
  show_edge(session, {.a = a, .b = b, .on_a = *from, .on_b = *to});
  return done();
}

Value run_slide_edge_to(Session& session, const Value& arguments) {
  if (arguments.has("mark")) {
    const Result<MarkId> mark = mark_argument(session.document(), arguments, "mark");
    if (!mark) return refused(mark.problem());
    show_edge(session, slid_onto(*session.desk.edge, place_of(session, *mark)));
    if (session.desk.direction) session.desk.direction->through = *mark;
    return done();
  }
  const Result<RoseId> rose = rose_argument(session.document(), arguments, "rose");
  if (!rose) return refused(rose.problem());
  const RoseInReach* found = session.facts().rose(*rose);
  StraightEdge edge = slid_onto(*session.desk.edge, found->centre);
  // Slid along itself too where its ends would stay far from the rose.
  const double past_mm = dot(found->centre - midpoint(edge.a, edge.b), along(edge));
  const double reach_mm = distance_mm(edge.a, edge.b) / 2 + found->radius_mm;
  if (std::abs(past_mm) > reach_mm) edge = slid(edge, past_mm * along(edge));
  edge.settled_on = found->id;
  show_edge(session, edge);
  if (session.desk.direction) session.desk.direction->through.reset();
  return done();
}

Value run_turn_edge(Session& session, const Value& arguments) {
  const Result<double> bearing_deg = number_argument(arguments, "bearing_deg");
  if (!bearing_deg) return refused(bearing_deg.problem());
  const Result<Reference> reference = reference_argument(arguments, "reference");
  if (!reference) return refused(reference.problem());
  const Result<Done> set = set_direction(session, *bearing_deg, *reference);
  if (!set) return refused(set.problem());
  session.direction_form = {.open = true, .text = direction_figures(*bearing_deg, session.settings.rounding), .reference = *reference};
  session.desk.tool = ToolId::straight_edge;
  session.slip = SlipId::straight_edge;
  session.message = {};
  return done();
}

Value run_nudge_edge(Session& session, const Value& arguments) {
  const Result<double> by_deg = number_argument(arguments, "by_deg");
  if (!by_deg) return refused(by_deg.problem());
  constexpr double k_most_deg = 180;
  if (!(std::abs(*by_deg) <= k_most_deg)) return refused({.fault = Fault::number_out_of_range, .texts = {"turn"}, .numbers = {*by_deg, -k_most_deg, k_most_deg}});
  const Result<Done> nudged = nudge_edge(session, *by_deg);
  return nudged ? done() : refused(nudged.problem());
}

Value run_turn_edge_round(Session& session, const Value&) {
  turn_edge_round(session);
  return done();
}

Value run_lift_edge(Session& session, const Value&) {
  session.set_edge(std::nullopt);
  return done();
}

Value run_tool(Session& session, const Value& arguments) {
  const Result<std::string> name = text_argument(arguments, "tool");
  if (!name) return refused(name.problem());
  for (const ToolRow& row : tool_table()) {
    if (*name != row.name) continue;
    // The tool's own well again puts it down.
    session.desk.tool = session.desk.tool == row.id ? ToolId::none : row.id;
    session.desk.first_end.reset();
    session.desk.first_point.reset();
    session.desk.leg_from.reset();
    session.slip = session.desk.tool == ToolId::none ? SlipId::none : row.slip;
    session.desk.new_note.reset();
    if (const RoseInReach* rose = session.desk.tool == ToolId::rose ? rose_in_hand(session) : nullptr) select_rose(session, rose->id);
    session.message = {};
    return done();
  }
  return refused({.fault = Fault::entry_unreadable, .texts = {"tool", *name}});
}

struct SlipName {
  const char* name;
  SlipId id;
  bool opens_with_thing = false;  // which a command of its own selects
};
constexpr SlipName k_slips[] = {
    {"none", SlipId::none},
    {"first-run", SlipId::first_run},
    {"straight-edge", SlipId::straight_edge},
    {"more", SlipId::more},
    {"lists", SlipId::lists},
    {"new-sheet", SlipId::new_sheet},
    {"new-mark", SlipId::new_mark},
    {"sheet", SlipId::sheet},
    {"settings", SlipId::settings},
    {"legend", SlipId::legend},
    {"dividers", SlipId::dividers},
    {"rough-method", SlipId::rough_method},
    {"rose", SlipId::rose},
    {"drawer", SlipId::drawer},
    {"history", SlipId::history},
    {"keys", SlipId::keys},
    {"compass", SlipId::compass},
    {"print", SlipId::print},
    {"own-position", SlipId::own_position},
    {"log-entry", SlipId::log_entry, true},
    {"passage", SlipId::passage},
    {"stream", SlipId::stream},
    {"next-leg", SlipId::next_leg},
    {"deck-log", SlipId::deck_log},
    {"passage-details", SlipId::passage_details},
    {"passage-leg", SlipId::passage_leg, true},
    {"send", SlipId::send},
    {"code", SlipId::code, true},
    {"link", SlipId::link, true},
    {"photograph", SlipId::photograph},
    {"file", SlipId::file, true},
    {"mark", SlipId::mark, true},
    {"leg", SlipId::leg, true},
    {"note", SlipId::note, true},
};

Value run_open_slip(Session& session, const Value& arguments) {
  const Result<std::string> name = text_argument(arguments, "slip");
  if (!name) return refused(name.problem());
  for (const SlipName& row : k_slips)
    if (*name == row.name && !row.opens_with_thing) {
      session.slip = session.slip == row.id ? SlipId::none : row.id;
      return done();
    }
  return refused({.fault = Fault::entry_unreadable, .texts = {"slip", *name}});
}

Value run_close_slip(Session& session, const Value&) {
  if (session.slip == SlipId::mark || session.slip == SlipId::leg || session.slip == SlipId::rose || session.slip == SlipId::note) let_go_of_selection(session);
  if (session.slip == SlipId::photograph) session.desk.tool = ToolId::none;
  if (session.slip == SlipId::file) put_file_away(session);
  switch (session.slip) {
    case SlipId::log_entry: session.slip = SlipId::compass; break;
    case SlipId::passage_details: case SlipId::passage_leg: case SlipId::next_leg: session.slip = SlipId::passage; break;
    case SlipId::deck_log: session.slip = SlipId::next_leg; break;
    case SlipId::code: session.slip = SlipId::send; break;
    default: session.slip = SlipId::none; break;
  }
  return done();
}

/// What the demo proposes: the straight-edge in hand, to be laid along the middle leg.
Value run_take_edge(Session& session, const Value&) {
  session.desk.tool = ToolId::straight_edge;
  session.slip = SlipId::straight_edge;
  return done();
}

Value run_select(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  select_mark(session, *mark);
  return done();
}

Value zoom(Session& session, double factor) {
  const FreeArea area = session.free_area();
  session.desk.camera = held(zoomed(session.desk.camera, {area.width_px / 2, area.height_px / 2}, factor), paper_size(session.document().sheet.paper), area);
  session.desk.camera_moved = true;
  return done();
}

Value run_closer(Session& session, const Value&) { return zoom(session, k_zoom_step); }
Value run_wider(Session& session, const Value&) { return zoom(session, 1 / k_zoom_step); }

Value run_fit(Session& session, const Value&) {
  session.desk.camera = fitted(paper_size(session.document().sheet.paper), session.free_area());
  session.desk.camera_moved = true;
  return done();
}

Value run_show_keys(Session& session, const Value&) { return run_open_slip(session, Value::object({{"slip", "keys"}})); }

Value run_lock_touch(Session& session, const Value&) {
  session.touch_locked = true;
  return done();
}

Value run_unlock_touch(Session& session, const Value&) {
  session.touch_locked = false;
  return done();
}

}  // namespace

const char* slip_name(SlipId id) {
  for (const SlipName& row : k_slips)
    if (row.id == id) return row.name;
  return "none";
}

std::optional<SlipId> slip_named(std::string_view name) {
  for (const SlipName& row : k_slips)
    if (name == row.name) return row.id;
  return std::nullopt;
}

namespace {

/// Of those that a command can open, for help and scripts.
const char* slip_names() {
  static const std::string names = [] {
    std::string all;
    for (const SlipName& row : k_slips)
      if (!row.opens_with_thing) all += (all.empty() ? "" : ", ") + std::string(row.name);
    return all;
  }();
  return names.c_str();
}

}  // namespace

std::vector<Command> desk_commands() {
  return {
      {"lay-edge", "Lay the straight-edge on two marks", "", {{"from", "id of a mark"}, {"to", "id of a mark"}}, nullptr, run_lay_edge},
      {"slide-edge-to", "Slide the straight-edge to a rose or a mark", "", {{"rose", "id of a rose", true}, {"mark", "id of a mark", true}}, edge_not_on, run_slide_edge_to},
      {"turn-edge", "Turn the straight-edge to a direction", "", {{"bearing_deg", "deg, [0, 360)"}, {"reference", "true, magnetic or compass"}}, nullptr, run_turn_edge},
      {"turn-edge-round", "Turn the direction of travel round", "r", {}, edge_not_on, run_turn_edge_round},
      {"nudge-edge", "Turn the straight-edge by a little", "", {{"by_deg", "deg, clockwise positive"}}, edge_not_on, run_nudge_edge},
      {"lift-edge", "Let go of the edge", "", {}, edge_not_on, run_lift_edge},
      {"take-edge", "Put the edge on", "", {}, nullptr, run_take_edge},
      {"tool", "Take a tool in hand", "", {{"tool", "none, mark, leg, straight-edge, rose, dividers or note"}}, nullptr, run_tool},
      {"select-mark", "Select a mark", "", {{"id", "id of a mark"}}, nullptr, run_select},
      {"open-slip", "Open a slip", "", {{"slip", slip_names()}}, nullptr, run_open_slip},
      {"close-slip", "Close the slip", "", {}, nullptr, run_close_slip},
      {"closer", "Closer", "+", {}, nullptr, run_closer},
      {"wider", "Wider", "-", {}, nullptr, run_wider},
      {"fit", "The whole sheet", "0", {}, nullptr, run_fit},
      {"keys", "Show all keys", "?", {}, nullptr, run_show_keys},
      {"lock-touch", "Lock touch", "", {}, nullptr, run_lock_touch},
      {"unlock-touch", "Unlock touch", "", {}, nullptr, run_unlock_touch},
  };
}

}  // namespace fogsheet
