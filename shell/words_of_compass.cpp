#include "shell/words_of_compass.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "core/compass/compass_check.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "shell/words.h"

namespace fogsheet::words {
namespace {

std::string degrees(double deg, int decimals = 1) { return print_fixed(deg, decimals) + "°"; }
std::string doubt(double sd_deg) { return "± " + degrees(sd_deg); }

const char* by_method(SwingMethod method) {
  switch (method) {
    case SwingMethod::trusted_bearings: return "By trusted bearings, read over the compass";
    case SwingMethod::known_object: return "By one object of known bearing, read over the compass";
    case SwingMethod::unknown_object: return "By one far object of unknown bearing, read over the compass";
    case SwingMethod::relative_bearing: return "By the angle from the bow to an object of known bearing";
    case SwingMethod::satellite: return "By satellite track and speed in no wind, the stream found along with it";
  }
  return "";
}

std::size_t count(const DeviationCurve& curve, ReadingStanding standing) {
  return static_cast<std::size_t>(std::count_if(curve.readings.begin(), curve.readings.end(), [&](const CurveReading& reading) { return reading.standing == standing; }));
}

}  // namespace

std::string card_made(const CardPage& page) {
  const std::string day = iso_date(page.card.date);
  return page.card.source == CardSource::swing ? "swung " + day : page.card.source == CardSource::typed ? "adjuster's card of " + day : "said to have none, " + day;
}

std::string how_card_made(const CardPage& page) {
  if (page.card.source == CardSource::nought) return "Not measured: taken for nought on every heading by word of who entered it.";
  if (!page.swing) return page.by.empty() ? "Typed in from an adjuster's card." : "Typed in from the card of " + page.by + ".";
  std::string text = by_method(page.swing->method);
  if (!page.swing->object.empty()) text += ": " + page.swing->object;
  if (page.swing->object_nm) text += ", " + distance(*page.swing->object_nm).text() + " off";
  if (!page.swing->place.empty()) text += "; " + page.swing->place;
  return text + ".";
}

std::string readings_counted(const DeviationCurve& curve) {
  const std::size_t odd = count(curve, ReadingStanding::does_not_belong), out = count(curve, ReadingStanding::left_out);
  const std::size_t counted = count(curve, ReadingStanding::counted) + odd;
  std::string text = std::to_string(counted) + (counted == 1 ? " reading counted" : " readings counted");
  if (odd > 0) text += ", of which " + std::to_string(odd) + (odd == 1 ? " does not belong" : " do not belong");
  if (out > 0) text += "; " + std::to_string(out) + " left out";
  return text + ".";
}

std::string variation_used(const SwingUsed& swing) {
  if (!swing.variation_deg) return "No variation went into it.";
  const double variation_deg = *swing.variation_deg;
  std::string figures = variation_deg == 0 ? "0°" : print_fixed(std::abs(variation_deg), 2) + "°" + (variation_deg < 0 ? "W" : "E");
  if (swing.variation_sd_deg > 0) figures += " " + doubt(swing.variation_sd_deg);
  return "Variation used: " + figures + (swing.variation_source.empty() ? "" : ", " + swing.variation_source) + ".";
}

std::string coefficient_name(Coefficient which) {
  switch (which) {
    case Coefficient::a: return "A, constant";
    case Coefficient::b: return "B, greatest on E and W";
    case Coefficient::c: return "C, greatest on N and S";
    case Coefficient::d: return "D, greatest on NE, SE, SW, NW";
    case Coefficient::e: return "E, greatest on N, E, S, W";
  }
  return "";
}

std::string coefficient_figures(const SwingFit& fit, Coefficient which) {
  if (const std::optional<double>& value = fit.coefficients_deg[static_cast<std::size_t>(which)]) {
    const std::string size = degrees(std::abs(*value));
    const std::string sign = size == "0.0°" ? "" : *value < 0 ? "−" : "+";
    return sign + size + " " + doubt(of(fit.se_deg, which));
  }
  const bool unknown_bearing = which == Coefficient::a && !fit.a_found;
  return unknown_bearing ? "not found: bearing not known" : "not found: too few headings";
}

std::string reading_worth(const SwingFit& fit) { return doubt(fit.reading_sd_deg) + (fit.degrees_of_freedom > 0 ? "" : ", as assumed"); }
std::string what_doubt_is() { return "± is one standard deviation."; }

std::string largest_deviation(const KeptCard& card) {
  const auto largest = std::max_element(card.points.begin(), card.points.end(), [](const KeptCardPoint& a, const KeptCardPoint& b) { return std::abs(a.deviation_deg) < std::abs(b.deviation_deg); });
  return print_correction(largest->deviation_deg, Rounding::tenths) + " on " + print_direction(largest->heading_deg, Reference::compass, Rounding::whole_degrees);
}

std::string worth_not_known() { return "How good it is was not stated: courses by it are reckoned to " + degrees(k_unswung_sd_deg, 0) + " (one standard deviation)."; }
std::string heeling_not_measured() { return "Heeling error was not measured: upright only."; }

std::string curve_key(const DeviationCurve& curve) {
  std::string key;
  const auto add = [&](bool there, const char* words) {
    if (there) key += (key.empty() ? "" : " · ") + std::string(words);
  };
  add(count(curve, ReadingStanding::counted) > 0, "ring: a reading");
  add(count(curve, ReadingStanding::left_out) > 0, "cross: left out");
  add(count(curve, ReadingStanding::does_not_belong) > 0, "diamond: does not belong, but counts");
  const bool band = std::any_of(curve.by_degree.begin(), curve.by_degree.end(), [](const std::optional<CurvePoint>& point) { return point && point->sd_deg > 0; });
  add(band, "hatched: within it two times in three");
  const CurvePlot plot = curve_plot(curve, k_printed_curve);
  const bool beyond = std::any_of(curve.readings.begin(), curve.readings.end(), [&](const CurveReading& reading) { return reading.deviation.deg < plot.least_deg || reading.deviation.deg > plot.most_deg; });
  add(beyond, "arrowhead: lies further out");
  return key;
}

std::string curve_said(const CardPage& page) { return "Curve of deviation by compass heading; largest " + largest_deviation(page.card) + "."; }

std::string heading_to_steer(const Chain& chain, Rounding rounding) {
  switch (chain.deviation) {
    case DeviationAnswer::one: return print_direction(chain.rows.back().shown_deg, Reference::compass, rounding);
    case DeviationAnswer::several: {
      // The letter once, at the end: "001, 037 or 323°C".
      const std::vector<CompassDirection>& headings = chain.candidates;
      std::string text;
      for (std::size_t i = 0; i + 1 < headings.size(); ++i) text += direction_figures(headings[i].deg(), rounding) + (i + 2 < headings.size() ? ", " : " or ");
      return text + print_direction(headings.back().deg(), Reference::compass, rounding);
    }
    case DeviationAnswer::none:
    case DeviationAnswer::not_entered: break;
  }
  return "no heading";
}

std::string no_deviation_there() { return "not found"; }

std::string field_there(const CardField& field) {
  const std::string end = field.inclination_deg < 0 ? ", south end down" : ", north end down";
  return "Made where the field's horizontal part is " + print_fixed(field.horizontal_nt, 0) + " nT and its dip " + degrees(std::abs(field.inclination_deg)) + end + ".";
}

std::string swing_again_after() { return "After an adjustment, a lightning strike, a long lay-up, or any change of iron, wiring or gear near the compass."; }
std::string swing_again_away() { return "Where the field's horizontal part is over " + print_fixed(100 * k_card_horizontal_share, 0) + " % or its dip over " + degrees(k_card_dip_deg, 0) + " off those it was made at."; }
std::string swing_again_by(Date due) { return "By " + iso_date(due) + " at the latest: two years, common practice."; }

std::string card_cautions() {
  return "Check it against a bearing you can trust before you need it. Have a compass that is out by more than " + degrees(k_adjust_from_deg, 0) +
         " adjusted by someone licensed, and any compass where lives or the law depend on it. Keep telephones, tools and loudspeakers away from it. One source is a guess: keep a second way of knowing where you are.";
}

}  // namespace fogsheet::words
