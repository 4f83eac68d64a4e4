#include "shell/words_of_boats.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "core/compass/bearings_swung.h"
#include "core/directions/direction_text.h"
#include "shell/words.h"
#include "shell/words_of_compass.h"

namespace fogsheet::words {
namespace {

std::string coefficient_letter(Coefficient which) { return std::string(1, static_cast<char>('A' + static_cast<int>(which))); }

std::string of_swing(const Swing& swing) {
  const Result<SwingWorked> worked = work_out(swing);
  if (!worked) return "not enough read yet";
  return "largest " + deviation_tenths(worked->findings.largest.deg) + " on " + heading_figures(worked->findings.largest_at.deg());
}

std::string of_card(const TypedCard& card) {
  if (card.entries.empty()) return "nothing entered yet";
  return card.by.empty() ? std::to_string(card.entries.size()) + " headings" : "by " + card.by;
}

std::string of_check(const Check& check) {
  const std::optional<CheckWorked> worked = work_out(check);
  if (!worked) return "nothing read yet";
  switch (worked->check.verdict) {
    case CheckVerdict::too_few: return "one reading";
    case CheckVerdict::agrees: return "agrees";
    case CheckVerdict::constant: return "constant, " + deviation_tenths(worked->check.mean_deg);
    case CheckVerdict::by_heading: return "differs by heading";
  }
  return "";
}

std::string of_trial(const Trial& trial) {
  std::vector<OnAndOff> pairs;
  for (const TrialRow& row : trial.rows)
    if (row.off_deg && row.on_deg) pairs.push_back({CompassDirection(*row.off_deg), CompassDirection(*row.on_deg)});
  if (pairs.empty()) return "nothing read yet";
  int pulling = 0;
  for (const Pull& each : interference(pairs, k_usual_reading_sd_deg)) pulling += each.matters;
  return pulling == 0 ? "nothing disturbs it" : std::to_string(pulling) + (pulling == 1 ? " thing disturbs it" : " things disturb it");
}

}  // namespace

std::string usual_compass_name() { return "Steering compass"; }
std::string another_compass_name(CompassKind kind) { return kind == CompassKind::steering ? "Second steering compass" : "Hand compass"; }
std::string a_boat() { return "This boat"; }
std::string adjusted_remark() { return "Adjusted"; }
std::string blank_remark() { return "Note"; }

std::string entry_title(const LogEntryKind& what) {
  if (const auto* remark = std::get_if<Remark>(&what)) return remark->adjusted ? "Adjustment" : "Note";
  constexpr const char* k_titles[] = {"Check", "Swing", "Card", "Trial"};
  return k_titles[what.index()];
}

std::string entry_result(const LogEntry& entry) {
  if (const auto* swing = std::get_if<Swing>(&entry.what)) return of_swing(*swing);
  if (const auto* card = std::get_if<TypedCard>(&entry.what)) return of_card(*card);
  if (const auto* check = std::get_if<Check>(&entry.what)) return of_check(*check);
  if (const auto* trial = std::get_if<Trial>(&entry.what)) return of_trial(*trial);
  return std::get<Remark>(entry.what).text;
}

std::string deviation_tenths(double deg) { return print_correction(deg, Rounding::tenths); }

std::string heading_figures(double deg) { return with_letter(deg, std::abs(deg - std::round(deg)) < 0.05 ? Rounding::whole_degrees : Rounding::tenths, Reference::compass); }

std::string largest_of(const KeptCard& card) {
  const bool none = std::all_of(card.points.begin(), card.points.end(), [](const KeptCardPoint& point) { return point.deviation_deg == 0; });
  return none ? "no deviation" : "largest " + largest_deviation(card);
}

std::string card_line(const KeptCard& card) {
  if (card.source == CardSource::nought) return card.boat + ": no deviation, by your word";
  return card.boat + ", " + card.compass + ": " + (card.source == CardSource::swing ? "swung " : "card of ") + iso_date(card.date) + ", " + largest_of(card);
}

std::string verdict(const CheckWorked& worked) {
  const CompassCheck& check = worked.check;
  switch (check.verdict) {
    case CheckVerdict::too_few: return "One reading tells of one heading only";
    case CheckVerdict::agrees: return "The compass agrees with the bearings";
    case CheckVerdict::constant: return "One constant explains it: " + deviation_tenths(check.mean_deg);
    case CheckVerdict::by_heading: return "It differs by heading";
  }
  return "";
}

std::string verdict_advice(const CheckWorked& worked) {
  const CompassCheck& check = worked.check;
  std::string advice;
  switch (check.verdict) {
    case CheckVerdict::too_few: advice = "Point the boat at more of them, all round."; break;
    case CheckVerdict::agrees: advice = "On the headings that were checked it can be steered by as it is."; break;
    case CheckVerdict::constant: advice = "The same on every heading: a lubber line that is not fore and aft, or a wrong variation. Look at those first."; break;
    case CheckVerdict::by_heading: advice = "Swing it and steer by the card, or have it adjusted."; break;
  }
  if (check.beyond_handbook) advice += " A deviation of over " + plain_number(k_adjust_from_deg) + "° is more than handbooks leave alone: look for the cause, and have it adjusted by someone licensed.";
  return advice;
}

std::string rule_of(const CompassCheck& check) {
  if (check.verdict == CheckVerdict::too_few) return "";
  return "The rule: it agrees while the mean is within " + plain_number(std::round(check.mean_allowed_deg * 10) / 10) + "° and none is over " + plain_number(std::round(check.single_allowed_deg * 10) / 10) +
         "°; a constant explains it while none is further than that from the mean. A reading is taken to be good to " + plain_number(k_usual_reading_sd_deg) + "°.";
}

std::vector<std::string> causes(const SwingWorked& worked) {
  std::vector<std::string> said;
  for (const ShapeFound& shape : worked.findings.shapes) {
    const std::string amount = plain_number(std::round(shape.amplitude_deg * 10) / 10) + "°";
    switch (shape.shape) {
      case DeviationShape::constant: said.push_back("The same all round, " + amount + ": the lubber line, or an error in the bearing or the variation."); break;
      case DeviationShape::semicircular: said.push_back("Once east and once west round the circle, up to " + amount + ": magnetised iron near the compass, or wiring."); break;
      case DeviationShape::quadrantal: said.push_back("Twice east and twice west round the circle, up to " + amount + ": soft iron lying level, such as an engine."); break;
    }
  }
  if (said.empty()) said.push_back("No cause stands out of what the readings scatter by.");
  return said;
}

std::string steering_warning(const SwingFindings& findings) {
  if (findings.largest_slope >= 1) return "Too steep to steer by: some magnetic headings have two compass headings. Have it adjusted by someone licensed first.";
  return findings.adjust ? "Deviation over " + plain_number(k_adjust_from_deg) + "°: handbooks say look for the cause and have it adjusted by someone licensed." : "";
}

std::string missing_coefficients(const SwingFit& fit) {
  std::string letters;
  for (const Coefficient which : k_coefficients)
    if (!fit.coefficients_deg[static_cast<std::size_t>(which)]) letters += (letters.empty() ? "" : ", ") + coefficient_letter(which);
  if (letters.empty()) return "";
  if (!fit.a_found && letters == "A") return "A can't be found from an object of unknown bearing: a constant error does not show.";
  return "The headings do not tell " + letters + ": read more of them, all round.";
}

std::string how_good(const SwingFit& fit) {
  if (fit.degrees_of_freedom == 0) return "Too few readings to tell how good they are: each is taken to be good to " + plain_number(fit.reading_sd_deg) + "°.";
  return "Readings scatter by " + print_fixed(fit.reading_sd_deg, 1) + "° (1 sd) about the curve.";
}

std::string method_label(SwingMethod method) {
  switch (method) {
    case SwingMethod::trusted_bearings: return "several objects of known bearing";
    case SwingMethod::known_object: return "one object of known bearing";
    case SwingMethod::unknown_object: return "one far object, bearing unknown";
    case SwingMethod::relative_bearing: return "its bearing relative to the bow";
    case SwingMethod::satellite: return "satellite track and speed";
  }
  return "";
}

std::string method_advice(SwingMethod method) {
  switch (method) {
    case SwingMethod::trusted_bearings: return "On each heading read an object's bearing over the compass, and enter what it should be.";
    case SwingMethod::known_object: return "On each heading read the object's bearing over the compass.";
    case SwingMethod::unknown_object: return "On each heading read the object's bearing over the compass. What is the same on all headings can't be found this way.";
    case SwingMethod::relative_bearing: return "On each heading read the object's angle clockwise from the bow.";
    case SwingMethod::satellite: return "In no wind, at one speed, hold each heading until the receiver is steady, and read its true track and speed. The stream is found along with the rest.";
  }
  return "";
}

ParallaxWords parallax(const Swing& swing) {
  if (swing.method == SwingMethod::satellite) return {};
  if (!swing.object_nm) return {.text = "How far the object is was not said: on a wide circle near it, parallax looks like a deviation."};
  const double most_m = largest_swinging_radius_m(*swing.object_nm * k_metres_per_nm);
  const std::string bound = "At " + plain_number(*swing.object_nm) + " nm keep the circle under " + std::to_string(static_cast<long long>(most_m)) + " m in radius: " + plain_number(k_largest_parallax_deg) + "° of parallax at most.";
  if (!swing.circle_m || *swing.circle_m <= most_m) return {.text = bound};
  const double parallax_deg = swinging_parallax_deg(*swing.circle_m, *swing.object_nm * k_metres_per_nm);
  return {.text = "A circle of " + plain_number(*swing.circle_m) + " m puts up to " + print_fixed(parallax_deg, 1) + "° into B and C. " + bound, .is_caution = true};
}

std::string misfit(const Misfit& misfit) {
  std::string text = "misses by " + print_fixed(std::abs(misfit.miss_deg), 1) + "°";
  if (misfit.studentised) text += ", " + print_fixed(std::abs(*misfit.studentised), 1) + " times its error";
  return text;
}

std::string pull(const std::string& thing, const Pull& pull) {
  const std::string name = thing.empty() ? "This" : thing;
  if (!pull.matters) return name + " does not disturb the compass, as far as two readings can tell.";
  return name + " turns the compass by " + print_fixed(std::abs(pull.deg), 1) + "°: keep it away, or off, while you steer by it.";
}

std::string adjuster_caution() { return "Check it against a bearing you trust before you need it, and have it adjusted by someone licensed where it matters."; }

std::string card_away_from(const CardAway& away) {
  std::string why;
  if (away.horizontal_far) why = "The field that turns the compass is " + print_fixed(std::abs(1 - 1 / away.permanent_factor) * 100, 0) + " % " + (away.permanent_factor > 1 ? "weaker" : "stronger") + " here than where the card was made: deviations from magnetised iron are " + print_fixed(away.permanent_factor, 2) + " times as large.";
  if (away.dip_far) why += std::string(why.empty() ? "" : " ") + "The dip differs by over " + plain_number(k_card_dip_deg) + "°: what upright soft iron does has changed.";
  if (away.other_hemisphere) why += std::string(why.empty() ? "" : " ") + "On this side of the magnetic equator the card may tilt and drag: the compass wants balancing for it.";
  return why;
}

}  // namespace fogsheet::words
