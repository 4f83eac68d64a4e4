#include "shell/commands_photograph.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "core/positions/position_text.h"
#include "shell/arguments.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

std::optional<Fault> no_photograph(const Session& session) { return session.photograph && session.photograph->is_ready() ? std::nullopt : std::optional(Fault::no_photograph); }

void ask(Session& session, PhotographAct act) { session.platform.photograph(act, session.sheets.in_hand().key.value, {}); }

Value answer_of(Session& session, const Result<Done>& result) {
  if (!result) return refused(result.problem());
  return done_with(static_cast<std::uint32_t>(*session.photograph->selected + 1));
}

Value run_choose(Session& session, const Value&) {
  session.slip = SlipId::photograph;
  ask(session, PhotographAct::choose);
  return done();
}

void take_away(Session& session) {
  session.photograph.reset();
  session.placing_told.clear();
  if (session.desk.tool == ToolId::photograph) session.desk.tool = ToolId::none;
}

Value run_stop(Session& session, const Value&) {
  if (session.photograph && session.photograph->state == Photograph::State::reading) take_away(session);
  ask(session, PhotographAct::stop);
  return done();
}

Value run_remove(Session& session, const Value&) {
  take_away(session);
  ask(session, PhotographAct::remove);
  return done();
}

Value run_point(Session& session, const Value&) {
  session.slip = SlipId::photograph;
  session.desk.tool = session.desk.tool == ToolId::photograph ? ToolId::none : ToolId::photograph;
  return done();
}

/// Of the point given, from 1.
Result<std::size_t> point_argument(const Session& session, const Value& arguments) {
  const Result<double> number = number_argument(arguments, "point");
  if (!number) return number.problem();
  const double count = static_cast<double>(session.photograph->placing.points.size());
  if (!(*number >= 1 && *number <= count) || *number != std::floor(*number)) return Problem{.fault = Fault::picture_point_unknown, .numbers = {*number, count}};
  return static_cast<std::size_t>(*number) - 1;
}

/// What was typed at points, and not taken, goes with them: their numbers change.
void drop_entries(Session& session) {
  for (std::size_t i = 1; i <= k_most_known_points; ++i)
    for (const char* field : {"/position", "/at"}) session.desk.entries.drop("photograph/" + std::to_string(i) + field);
}

/// Where it is on the photograph, and which position that is; in the middle of the screen where the first is not said.
Value run_add_point(Session& session, const Value& arguments) {
  const FreeArea area = session.free_area();
  PicturePoint at = laid(session, *session.photograph).transform.to_picture(session.desk.camera.to_sheet({area.width_px / 2, area.height_px / 2}));
  if (arguments.has("x_px") || arguments.has("y_px")) {
    const Result<double> x_px = number_argument(arguments, "x_px"), y_px = number_argument(arguments, "y_px");
    if (!x_px) return refused(x_px.problem());
    if (!y_px) return refused(y_px.problem());
    at = {*x_px, *y_px};
  }
  std::optional<GridPosition> position;
  if (arguments.has("lat_deg") || arguments.has("lon_deg")) {
    const Result<double> lat_deg = number_argument(arguments, "lat_deg"), lon_deg = number_argument(arguments, "lon_deg");
    if (!lat_deg) return refused(lat_deg.problem());
    if (!lon_deg) return refused(lon_deg.problem());
    const Result<GridPosition> checked = checked_position(*lat_deg, *lon_deg);
    if (!checked) return refused(checked.problem());
    position = *checked;
  }
  return answer_of(session, add_photograph_point(session, at, position));
}

Value run_select_point(Session& session, const Value& arguments) {
  const Result<std::size_t> point = point_argument(session, arguments);
  if (!point) return refused(point.problem());
  session.photograph->selected = *point;
  return done();
}

Value run_remove_point(Session& session, const Value& arguments) {
  const Result<std::size_t> point = point_argument(session, arguments);
  if (!point) return refused(point.problem());
  std::vector<PhotographPoint>& points = session.photograph->placing.points;
  points.erase(points.begin() + static_cast<std::ptrdiff_t>(*point));
  session.photograph->selected.reset();
  drop_entries(session);
  return done();
}

Value run_place_anew(Session& session, const Value&) {
  session.photograph->placing.points.clear();
  session.photograph->selected.reset();
  drop_entries(session);
  return done();
}

/// "1234, 567" or "1234.5 567": two numbers, parted by a comma or a blank.
Result<PicturePoint> typed_point(const std::string& text) {
  constexpr const char* k_parting = ",; ";
  const std::string_view typed = trimmed(text);
  const std::size_t end = std::min(typed.find_first_of(k_parting), typed.size()), next = std::min(typed.find_first_not_of(k_parting, end), typed.size());
  const std::optional<double> x_px = parse_number(typed.substr(0, end)), y_px = parse_number(typed.substr(next));
  if (x_px && y_px) return PicturePoint{*x_px, *y_px};
  return Problem{.fault = Fault::entry_unreadable, .texts = {"place on the photograph", text}};
}

Result<Done> typed_at_point(Session& session, const std::string& field, const std::string& text) {
  Photograph& photograph = *session.photograph;
  if (!photograph.selected) return Problem{.fault = Fault::picture_point_unknown, .numbers = {0, static_cast<double>(photograph.placing.points.size())}};
  PhotographPoint& point = photograph.placing.points[*photograph.selected];
  if (field == "at") {
    const Result<PicturePoint> at = typed_point(text);
    return at ? move_photograph_point(session, *photograph.selected, *at) : Result<Done>(at.problem());
  }
  if (field == "mark") {
    const Result<MarkId> mark = mark_argument(session.document(), Value::object({{"mark", text}}), "mark");
    if (!mark) return mark.problem();
    point.position = session.document().marks.find(*mark)->at;
    return Done{};
  }
  if (trimmed(text).empty()) {
    point.position.reset();
    return Done{};
  }
  const Result<Position> position = parse_position(text);
  if (!position) return position.problem();
  const Result<GridPosition> checked = checked_position(position->lat_deg, position->lon_deg);
  if (!checked) return checked.problem();
  point.position = *checked;
  return Done{};
}

/// A field or choice of the slip, as typed or chosen.
Value run_type(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  if (!field) return refused(field.problem());
  if (!text) return refused(text.problem());
  PhotographPlacing& placing = session.photograph->placing;
  if (*field == "fit") placing.stretched = *text == "affine";
  else if (*field == "datum") placing.is_wgs84 = *text == "WGS84";
  else if (*field == "shown") placing.hidden = *text == "hidden";
  else if (*field == "strength" && text->size() == 1 && (*text)[0] >= '0' && (*text)[0] < '0' + k_photograph_strengths) placing.strength = (*text)[0] - '0';
  else if (*field == "at" || *field == "mark" || *field == "position") {
    const Result<Done> taken = typed_at_point(session, *field, *text);
    if (!session.photograph->selected) return refused(taken.problem());
    const std::string key = "photograph/" + std::to_string(*session.photograph->selected + 1) + "/" + (*field == "mark" ? "position" : *field);
    if (taken) session.desk.entries.drop(key);
    else session.desk.entries.keep(key, *field == "mark" ? "" : *text, words::sentence(taken.problem()));
    if (!taken) return refused(taken.problem());
  } else return refused({.fault = Fault::entry_unreadable, .texts = {"field", *field}});
  return done();
}

}  // namespace

std::vector<Command> photograph_commands() {
  return {
      {"choose-photograph", "Choose or take a photograph of a chart", "", {}, nullptr, run_choose},
      {"stop-photograph", "Stop reading the photograph", "", {}, nullptr, run_stop},
      {"remove-photograph", "Take the photograph away", "", {}, nullptr, run_remove},
      {"point-photograph", "Press places on the photograph", "", {}, no_photograph, run_point},
      {"add-photograph-point", "Put a point on the photograph", "", {{"x_px", "px from its left; the middle of the screen", true}, {"y_px", "px from its top", true}, {"lat_deg", "deg", true}, {"lon_deg", "deg", true}}, no_photograph, run_add_point},
      {"select-photograph-point", "Choose a point of the photograph", "", {{"point", "from 1"}}, no_photograph, run_select_point},
      {"remove-photograph-point", "Take a point of the photograph away", "", {{"point", "from 1"}}, no_photograph, run_remove_point},
      {"place-photograph-anew", "Place the photograph anew", "", {}, no_photograph, run_place_anew},
      {"type-photograph", "Type a part of the photograph's placing", "", {{"field", "position, mark or at (of the chosen point), fit (affine or similarity), datum (WGS84 or other), strength (0 to 3) or shown (shown or hidden)"}, {"text", "as typed"}}, no_photograph, run_type},
  };
}

}  // namespace fogsheet
