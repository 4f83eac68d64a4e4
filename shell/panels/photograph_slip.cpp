// The photograph of a chart under the sheet: chosen, placed by points that are known on it, dimmed, hidden, taken away.
#include <algorithm>
#include <cmath>

#include "core/positions/position_figures.h"
#include "shell/form_words.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"
#include "shell/words_of_photographs.h"

namespace fogsheet {
namespace {

constexpr double k_close_together = 0.25;  // of the photograph's breadth or height

Press typed(const char* field) { return {"type-photograph", Value::object({{"field", field}})}; }

ChoiceItem choice(const char* field, std::string label, std::vector<ChoiceItem::Option> options, std::string chosen) {
  return {.name = field, .label = std::move(label), .options = std::move(options), .chosen = std::move(chosen), .argument = "text", .on_choose = typed(field)};
}

void add_choose(Panel& slip, const char* label, ButtonLook look) { slip.items.push_back(ButtonItem{.name = "choose-photograph", .label = label, .look = look, .on_press = {"choose-photograph"}}); }

bool are_close(const PhotographPlacing& placing, const LaidPhotograph& lies) {
  double left = placing.width_px, right = 0, top = placing.height_px, bottom = 0;
  for (const std::size_t i : lies.known) {
    const PicturePoint at = placing.points[i].at;
    left = std::min(left, at.x_px);
    right = std::max(right, at.x_px);
    top = std::min(top, at.y_px);
    bottom = std::max(bottom, at.y_px);
  }
  return right - left < k_close_together * placing.width_px && bottom - top < k_close_together * placing.height_px;
}

void add_points(Panel& slip, const PhotographPlacing& placing, const LaidPhotograph& lies) {
  if (placing.points.empty()) return;
  TableItem table{.name = "points", .caption = "Points that are known on it", .columns = {{"point", true}, {"position"}, {"off by, m", true}}};
  for (std::size_t i = 0; i < placing.points.size(); ++i) {
    const auto known = std::find(lies.known.begin(), lies.known.end(), i);
    const bool is_measured = lies.fit && lies.fit->standard_error_m && known != lies.known.end();
    table.rows.push_back({std::to_string(i + 1), placing.points[i].position ? position_figures(unquantise(*placing.points[i].position), 2) : "not entered",
                          is_measured ? std::to_string(std::lround(lies.fit->residuals_m[static_cast<std::size_t>(known - lies.known.begin())])) : ""});
    table.row_presses.push_back({"select-photograph-point", Value::object({{"point", static_cast<double>(i + 1)}})});
  }
  slip.items.push_back(std::move(table));
}

void add_selected(Panel& slip, const Session& session, std::size_t selected) {
  const PhotographPoint& point = session.photograph->placing.points[selected];
  const std::string prefix = "photograph/" + std::to_string(selected + 1) + "/";
  slip.items.push_back(HeadingItem{.text = "Point " + std::to_string(selected + 1), .level = 3});
  slip.items.push_back(parts::field(session.desk.entries, prefix + "position", {.name = "position", .label = "Its position", .text = point.position ? position_figures(unquantise(*point.position), 2) : "", .pad = Pad::position, .on_leave = typed("position")}));
  if (session.document().marks.size() > 0) slip.items.push_back(parts::mark_choice(session.document(), "mark", "or the mark that it is", "", typed("mark")));
  slip.items.push_back(parts::field(session.desk.entries, prefix + "at", {.name = "at", .label = "On the photograph, from its left and its top", .text = std::to_string(std::lround(point.at.x_px)) + ", " + std::to_string(std::lround(point.at.y_px)), .unit = "px", .on_leave = typed("at")}));
  slip.items.push_back(ButtonItem{.name = "remove-photograph-point", .label = "Take " + words::point_name(selected) + " away", .on_press = {"remove-photograph-point", Value::object({{"point", static_cast<double>(selected + 1)}})}});
}

void add_ready(Panel& slip, const Session& session) {
  const Photograph& photograph = *session.photograph;
  const PhotographPlacing& placing = photograph.placing;
  const LaidPhotograph lies = laid(session, photograph);
  slip.items.push_back(parts::status_line(words::status_photograph_tool(session)));
  slip.items.push_back(ButtonItem{.name = "point-photograph", .label = "Press places on it", .pressed = session.desk.tool == ToolId::photograph, .on_press = {"point-photograph"}});
  slip.items.push_back(ButtonItem{.name = "add-photograph-point", .label = "A point at mid-screen", .on_press = {"add-photograph-point"}});
  add_points(slip, placing, lies);
  if (photograph.selected) add_selected(slip, session, *photograph.selected);

  slip.items.push_back(HeadingItem{.text = "How it lies", .level = 3});
  if (lies.fit) {
    slip.items.push_back(LineItem{.text = words::placed_line(lies), .tone = LineTone::strong});
    slip.items.push_back(LineItem{.text = words::fit_line(lies)});
    if (are_close(placing, lies)) slip.items.push_back(CautionItem{.text = "Held by too little", .advice = words::points_are_close()});
  } else {
    slip.items.push_back(CautionItem{.text = "Not placed: it lies across the sheet as it is", .advice = words::not_placed(lies)});
  }
  if (lies.known.size() >= 3) slip.items.push_back(choice("fit", "Fitted by", {{"affine", "turning, sizing, stretching"}, {"similarity", "turning and sizing alone"}}, placing.stretched ? "affine" : "similarity"));
  slip.items.push_back(choice("datum", words::datum_question(), {{"WGS84", "WGS84"}, {"other", "another, or I don't know"}}, placing.is_wgs84 ? "WGS84" : "other"));
  if (!placing.is_wgs84) slip.items.push_back(LineItem{.text = words::datum_warning_of_photograph(), .tone = LineTone::soft});

  std::vector<ChoiceItem::Option> strengths;
  for (int i = 0; i < k_photograph_strengths; ++i) strengths.push_back({std::to_string(i), words::strength_label(i)});
  slip.items.push_back(choice("strength", "How much of it shows", std::move(strengths), std::to_string(placing.strength)));
  slip.items.push_back(choice("shown", "Under the sheet", {{"shown", "shown"}, {"hidden", "hidden"}}, placing.hidden ? "hidden" : "shown"));
  if (const std::string line = words::shrunk_line(photograph); !line.empty()) slip.items.push_back(LineItem{.text = line, .tone = LineTone::soft});
  if (photograph.kept == PhotographKept::full || photograph.kept == PhotographKept::failed) slip.items.push_back(CautionItem{.text = "The photograph is not kept", .advice = words::kept_line(photograph)});
  else slip.items.push_back(LineItem{.text = words::kept_line(photograph), .tone = LineTone::soft});
  if (!placing.points.empty()) slip.items.push_back(ButtonItem{.name = "place-photograph-anew", .label = "Place it anew", .hold = true, .on_press = {"place-photograph-anew"}});
  add_choose(slip, "Another photograph", ButtonLook::plain);
  slip.items.push_back(ButtonItem{.name = "remove-photograph", .label = "Take it away", .hold = true, .on_press = {"remove-photograph"}});
}

}  // namespace

Panel photograph_slip(const Session& session) {
  Panel slip{.name = "photograph", .label = words::photograph_title()};
  const std::optional<Photograph>& photograph = session.photograph;
  slip.items.push_back(HeadingItem{.text = words::photograph_title(), .beside = photograph && photograph->is_ready() ? words::photograph_name(*photograph) : photograph ? photograph->name : ""});
  slip.items.push_back(parts::close_button());
  if (!photograph) {
    slip.items.push_back(LineItem{.text = words::photograph_described()});
    add_choose(slip, "Choose or take a photograph", ButtonLook::main);
  } else if (photograph->state == Photograph::State::reading) {
    slip.items.push_back(LineItem{.text = "It is being read."});
    slip.items.push_back(ButtonItem{.name = "stop-photograph", .label = "Stop", .on_press = {"stop-photograph"}});
  } else if (photograph->state == Photograph::State::refused) {
    slip.items.push_back(CautionItem{.text = "This file can't be used", .advice = words::sentence(*photograph->problem)});
    add_choose(slip, "Choose another photograph", ButtonLook::main);
  } else {
    add_ready(slip, session);
  }
  slip.items.push_back(HeadingItem{.text = "Before you rely on it", .level = 3});
  for (const std::string& line : words::photograph_cautions()) slip.items.push_back(LineItem{.text = line});
  return slip;
}

}  // namespace fogsheet
