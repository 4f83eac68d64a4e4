// Where a script finds the things of the canvas, so that it can press what a user presses.
#include <charconv>

#include "core/positions/position_text.h"
#include "shell/direction.h"
#include "shell/dividers.h"
#include "shell/read.h"
#include "shell/tools/rose_tool.h"
#include "shell/tools/target.h"

namespace fogsheet {
namespace {

constexpr double k_side_px = 44;  // a target's size, as a finger needs it

Value around(ScreenPoint at) {
  return Value::object({{"x", at.x_px - k_side_px / 2}, {"y", at.y_px - k_side_px / 2}, {"width", k_side_px}, {"height", k_side_px}});
}

bool on_canvas(const Session& session, ScreenPoint at) {
  return at.x_px >= 0 && at.y_px >= 0 && at.x_px < session.viewport.width_px && at.y_px < session.viewport.height_px;
}

/// The place itself, whatever lies over it.
Value place(const Session& session, ScreenPoint at) { return on_canvas(session, at) ? around(at) : Value(); }

/// The thing, unless a press there would take another.
Value thing(const Session& session, ScreenPoint at, const Target& target) {
  return on_canvas(session, at) && target_at(session, at) == target ? around(at) : Value();
}

std::optional<std::string_view> after(std::string_view text, std::string_view start) {
  if (text.substr(0, start.size()) != start) return std::nullopt;
  return text.substr(start.size());
}

std::optional<std::uint32_t> id_after_hash(std::string_view text) {
  const std::optional<std::string_view> digits = after(text, "#");
  if (!digits) return std::nullopt;
  std::uint32_t id = 0;
  const auto [end, error] = std::from_chars(digits->data(), digits->data() + digits->size(), id);
  if (error != std::errc() || end != digits->data() + digits->size()) return std::nullopt;
  return id;
}

const Mark* mark_of_name(const Document& document, std::string_view name) {
  const std::optional<std::uint32_t> id = id_after_hash(name);
  if (id)
    if (const Mark* mark = document.marks.find({*id})) return mark;
  for (const Mark& mark : document.marks)
    if (mark.name == name) return &mark;
  return nullptr;
}

Value edge_part(const Session& session, std::string_view part) {
  if (!session.desk.edge) return Value();
  const StraightEdge& edge = *session.desk.edge;
  const Camera& camera = session.desk.camera;
  if (part == "reading") return thing(session, camera.to_screen(midpoint(edge.a, edge.b)), BodyTarget{});
  if (part == "end-a") return thing(session, camera.to_screen(handle(edge_strip(session, edge), EdgeEnd::a)), HandleTarget{EdgeEnd::a});
  if (part == "end-b") return thing(session, camera.to_screen(handle(edge_strip(session, edge), EdgeEnd::b)), HandleTarget{EdgeEnd::b});
  if (part == "line-end")
    if (const std::optional<LineAlongEdge> line = line_along_edge(session)) return thing(session, camera.to_screen(line->end), LineEndTarget{});
  if (part == "arrow")
    if (const std::optional<SheetPoint> arrow = edge_arrow(session)) return thing(session, camera.to_screen(*arrow), ArrowTarget{});
  return Value();
}

Value dividers_part(const Session& session, std::string_view part) {
  if (!session.desk.dividers) return Value();
  const DividersOnSheet& dividers = *session.desk.dividers;
  const Camera& camera = session.desk.camera;
  if (part == "leg-a") return thing(session, camera.to_screen(dividers.lie.points.a), DividersTarget{DividersPart::leg_a});
  if (part == "leg-b") return thing(session, camera.to_screen(dividers.lie.points.b), DividersTarget{DividersPart::leg_b});
  if (part == "hinge") return thing(session, camera.to_screen(hinge_of(session, dividers)), DividersTarget{DividersPart::hinge});
  return Value();
}

Value rose_part(const Session& session, std::string_view part) {
  if (part == "size") {
    const RoseInReach* rose = session.desk.tool == ToolId::rose ? rose_in_hand(session) : nullptr;
    return rose ? thing(session, session.desk.camera.to_screen(rose_size_handle(rose->centre, rose->radius_mm)), RoseSizeTarget{rose->id}) : Value();
  }
  const std::optional<std::uint32_t> id = id_after_hash(part);
  for (const RoseInReach& rose : session.facts().roses)
    if (part == "centre" || (id && rose.id.value == *id)) return place(session, session.desk.camera.to_screen(rose.centre));
  return Value();
}

}  // namespace

Value where_on_canvas(const Session& session, const std::string& name) {
  const Camera& camera = session.desk.camera;
  if (const auto mark_name = after(name, "mark/")) {
    const Mark* mark = mark_of_name(session.document(), *mark_name);
    return mark ? thing(session, camera.to_screen(place_of(session, mark->id)), MarkTarget{mark->id}) : Value();
  }
  if (const auto part = after(name, "note/"))
    for (const TextNote& note : session.document().text_notes)
      if (const std::optional<std::uint32_t> id = id_after_hash(*part); id ? note.id.value == *id : note.text == *part)
        return thing(session, camera.to_screen(session.facts().projection->to_sheet(unquantise(note.at))), NoteTarget{note.id});
  if (const auto part = after(name, "edge/")) return edge_part(session, *part);
  if (const auto part = after(name, "dividers/")) return dividers_part(session, *part);
  if (const auto part = after(name, "rose/")) return rose_part(session, *part);
  if (const auto part = after(name, "photograph/"); part && is_shown(session.photograph))
    if (const std::optional<std::uint32_t> number = id_after_hash(*part); number && *number >= 1 && *number <= session.photograph->placing.points.size())
      return place(session, camera.to_screen(laid(session, *session.photograph).transform.to_sheet(session.photograph->placing.points[*number - 1].at)));
  if (const auto text = after(name, "sheet/"))
    if (const Result<Position> position = parse_position(*text)) return place(session, camera.to_screen(session.facts().projection->to_sheet(*position)));
  return Value();
}

}  // namespace fogsheet
