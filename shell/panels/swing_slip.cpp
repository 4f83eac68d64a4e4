// A swing: how it is done, a reading a heading, and what they say: coefficients, what does not belong, causes, the card.
#include <algorithm>

#include "core/base/number_text.h"
#include "core/boat/swing_record.h"
#include "core/directions/direction_figures.h"
#include "core/figure/deviation_curve.h"
#include "core/formats/svg.h"
#include "shell/log_fields.h"
#include "shell/panels/log_parts.h"
#include "shell/panels/parts.h"
#include "shell/words.h"
#include "shell/words_of_boats.h"
#include "shell/words_of_compass.h"

namespace fogsheet::log_parts {
namespace {

std::string letter_of(const Swing& swing) { return swing.reference == Reference::true_north ? "T" : "M"; }

void add_how(Panel& slip, const Session& session, const LogEntry& entry, const Swing& swing) {
  slip.items.push_back(field(session, entry, "date", "Day", Pad::date));
  ChoiceItem method = choice(entry, "method", "By", {});
  for (const SwingMethod each : {SwingMethod::known_object, SwingMethod::trusted_bearings, SwingMethod::unknown_object, SwingMethod::relative_bearing, SwingMethod::satellite})
    method.options.push_back({method_name(each), words::method_label(each)});
  method.is_long = true;
  slip.items.push_back(std::move(method));
  const bool one_object = swing.method == SwingMethod::known_object || swing.method == SwingMethod::relative_bearing;
  if (one_object || swing.method == SwingMethod::trusted_bearings) slip.items.push_back(choice(entry, "reference", "Known bearings are", {{"magnetic", "magnetic"}, {"true", "true"}}));
  if (one_object) slip.items.push_back(direction(session, entry, "bearing", "The object's bearing", letter_of(swing)));
  if (swing.method == SwingMethod::satellite || swing.reference == Reference::true_north) slip.items.push_back(field(session, entry, "variation", "Variation, unrounded", Pad::variation));
  slip.items.push_back(LineItem{.text = words::method_advice(swing.method), .tone = LineTone::soft});
}

/// What may be noted besides: where, what was looked at, how far off, how wide the circle.
void add_circumstances(Panel& slip, const Session& session, const LogEntry& entry, const Swing& swing) {
  slip.items.push_back(HeadingItem{.text = "Where and how", .level = 3});
  slip.items.push_back(field(session, entry, "place", "Where", Pad::none));
  if (swing.method == SwingMethod::satellite) return;
  slip.items.push_back(field(session, entry, "object", "What was looked at", Pad::none));
  slip.items.push_back(field(session, entry, "distance", "How far off it is", Pad::quantity, "nm"));
  slip.items.push_back(field(session, entry, "circle", "Radius of the circle swung on", Pad::quantity, "m"));
  const words::ParallaxWords parallax = words::parallax(swing);
  if (parallax.is_caution) slip.items.push_back(CautionItem{.text = "The circle is too wide", .advice = parallax.text});
  else if (!parallax.text.empty()) slip.items.push_back(LineItem{.text = parallax.text, .tone = LineTone::soft});
}

void add_rows(Panel& slip, const Session& session, const LogEntry& entry, const Swing& swing) {
  const bool satellite = swing.method == SwingMethod::satellite, relative = swing.method == SwingMethod::relative_bearing;
  for (std::size_t i = 0; i < swing.rows.size(); ++i) {
    const std::string heading = words::heading_figures(swing.rows[i].heading_deg);
    const std::string what = satellite ? "track" : relative ? "from the bow" : "bearing";
    slip.items.push_back(direction(session, entry, row_field_name(i, "read"), "Heading " + heading + ", " + what, satellite ? "T" : relative ? "" : "C"));
    if (swing.method == SwingMethod::trusted_bearings) slip.items.push_back(direction(session, entry, row_field_name(i, "trusted"), "its known bearing", letter_of(swing)));
    if (satellite) slip.items.push_back(field(session, entry, row_field_name(i, "speed"), "speed over the ground", Pad::quantity, "kn"));
  }
  slip.items.push_back(ButtonItem{.name = "add-row", .label = "One more heading", .on_press = {"add-row"}});
}

/// The misfit of a row, if it was fitted.
const Misfit* misfit_of(const SwingWorked& worked, std::size_t row) {
  for (std::size_t i = 0; i < worked.counted.size(); ++i)
    if (worked.counted[i] == row && i < worked.fit.misfits.size()) return &worked.fit.misfits[i];
  return nullptr;
}

std::string remark_on(const SwingRow& row, const Misfit* misfit) {
  std::string text = row.left_out ? "left out" : misfit && misfit->does_not_belong ? words::misfit(*misfit) : misfit ? print_fixed(misfit->miss_deg, 1) + "°" : "";
  if (row.turning != TurningTo::not_said) text += row.turning == TurningTo::port ? " to port" : " to starboard";
  return text;
}

TableItem readings_table(const Swing& swing, const Result<SwingWorked>& worked) {
  TableItem table{.name = "readings", .caption = "Readings: press one to change it or leave it out", .columns = {{"heading", true}, {"read", true}, {"deviation", true}, {"misses by"}}};
  const std::vector<std::optional<Deviation>> deviations = worked ? worked->deviations : deviations_of(swing);
  for (std::size_t i = 0; i < swing.rows.size(); ++i) {
    const SwingRow& row = swing.rows[i];
    const std::string read = row.read_deg ? direction_figures(*row.read_deg, Rounding::tenths) + "°" : "–";
    table.rows.push_back({words::heading_figures(row.heading_deg), read, deviations[i] ? words::deviation_tenths(deviations[i]->deg) : "–", remark_on(row, worked ? misfit_of(*worked, i) : nullptr)});
    table.row_presses.push_back({"open-row", Value::object({{"row", static_cast<double>(i)}})});
  }
  return table;
}

void add_open_row(Panel& slip, const Session& session, const LogEntry& entry, const Swing& swing) {
  if (!session.compass_desk.row || *session.compass_desk.row >= swing.rows.size()) return;
  const std::size_t row = *session.compass_desk.row;
  const Value place = Value::object({{"row", static_cast<double>(row)}});
  const bool left_out = swing.rows[row].left_out;
  slip.items.push_back(HeadingItem{.text = "Reading on " + words::heading_figures(swing.rows[row].heading_deg), .level = 3});
  slip.items.push_back(direction(session, entry, row_field_name(row, "heading"), "Heading by compass", "C"));
  slip.items.push_back(choice(entry, row_field_name(row, "turning"), "She was turning to", {{"none", "not said"}, {"starboard", "starboard"}, {"port", "port"}}));
  slip.items.push_back(field(session, entry, row_field_name(row, "time"), "At, as four figures", Pad::quantity));
  slip.items.push_back(ButtonItem{.name = "leave-out-row", .label = left_out ? "Let it count again" : "Leave it out", .pressed = left_out, .on_press = {"leave-out-row", place}});
  slip.items.push_back(ButtonItem{.name = "strike-out-row", .label = "Strike it out", .on_press = {"strike-out-row", place}});
}

/// The hand method of the books beside the fit, where it has its eight headings.
std::optional<ByCoefficient> by_hand(const Swing& swing, const SwingWorked& worked) {
  std::array<double, 8> deviations_deg{};
  for (int i = 0; i < 8; ++i) {
    bool found = false;
    for (const std::size_t row : worked.counted) {
      if (found || swing.rows[row].heading_deg != 45.0 * i || !worked.deviations[row]) continue;
      deviations_deg[static_cast<std::size_t>(i)] = worked.deviations[row]->deg;
      found = true;
    }
    if (!found) return std::nullopt;
  }
  return coefficients_by_hand(deviations_deg);
}

TableItem coefficients_table(const Swing& swing, const SwingWorked& worked) {
  const std::optional<ByCoefficient> hand = by_hand(swing, worked);
  TableItem table{.name = "coefficients", .caption = "Coefficients, east positive, ± one standard error", .columns = {{"coefficient"}, {"least squares", true}}};
  if (hand) table.columns.push_back({"by hand", true});
  for (const Coefficient which : k_coefficients) {
    table.rows.push_back({words::coefficient_name(which), words::coefficient_figures(worked.fit, which)});
    if (hand) table.rows.back().push_back(print_fixed(of(*hand, which), 1) + "°");
  }
  return table;
}

void add_findings(Panel& slip, const Swing& swing, const SwingWorked& worked) {
  slip.items.push_back(HeadingItem{.text = "What they say", .beside = "largest " + words::deviation_tenths(worked.findings.largest.deg) + " on " + words::heading_figures(worked.findings.largest_at.deg()), .level = 3});
  if (const std::string warning = words::steering_warning(worked.findings); !warning.empty()) slip.items.push_back(CautionItem{.text = "Have it adjusted", .advice = warning});
  for (const std::string& cause : words::causes(worked)) slip.items.push_back(LineItem{.text = cause});
  const DeviationCurve curve = curve_of(swing, worked);
  slip.items.push_back(FigureItem{.name = "curve", .text = "Curve of deviation by compass heading, with the readings.", .svg = panel_svg(deviation_curve(curve, k_panel_curve), {0, 0, k_panel_curve.width, k_panel_curve.height})});
  slip.items.push_back(LineItem{.text = words::curve_key(curve), .tone = LineTone::soft});
  slip.items.push_back(coefficients_table(swing, worked));
  if (const std::string missing = words::missing_coefficients(worked.fit); !missing.empty()) slip.items.push_back(LineItem{.text = missing, .tone = LineTone::strong});
  slip.items.push_back(LineItem{.text = words::how_good(worked.fit), .tone = LineTone::soft});
  if (worked.over_ground) {
    const SatelliteSwing& ground = *worked.over_ground;
    slip.items.push_back(LineItem{.text = "stream that was found", .value = words::with_letter(ground.set.deg(), Rounding::whole_degrees, Reference::true_north) + " " + print_fixed(ground.drift_kn, 1) + " kn"});
    slip.items.push_back(LineItem{.text = "speed through the water", .value = print_fixed(ground.speed_through_water_kn, 1) + " kn"});
  }
  slip.items.push_back(LineItem{.text = words::heeling_not_measured(), .tone = LineTone::soft});
}

}  // namespace

void add_swing(Panel& slip, const Session& session, const LogEntry& entry, const Swing& swing) {
  const Result<SwingWorked> worked = work_out(swing);
  add_how(slip, session, entry, swing);
  add_rows(slip, session, entry, swing);
  add_circumstances(slip, session, entry, swing);
  slip.beside_from = slip.items.size();
  slip.items.push_back(readings_table(swing, worked));
  add_open_row(slip, session, entry, swing);
  if (!worked) {
    const bool begun = std::any_of(swing.rows.begin(), swing.rows.end(), [](const SwingRow& row) { return row.read_deg.has_value(); });
    if (begun) slip.items.push_back(LineItem{.text = words::sentence(worked.problem()), .tone = LineTone::soft});
    return;
  }
  add_findings(slip, swing, *worked);
  add_card(slip, session, entry);
}

}  // namespace fogsheet::log_parts
