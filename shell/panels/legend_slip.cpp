// What the signs on a sheet mean, in the set that it wears.
#include "core/figure/legend_figure.h"
#include "core/formats/svg.h"
#include "shell/form_words.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"

namespace fogsheet {

Panel legend_slip(const Session& session) {
  const SignSet set = session.document().sheet.signs;
  Panel slip{.name = "legend", .label = words::legend_title()};
  slip.items.push_back(HeadingItem{.text = words::legend_title(), .beside = words::sign_set_label(set)});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(FigureItem{.name = "legend", .text = words::legend_says(), .svg = panel_svg(legend_figure(set, words::legend_words(set)), {0, 0, k_legend_width, k_legend_height})});
  slip.items.push_back(ButtonItem{.name = "sheet", .label = words::change_the_signs(), .on_press = {"open-slip", Value::object({{"slip", "sheet"}})}});
  return slip;
}

}  // namespace fogsheet
