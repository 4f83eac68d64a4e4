// A rose: where it stands, how large it is, and which variation it shows.
#include "core/base/number_text.h"
#include "core/directions/direction_figures.h"
#include "core/positions/position_figures.h"
#include "shell/form_fields.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/tools/rose_tool.h"
#include "shell/words.h"

namespace fogsheet {

Panel rose_slip(const Session& session, const Tool& tool) {
  const Document& document = session.document();
  const RoseInReach* in_hand = rose_in_hand(session);
  Panel slip{.name = "rose", .label = "Rose"};
  slip.items.push_back(HeadingItem{.text = "Rose", .beside = in_hand ? words::rose_number(document.roses.place_of(in_hand->id), document.roses.size()) : ""});
  slip.items.push_back(parts::close_button());
  if (session.desk.tool == ToolId::rose) slip.items.push_back(parts::status_line(tool.status(session)));
  if (in_hand) {
    const Rose& rose = *document.roses.find(in_hand->id);
    const std::string id = std::to_string(rose.id.value), prefix = entry_prefix(rose.id);
    const auto field = [&](FieldItem standing) {
      standing.on_leave = {"type-rose", Value::object({{"id", id}, {"field", standing.name}})};
      const std::string key = prefix + standing.name;
      return parts::field(session.desk.entries, key, std::move(standing));
    };
    slip.items.push_back(field({.name = "place", .label = "Its middle", .text = position_figures(unquantise(rose.at), 2), .pad = Pad::position}));
    slip.items.push_back(field({.name = "radius", .label = "Radius on the paper", .text = words::plain_number(rose.radius_mm), .unit = "mm", .pad = Pad::quantity}));
    const VariationInUse& variation = session.variation_of(rose.id);
    slip.items.push_back(LineItem{.text = "variation", .value = words::variation_figures(variation)});
    if (variation.used) slip.items.push_back(LineItem{.text = "used as", .value = correction_figures(variation.used->deg, session.settings.rounding) + "°" + east_west(variation.used->deg, session.settings.rounding)});
    ChoiceItem place{.name = "own-place", .label = "The variation of", .chosen = rose.own_place ? "own" : "sheet", .argument = "own_place", .on_choose = {"set-rose-own-place", Value::object({{"id", id}})}};
    place.options = {{"sheet", "the sheet's middle"}, {"own", "its own place"}};
    slip.items.push_back(place);
    if (rose.own_place) slip.items.push_back(LineItem{.text = words::own_place_serves(), .tone = LineTone::soft});
    parts::add_variation_caution(slip, variation);
    slip.items.push_back(ButtonItem{.name = "add-rose", .label = "Another rose", .on_press = {"add-rose"}});
    slip.items.push_back(ButtonItem{.name = "remove-rose", .label = "Rub it out", .on_press = {"remove-rose", Value::object({{"id", id}})}});
  } else {
    slip.items.push_back(ButtonItem{.name = "add-rose", .label = "A rose here", .look = ButtonLook::main, .on_press = {"add-rose"}});
  }
  return slip;
}

}  // namespace fogsheet
