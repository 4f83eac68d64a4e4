#include "shell/panels/parts.h"

#include "core/directions/direction_figures.h"
#include "shell/form_words.h"
#include "shell/words.h"

namespace fogsheet::parts {

ButtonItem close_button() { return {.name = "close", .label = "Close", .icon = "close", .look = ButtonLook::cross, .on_press = {"close-slip"}}; }

FieldItem field(const Form& form, const std::string& key, FieldItem standing) {
  if (const Form::Entry* entry = form.find(key)) {
    standing.text = entry->text;
    standing.error = entry->error;
  }
  return standing;
}

ChoiceItem choice(const Form& form, const std::string& key, ChoiceItem standing) {
  standing.chosen = form.text(key, standing.chosen);
  return standing;
}

ChoiceItem kind_choice(std::string chosen, Press on_choose) {
  ChoiceItem choice{.name = "kind", .label = words::kind_question(), .chosen = std::move(chosen), .argument = "text", .on_choose = std::move(on_choose)};
  for (const MarkKind kind : {MarkKind::landmark, MarkKind::light, MarkKind::turn, MarkKind::danger, MarkKind::other})
    choice.options.push_back({std::string(mark_kind_name(kind)), words::kind_option(kind)});
  return choice;
}

ChoiceItem mark_choice(const Document& document, std::string name, std::string label, std::string chosen, Press on_choose) {
  ChoiceItem choice{.name = std::move(name), .label = std::move(label), .chosen = std::move(chosen), .argument = "text", .is_long = true, .on_choose = std::move(on_choose)};
  choice.options.push_back({"", words::choose_mark()});
  constexpr std::size_t k_most_options = 500;  // a list past this is slow to open and slower to search
  for (const Mark& mark : document.marks) {
    if (choice.options.size() > k_most_options) break;
    choice.options.push_back({std::to_string(mark.id.value), mark.name});
  }
  return choice;
}

ChoiceItem signs_choice(SignSet chosen) {
  return {.name = "signs", .label = words::signs_question(), .options = {{"a", words::sign_set_label(SignSet::a)}, {"b", words::sign_set_label(SignSet::b)}},
          .chosen = chosen == SignSet::b ? "b" : "a", .argument = "text", .on_choose = {"type-sheet", Value::object({{"field", "signs"}})}};
}

void add_paper_choices(Panel& panel, Paper chosen, const Press& on_choose, bool with_screen) {
  const std::string name(paper_name(chosen));
  const std::size_t dash = name.find('-');
  const std::string size = name.substr(0, dash), way = dash == std::string::npos ? "" : name.substr(dash + 1);
  ChoiceItem sizes{.name = "paper", .label = words::paper_question(), .chosen = name, .argument = "text", .on_choose = on_choose};
  ChoiceItem ways{.name = "paper-way", .label = words::paper_way_question(), .chosen = name, .argument = "text", .on_choose = on_choose};
  for (const Paper paper : all_papers()) {
    if (paper == Paper::screen && !with_screen) continue;
    const std::string each(paper_name(paper));
    const std::size_t at = each.find('-');
    const std::string each_size = each.substr(0, at), each_way = at == std::string::npos ? "" : each.substr(at + 1);
    const bool same_way = way.empty() ? each_way == "across" : each_way == way;
    if (each_way.empty() || same_way) sizes.options.push_back({each, paper == Paper::screen ? words::this_screen() : each_size});
    if (!way.empty() && each_size == size) ways.options.push_back({each, each_way});
  }
  panel.items.push_back(std::move(sizes));
  if (!way.empty()) panel.items.push_back(std::move(ways));
}

void add_variation_fields(Panel& panel, const Form& form, const std::string& prefix, const std::string& by, const std::optional<PrintedVariation>& standing, const std::string& command) {
  const auto press = [&](const char* name) { return Press{command, Value::object({{"field", name}})}; };
  panel.items.push_back(ChoiceItem{.name = "variation-by", .label = words::variation_question(), .options = {{"model", words::by_the_model("")}, {"printed", words::as_printed()}},
                                   .chosen = by, .argument = "text", .on_choose = press("variation-by")});
  if (by != "printed") return;
  const words::ChartNoteText text = standing ? words::chart_note_text(*standing) : words::ChartNoteText{};
  const auto add = [&](const char* name, std::string label, const std::string& stands, Pad pad) {
    panel.items.push_back(field(form, prefix + name, {.name = name, .label = std::move(label), .text = stands, .pad = pad, .on_leave = press(name)}));
  };
  add("variation", words::printed_value_label(), text.value, Pad::variation);
  add("variation-year", words::printed_year_label(), text.year, Pad::quantity);
  add("annual-change", words::annual_change_label(), text.annual_change, Pad::variation);
}

void add_datum_choice(Panel& panel, const Form& form, const std::string& prefix, const std::string& datum, const std::string& command) {
  const bool usual = datum == "WGS84", unknown = datum == words::unknown_datum();
  ChoiceItem choice{.name = "datum", .label = words::datum_question(), .argument = "text", .on_choose = {command, Value::object({{"field", "datum"}})}};
  choice.options = {{"WGS84", "WGS84"}, {"another", words::another_datum()}, {words::unknown_datum(), words::i_do_not_know()}};
  choice.chosen = usual ? "WGS84" : unknown ? words::unknown_datum() : "another";
  panel.items.push_back(choice);
  if (choice.chosen == "another") {
    const std::string name = datum == "another" ? "" : datum;
    panel.items.push_back(field(form, prefix + "other-datum", {.name = "other-datum", .label = words::datum_name(), .text = name, .on_leave = {command, Value::object({{"field", "other-datum"}})}}));
  }
  if (!usual) panel.items.push_back(LineItem{.text = words::datum_warning(), .tone = LineTone::soft});
}

LineItem status_line(std::string text) { return {.text = std::move(text)}; }

void add_variation(Panel& panel, const Session& session) {
  const VariationInUse& variation = session.facts().variation;
  panel.items.push_back(LineItem{.text = "variation", .value = words::variation_figures(variation)});
  panel.items.push_back(LineItem{.text = words::variation_source(session.document(), variation), .tone = LineTone::soft});
  if (both_variations_shown(variation)) {
    const bool printed_leads = variation.source == VariationSource::printed;
    const Variation other = printed_leads ? *variation.model_value : *variation.printed_value;
    panel.items.push_back(LineItem{.text = printed_leads ? "the model has" : "your chart's note has", .value = degrees_minutes_text(other.deg)});
  }
  add_variation_caution(panel, variation);
}

void add_variation_caution(Panel& panel, const VariationInUse& variation) {
  const std::string text = words::variation_caution(variation);
  if (text.empty()) return;
  panel.items.push_back(CautionItem{.text = variation.value ? "Weak field" : "No variation here", .advice = text});
}

void add_standing_cautions(Panel& panel) {
  panel.items.push_back(HeadingItem{.text = "Before you rely on it", .level = 3});
  panel.items.push_back(LineItem{.text = "This sheet knows only what you put on it: no depths, no rocks, no coast. Use official charts, notices, tide tables and the rules of the place, up to date, and a second way of knowing where you are."});
  panel.items.push_back(LineItem{.text = "Keep a lookout by eye and ear, go at a speed you can stop in, make your fog signal, keep out of shipping lanes. A compass out by more than 5° should be adjusted by someone licensed."});
}

}  // namespace fogsheet::parts
