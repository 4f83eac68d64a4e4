// The passage card as it goes on paper: one page that a tired person can read by a dim red light. The upper part alone must do.
#include <algorithm>

#include "core/base/number_text.h"
#include "core/directions/direction_text.h"
#include "core/passage/danger_pass.h"
#include "core/positions/position_figures.h"
#include "shell/panels/panels.h"
#include "shell/words.h"
#include "shell/words_of_boats.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

constexpr const char* k_to_write_in = "________";
constexpr int k_card_step_deg = 30;

class CardWriter {
 public:
  CardWriter(Panel& panel, const Session& session, const Passage& passage, bool is_small)
      : panel_(panel), session_(session), document_(session.document()), passage_(passage), plan_(session.plan()), rounding_(session.settings.rounding), is_small_(is_small) {}

  void write() {
    panel_.items.push_back(HeadingItem{.text = words::passage_title(document_, passage_), .beside = words::day_in_words(passage_.date) + (document_.compass ? " · " + document_.compass->boat : "")});
    head();
    legs();
    if (!is_small_) {
      way_home();
      deviation();
      positions();
    }
    cautions();
  }

 private:
  void part(const char* title) { panel_.items.push_back(HeadingItem{.text = title, .level = 3}); }
  void line(std::string text, LineTone tone = LineTone::body) {
    if (!text.empty()) panel_.items.push_back(LineItem{.text = std::move(text), .tone = tone});
  }

  void head() {
    std::string times = plan_.legs.empty() || !plan_.has_times ? "leave " + std::string(k_to_write_in) : "leave " + words::clock(passage_, plan_.legs.front().run.departure_s);
    times += " " + zone_name(passage_.zone);
    if (passage_.speed_kn) times += " · " + words::plain_number(*passage_.speed_kn) + " kn through the water";
    const std::string tides = words::tides(passage_);
    if (!tides.empty()) times += " · " + tides;
    line(times + " · log " + k_to_write_in, LineTone::strong);
    std::string weather = "stream " + (plan_.legs.empty() || plan_.legs.front().problem ? std::string("not worked out") : words::stream_words(plan_.legs.front(), plan_.legs.front().courses.front().stream));
    weather += passage_.leeway ? " · leeway " + words::plain_number(passage_.leeway->angle_deg) + "°, wind " + print_direction(passage_.leeway->wind_from_deg, Reference::true_north, Rounding::whole_degrees) : " · leeway not entered";
    if (passage_.visibility_nm) weather += " · visibility " + words::plain_number(*passage_.visibility_nm) + " nm";
    line(weather);
  }

  void legs() {
    TableItem table{.name = "card-legs", .caption = "Legs", .columns = {{"hold"}, {"towards"}, {"nm", true}, {"expect", true}}};
    if (!is_small_) table.columns = {{"hold"}, {"towards"}, {"nm", true}, {"time", true}, {"expect", true}, {"log", true}};
    const std::vector<DangerPass> passes = danger_passes(document_, plan_);
    for (std::size_t i = 0; i < plan_.legs.size(); ++i) table.rows.push_back(row(i, passes));
    if (plan_.complete && plan_.hours > 0) table.rows.push_back(cells("in all", "", words::distance(plan_.distance_nm).figures, words::minutes_between(plan_.legs.front().run.departure_s, plan_.legs.back().run.arrival_s), ""));
    panel_.items.push_back(std::move(table));
    if (std::any_of(plan_.legs.begin(), plan_.legs.end(), [](const PlannedLeg& leg) { return leg.stream == StreamEntry::not_entered; })) {
      const CautionItem caution = words::stream_not_entered();
      line(caution.text + ". " + caution.advice, LineTone::strong);
    }
    if (plan_.problem) line(words::sentence(*plan_.problem), LineTone::strong);
    if (!passage_.turn_back.empty()) line("Turn back if " + passage_.turn_back, LineTone::strong);
    if (!passage_.note.empty()) line(passage_.note);
  }

  /// A row of the legs: the small card has no room for times and the log.
  std::vector<std::string> cells(std::string hold, std::string towards, std::string nm, std::string time, std::string expect) const {
    if (is_small_) return {std::move(hold), std::move(towards), std::move(nm), std::move(expect)};
    return {std::move(hold), std::move(towards), std::move(nm), std::move(time), std::move(expect), ""};
  }

  std::vector<std::string> row(std::size_t index, const std::vector<DangerPass>& passes) {
    const PlannedLeg& leg = plan_.legs[index];
    const PassageLeg& entered = passage_.legs[leg.place];
    const Mark* to = document_.marks.find(leg.to);
    if (leg.problem) return cells("–", (to ? to->name : entered.name) + "\n" + words::sentence(*leg.problem), "", "", "");
    const words::CourseToHold hold = words::course_to_hold(leg, rounding_);
    std::string towards = to->name;
    const auto more = [&](const std::string& text) {
      if (!text.empty()) towards += "\n" + text;
    };
    more(words::leave_mark(document_, entered, true));
    more(hold.why_not);
    more(words::courses_by_hour(passage_, leg, rounding_));
    if (!is_small_) more(words::chain_line(leg.courses.front().chain, rounding_));
    const std::string side = leg.speed_kn > 0 ? "you may be " + words::to_either_side(leg) : "";
    more(entered.look_for.empty() ? side : entered.look_for + (side.empty() ? "" : "; " + side));
    if (plan_.has_times && leg.window && !is_small_) more("Not seen by " + words::clock(passage_, leg.window->to_s) + ": stop, listen.");
    if (leg.run.gap) more(words::gap_in_streams(passage_, leg).advice);
    for (const DangerPass& pass : passes)
      if (pass.leg == index) more((pass.in_doubt() ? "Danger within how far out you may be: " : "Danger: ") + words::danger_line(document_, passage_, plan_, pass));
    const bool runs = leg.speed_kn > 0;
    return cells(hold.figures + "°\n" + hold.under, towards, words::distance(leg.rhumb.distance_nm).figures, runs ? words::minutes_between(leg.run.departure_s, leg.run.arrival_s) : "",
                 runs && plan_.has_times ? words::clock(passage_, leg.run.arrival_s) + "\n" + words::window(passage_, leg) : "");
  }

  void way_home() {
    if (!passage_.home_time) return;
    const PassagePlan& home = session_.plan(true);
    TableItem table{.name = "card-home", .caption = "The way home", .columns = {{"hold"}, {"towards"}, {"nm", true}, {"expect", true}}};
    for (const PlannedLeg& leg : home.legs) {
      const Mark* to = document_.marks.find(leg.to);
      table.rows.push_back({words::course_to_hold(leg, rounding_).text(), to ? to->name : "", to ? words::distance(leg.rhumb.distance_nm).figures : "", leg.problem || leg.speed_kn == 0 || !home.has_times ? "" : words::clock(passage_, leg.run.arrival_s)});
    }
    panel_.items.push_back(std::move(table));
    line(home.problem ? words::sentence(*home.problem) : "leave " + words::clock(passage_, home.legs.front().run.departure_s) + ": worked out afresh for its own time, not turned round", LineTone::soft);
  }

  void deviation() {
    if (!document_.compass) {
      line("Deviation not entered: courses are magnetic. Allow for your compass.", LineTone::strong);
      return;
    }
    const DeviationCard card = document_.compass->card();
    TableItem table{.name = "card-deviation", .caption = "Deviation, by compass heading", .columns = std::vector<TableItem::Column>(6, {"", true})};
    for (int half = 0; half < 360; half += 180) {
      std::vector<std::string> cells;
      for (int deg = half; deg < half + 180; deg += k_card_step_deg) {
        const std::optional<Deviation> deviation = card.at(CompassDirection(deg));
        cells.push_back(print_padded(deg, 3) + "\n" + (deviation ? print_correction(deviation->deg, rounding_) : "–"));
      }
      table.rows.push_back(std::move(cells));
    }
    panel_.items.push_back(std::move(table));
    line(words::card_line(*document_.compass), LineTone::soft);
  }

  void positions() {
    TableItem table{.name = "card-positions", .caption = "Turning points", .columns = {{"turn"}, {"position", true}}};
    std::vector<MarkId> turns;
    for (const PlannedLeg& leg : plan_.legs)
      for (const MarkId end : {leg.from, leg.to})
        if (document_.marks.find(end) && std::find(turns.begin(), turns.end(), end) == turns.end()) turns.push_back(end);
    constexpr std::size_t k_most_shown = 12;
    for (std::size_t i = 0; i < std::min(turns.size(), k_most_shown); ++i) {
      const Mark& mark = *document_.marks.find(turns[i]);
      table.rows.push_back({mark.name, position_figures(unquantise(mark.at), 2)});
    }
    panel_.items.push_back(std::move(table));
    if (turns.size() > k_most_shown) line(std::to_string(turns.size() - k_most_shown) + " more turning points are on the sheet.", LineTone::soft);
  }

  void cautions() {
    part("Before you rely on this");
    line(words::passage_cautions());
    line("variation " + words::variation_figures(session_.facts().variation) + ", " + words::variation_source(document_, session_.facts().variation) + "; positions on " + document_.sheet.datum + ", your chart's datum " + k_to_write_in, LineTone::soft);
    if (is_small_) return;
    line(words::times_are_unrounded() + " " + words::doubts_taken(plan_, document_), LineTone::soft);
  }

  Panel& panel_;
  const Session& session_;
  const Document& document_;
  const Passage& passage_;
  const PassagePlan& plan_;
  Rounding rounding_;
  bool is_small_;
};

}  // namespace

Panel passage_page(const Session& session) {
  const bool is_small = session.desk.small_card;
  Panel panel{.name = is_small ? "passage-page-small" : "passage-page", .label = "Passage card", .place = PanelPlace::page};
  CardWriter(panel, session, *session.passage(), is_small).write();
  return panel;
}

}  // namespace fogsheet
