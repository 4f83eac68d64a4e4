// The rough method: several quick readings of one line, their mean, how far they lie apart, and what that means over the
// distance to run.
#include "core/base/number_text.h"
#include "core/base/quantity_text.h"
#include "core/directions/direction_figures.h"
#include "core/instruments/rough_method.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words_of_things.h"

namespace fogsheet {
namespace {

/// The distance typed, else that of the leg selected.
std::optional<double> run_nm(const Session& session) {
  const Result<Length> typed = parse_length(session.desk.rough.run);
  if (typed.ok()) return typed->nm();
  const Leg* leg = session.desk.selected_leg ? session.document().legs.find(*session.desk.selected_leg) : nullptr;
  if (!leg || !session.desk.rough.run.empty()) return std::nullopt;
  return session.facts_of(*leg).rhumb.distance_nm;
}

void add_mean(const Session& session, const std::optional<RoughMean>& mean, std::optional<double> run, Panel& slip) {
  const RoughMethod& rough = session.desk.rough;
  const Rounding rounding = session.settings.rounding;
  if (!mean) {
    slip.items.push_back(CautionItem{.text = "No mean", .advice = words::readings_cancel()});
    return;
  }
  const bool is_true = rough.ring == Reference::true_north;
  LineItem line{.text = words::rough_mean_reads(mean->mean.mean_deg, rounding, rough.ring)};
  line.readings.push_back({direction_figures(mean->mean.mean_deg, rounding), is_true ? "°T" : "°M", words::mean_of(rough.readings_deg.size())});
  slip.items.push_back(line);
  if (rough.readings_deg.size() < k_least_rough_readings) {
    slip.items.push_back(LineItem{.text = words::more_readings_wanted(rough.readings_deg.size()), .tone = LineTone::soft});
  } else {
    slip.items.push_back(LineItem{.text = "spread (1 sd)", .value = print_fixed(mean->mean.spread_deg, 1) + "°"});
    if (mean->to_either_side_nm) slip.items.push_back(LineItem{.text = words::rough_doubt(*run, *mean->to_either_side_nm), .tone = LineTone::strong});
    else if (rough.run_error.empty()) slip.items.push_back(LineItem{.text = words::run_wanted(), .tone = LineTone::soft});
  }
}

void add_sum(const Session& session, const RoughMean& rough, Panel& slip) {
  const Rounding rounding = session.settings.rounding;
  const VariationInUse& variation = session.facts().variation;
  const double mean_deg = rough.mean.mean_deg;
  const DeviationCard* card = session.facts().card_or_none();
  if (session.desk.rough.ring == Reference::true_north) slip.items.push_back(words::chain_sum(chain_from_true(TrueDirection(mean_deg), variation.value, rounding, card), rounding, variation));
  if (session.desk.rough.ring == Reference::magnetic && card) slip.items.push_back(words::chain_sum(chain_to_compass(MagneticDirection(mean_deg), {.card = card}, rounding), rounding, variation));
  else if (session.desk.rough.ring == Reference::magnetic && variation.value) slip.items.push_back(words::chain_sum(chain_from_magnetic(MagneticDirection(mean_deg), *variation.value, rounding), rounding, variation));
}

}  // namespace

Panel rough_method_slip(const Session& session) {
  const RoughMethod& rough = session.desk.rough;
  Panel slip{.name = "rough-method", .label = "Rough method"};
  slip.items.push_back(HeadingItem{.text = "Rough method", .beside = "when there is nothing to hand"});
  slip.items.push_back(parts::close_button());
  if (rough.readings_deg.empty()) slip.items.push_back(LineItem{.text = words::how_rough_method_goes(), .tone = LineTone::soft});
  ChoiceItem ring{.name = "rough-ring", .label = "Read by eye off the", .chosen = rough.ring == Reference::true_north ? "true" : "magnetic", .argument = "ring", .on_choose = {"set-rough-ring"}};
  ring.options = {{"true", "true ring"}, {"magnetic", "magnetic ring"}};
  slip.items.push_back(ring);
  slip.items.push_back(FieldItem{.name = "rough-reading", .label = "A reading: three figures, then the next", .text = rough.typed, .error = rough.typed_error, .completes_at = 3, .figures_only = true, .pad = Pad::direction, .letter = words::reference_letter(rough.ring), .on_leave = {"rough-reading"}});
  for (std::size_t i = 0; i < rough.readings_deg.size(); ++i)
    slip.items.push_back(ButtonItem{.name = "rough-reading/" + std::to_string(i), .label = words::with_letter(rough.readings_deg[i], Rounding::whole_degrees, rough.ring), .icon = "close", .on_press = {"remove-rough-reading", Value::object({{"index", static_cast<double>(i)}})}});
  const std::optional<double> run = run_nm(session);
  const std::optional<RoughMean> mean = rough_mean(rough.readings_deg, run);
  if (!rough.readings_deg.empty()) add_mean(session, mean, run, slip);
  slip.items.push_back(FieldItem{.name = "rough-run", .label = "Distance to run", .text = rough.run, .unit = "nm", .error = rough.run_error, .pad = Pad::quantity, .on_leave = {"set-rough-run"}});
  if (mean) add_sum(session, *mean, slip);
  const Leg* leg = session.desk.selected_leg ? session.document().legs.find(*session.desk.selected_leg) : nullptr;
  if (mean && leg)
    slip.items.push_back(ButtonItem{.name = "write-mean", .label = words::write_it_on(words::leg_number(session.document(), leg->id)), .look = ButtonLook::main,
                                    .on_press = {"write-on-leg", Value::object({{"leg", std::to_string(leg->id.value)}, {"bearing_deg", round_direction_deg(mean->mean.mean_deg, session.settings.rounding)}, {"reference", words::reference_name(rough.ring)}})}});
  if (!rough.readings_deg.empty()) slip.items.push_back(ButtonItem{.name = "clear-rough", .label = "Start again", .on_press = {"clear-rough"}});
  return slip;
}

}  // namespace fogsheet
