// How things are shown on this device: figures, colours, size of text, weight of lines.
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/form_words.h"
#include "shell/words.h"
#include "shell/words_of_things.h"

namespace fogsheet {

namespace {

ButtonItem dimmer_button(const char* name, std::string label, int step, std::string reason) {
  const bool enabled = step >= 0 && step <= k_dimmest;
  return {.name = name, .label = std::move(label), .enabled = enabled, .reason = std::move(reason), .on_press = {"set-dimmer", Value::object({{"step", std::to_string(step)}})}};
}

void add_screen(Panel& slip, const Session& session) {
  slip.items.push_back(ChoiceItem{.name = "screen", .label = words::screen_question(), .options = {{"device", words::as_the_device_has_it()}, {"awake", words::kept_awake()}},
                                  .chosen = session.settings.keep_awake ? "awake" : "device", .argument = "screen", .on_choose = {"set-screen"}});
  if (const std::string says = words::awake_line(session.awake_state); session.settings.keep_awake && !says.empty()) slip.items.push_back(LineItem{.text = says});
}

}  // namespace

void add_palette(Panel& slip, const Session& session) {
  ChoiceItem palette{.name = "palette", .label = words::palette_question(), .chosen = std::string(palette_name(session.settings.palette)), .argument = "palette", .on_choose = {"set-palette"}};
  for (int i = 0; i < k_palette_count; ++i) palette.options.push_back({std::string(palette_name(static_cast<Palette>(i))), words::palette_label(static_cast<Palette>(i))});
  slip.items.push_back(std::move(palette));
  if (!is_dark(session.settings.palette)) return;
  const int step = session.settings.dimmer;
  slip.items.push_back(LineItem{.text = words::dimmer_line(step)});
  slip.items.push_back(dimmer_button("darker", words::darker(), step + 1, words::darkest()));
  slip.items.push_back(dimmer_button("lighter", words::lighter(), step - 1, words::lightest()));
}

Panel settings_slip(const Session& session) {
  const Settings& settings = session.settings;
  Panel slip{.name = "settings", .label = words::settings_title()};
  slip.items.push_back(HeadingItem{.text = words::settings_title(), .beside = words::settings_beside()});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(ChoiceItem{.name = "rounding", .label = words::rounding_question(), .options = {{"whole", words::whole_degrees()}, {"tenths", words::tenths_of_degrees()}},
                                  .chosen = settings.rounding == Rounding::tenths ? "tenths" : "whole", .argument = "rounding", .on_choose = {"set-rounding"}});
  add_palette(slip, session);
  ChoiceItem size{.name = "text-size", .label = words::text_size_question(), .chosen = std::to_string(settings.text_percent), .argument = "percent", .on_choose = {"set-text-size"}};
  for (const int percent : k_text_sizes) size.options.push_back({std::to_string(percent), std::to_string(percent) + " %"});
  slip.items.push_back(size);
  const bool contrast = settings.palette == Palette::high_contrast;
  slip.items.push_back(ChoiceItem{.name = "bold-lines", .label = words::lines_question(), .options = {{"usual", words::usual_lines()}, {"bold", words::bold_lines()}},
                                  .chosen = settings.bold_lines || contrast ? "bold" : "usual", .argument = "lines", .on_choose = {"set-lines"}});
  if (contrast) slip.items.push_back(LineItem{.text = words::contrast_has_bold_lines(), .tone = LineTone::soft});
  const auto add_switch = [&](const char* name, const std::string& label, bool is_on, const char* command) {
    slip.items.push_back(ChoiceItem{.name = name, .label = label, .options = {{"on", words::switched_on()}, {"off", words::switched_off()}}, .chosen = is_on ? "on" : "off", .argument = "state", .on_choose = {command}});
  };
  add_switch("loupe", words::loupe_question(), settings.loupe, "set-loupe");
  add_switch("snap", words::snap_question(), settings.snap, "set-snap");
  add_screen(slip, session);
  slip.items.push_back(ChoiceItem{.name = "single-keys", .label = words::single_keys_question(), .options = {{"on", "on"}, {"off", "off"}}, .chosen = settings.single_keys ? "on" : "off", .argument = "keys", .on_choose = {"set-single-keys"}});
  slip.items.push_back(parts::signs_choice(session.document().sheet.signs));
  slip.items.push_back(LineItem{.text = words::signs_are_the_sheets(), .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "legend", .label = words::show_legend(), .on_press = {"open-slip", Value::object({{"slip", "legend"}})}});
  return slip;
}

}  // namespace fogsheet
