#include "shell/things.h"

#include <algorithm>
#include <charconv>

#include "core/document/actions.h"
#include "shell/arguments.h"
#include "shell/commands.h"
#include "shell/dividers.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/target.h"
#include "shell/tools/tool.h"

namespace fogsheet {
namespace {

constexpr const char* k_edge_parts[] = {"edge/body", "edge/end-a", "edge/end-b"};
constexpr const char* k_dividers_parts[] = {"dividers/leg-a", "dividers/leg-b", "dividers/hinge"};
constexpr std::size_t k_parts = 3;  // of either instrument

template <class Row>
Thing row_at(const Table<Row>& table, std::size_t place) { return table.at(place).id; }

/// Where each part of the order begins, and where it ends.
struct Order {
  std::size_t edge = 1, dividers, legs, marks, roses, notes, end;
};

Order order_of(const Session& session) {
  const Document& document = session.document();
  Order order;
  order.dividers = order.edge + (session.desk.edge ? k_parts : 0);
  order.legs = order.dividers + (session.desk.dividers ? k_parts : 0);
  order.marks = order.legs + document.legs.size();
  order.roses = order.marks + document.marks.size();
  order.notes = order.roses + document.roses.size();
  order.end = order.notes + document.text_notes.size();
  return order;
}

template <class RowId>
std::optional<Thing> id_named(std::string_view name, std::string_view stem) {
  if (!name.starts_with(stem)) return std::nullopt;
  name.remove_prefix(stem.size());
  RowId id;
  const auto [end, error] = std::from_chars(name.data(), name.data() + name.size(), id.value);
  if (error != std::errc() || end != name.data() + name.size()) return std::nullopt;
  return id;
}

template <class Row>
std::optional<std::size_t> row_place(const Table<Row>& table, std::size_t first, decltype(Row::id) id) {
  if (!table.find(id)) return std::nullopt;
  return first + table.place_of(id);
}

bool stands_at(const Document& document, const Thing& thing, const GridPosition& at) {
  if (const auto* mark = std::get_if<MarkId>(&thing)) return document.marks.find(*mark)->at == at;
  if (const auto* rose = std::get_if<RoseId>(&thing)) return document.roses.find(*rose)->at == at;
  const auto* note = std::get_if<NoteId>(&thing);
  return note && document.text_notes.find(*note)->at == at;
}

}  // namespace

std::size_t first_shown(const Session& session) {
  const std::size_t count = thing_count(session), asked = std::min(session.outline.from, count - 1);
  const std::size_t in_focus = session.in_focus ? place_among_things(session, *session.in_focus).value_or(0) : 0;
  return in_focus >= asked + k_things_shown ? in_focus + 1 - k_things_shown : asked;
}

std::size_t thing_count(const Session& session) { return order_of(session).end; }

Thing thing_at(const Session& session, std::size_t place) {
  const Document& document = session.document();
  const Order order = order_of(session);
  if (place < order.edge) return SheetItself{};
  if (place < order.dividers) return static_cast<EdgePart>(place - order.edge);
  if (place < order.legs) return static_cast<DividersPart>(place - order.dividers);
  if (place < order.marks) return row_at(document.legs, place - order.legs);
  if (place < order.roses) return row_at(document.marks, place - order.marks);
  if (place < order.notes) return row_at(document.roses, place - order.roses);
  return row_at(document.text_notes, place - order.notes);
}

std::optional<std::size_t> place_among_things(const Session& session, const Thing& thing) {
  const Document& document = session.document();
  const Order order = order_of(session);
  if (const auto* part = std::get_if<EdgePart>(&thing)) return session.desk.edge ? std::optional(order.edge + static_cast<std::size_t>(*part)) : std::nullopt;
  if (const auto* part = std::get_if<DividersPart>(&thing)) return session.desk.dividers ? std::optional(order.dividers + static_cast<std::size_t>(*part)) : std::nullopt;
  if (const auto* leg = std::get_if<LegId>(&thing)) return row_place(document.legs, order.legs, *leg);
  if (const auto* mark = std::get_if<MarkId>(&thing)) return row_place(document.marks, order.marks, *mark);
  if (const auto* rose = std::get_if<RoseId>(&thing)) return row_place(document.roses, order.roses, *rose);
  if (const auto* note = std::get_if<NoteId>(&thing)) return row_place(document.text_notes, order.notes, *note);
  return 0;
}

std::string thing_name(const Thing& thing) {
  if (const auto* part = std::get_if<EdgePart>(&thing)) return k_edge_parts[static_cast<std::size_t>(*part)];
  if (const auto* part = std::get_if<DividersPart>(&thing)) return k_dividers_parts[static_cast<std::size_t>(*part)];
  if (const auto* leg = std::get_if<LegId>(&thing)) return "leg/" + std::to_string(leg->value);
  if (const auto* mark = std::get_if<MarkId>(&thing)) return "mark/" + std::to_string(mark->value);
  if (const auto* rose = std::get_if<RoseId>(&thing)) return "rose/" + std::to_string(rose->value);
  if (const auto* note = std::get_if<NoteId>(&thing)) return "note/" + std::to_string(note->value);
  return "sheet";
}

std::optional<Thing> thing_named(const std::string& name) {
  if (name == "sheet") return SheetItself{};
  for (std::size_t i = 0; i < k_parts; ++i) {
    if (name == k_edge_parts[i]) return static_cast<EdgePart>(i);
    if (name == k_dividers_parts[i]) return static_cast<DividersPart>(i);
  }
  for (const std::optional<Thing>& found : {id_named<MarkId>(name, "mark/"), id_named<LegId>(name, "leg/"), id_named<RoseId>(name, "rose/"), id_named<NoteId>(name, "note/")})
    if (found) return found;
  return std::nullopt;
}

std::optional<SheetPoint> hold_of(const Session& session, const Thing& thing) {
  if (!place_among_things(session, thing)) return std::nullopt;
  if (const auto* part = std::get_if<EdgePart>(&thing)) {
    const StraightEdge& edge = *session.desk.edge;
    return *part == EdgePart::body ? midpoint(edge.a, edge.b) : *part == EdgePart::end_a ? edge.a : edge.b;
  }
  if (const auto* part = std::get_if<DividersPart>(&thing)) {
    const Dividers& points = session.desk.dividers->lie.points;
    return *part == DividersPart::hinge ? hinge_of(session, *session.desk.dividers) : *part == DividersPart::leg_a ? points.a : points.b;
  }
  if (const auto* mark = std::get_if<MarkId>(&thing)) return place_of(session, *mark);
  if (const auto* rose = std::get_if<RoseId>(&thing)) return session.facts().projection->to_sheet(unquantise(session.document().roses.find(*rose)->at));
  if (const auto* note = std::get_if<NoteId>(&thing)) return session.facts().projection->to_sheet(unquantise(session.document().text_notes.find(*note)->at));
  return std::nullopt;
}

bool move_thing(Session& session, const Thing& thing, SheetPoint to) {
  const Position at = session.facts().projection->to_position(to);
  if (stands_at(session.document(), thing, quantise(at))) return true;
  const Result<Done> moved = acted(session, [&]() -> Result<Done> {
    if (const auto* mark = std::get_if<MarkId>(&thing)) return move_mark(session.history(), *mark, at.lat_deg, at.lon_deg);
    if (const auto* rose = std::get_if<RoseId>(&thing)) return change_rose(session.history(), *rose, {.at = at});
    if (const auto* note = std::get_if<NoteId>(&thing)) return change_text_note(session.history(), *note, {.at = at});
    return Done{};
  });
  if (!moved) session.refuse(moved.problem());
  return moved.ok();
}

void rub_out(Session& session, const Thing& thing) {
  const std::string name = thing_name(thing);
  const std::size_t slash = name.find('/');
  const std::string kind = name.substr(0, slash);
  if (kind == "edge" || kind == "dividers") run_command(session, "lift-" + kind, Value::object());
  else if (slash != name.npos) run_command(session, "remove-" + kind, Value::object({{"id", name.substr(slash + 1)}}));
}

void press_thing(Session& session, const Thing& thing) {
  const auto take = [&](ToolId id) {
    session.desk.tool = id;
    session.slip = tool_row(id).slip;
  };
  const auto* mark = std::get_if<MarkId>(&thing);
  const bool by_tool = mark && session.desk.tool != ToolId::none;
  if (by_tool) tool_row(session.desk.tool).make()->press(session, session.desk.camera.to_screen(place_of(session, *mark)));
  else if (mark) select_mark(session, *mark);
  else if (const auto* leg = std::get_if<LegId>(&thing)) select_leg(session, *leg);
  else if (const auto* rose = std::get_if<RoseId>(&thing)) select_rose(session, *rose);
  else if (const auto* note = std::get_if<NoteId>(&thing)) select_note(session, *note);
  else if (std::holds_alternative<EdgePart>(thing)) take(ToolId::straight_edge);
  else if (std::holds_alternative<DividersPart>(thing)) take(ToolId::dividers);
  else session.slip = SlipId::sheet;
  session.slip_entered = !by_tool;
  session.touch();
}

std::optional<Thing> thing_under_keys(const Session& session) {
  const Desk& desk = session.desk;
  if (session.in_focus) return session.in_focus;
  if (desk.selected_mark) return *desk.selected_mark;
  if (desk.selected_leg) return *desk.selected_leg;
  if (desk.selected_note) return *desk.selected_note;
  const bool rose_is_shown = desk.tool == ToolId::rose || session.slip == SlipId::rose;
  if (desk.selected_rose && rose_is_shown) return *desk.selected_rose;
  return std::nullopt;
}

}  // namespace fogsheet
