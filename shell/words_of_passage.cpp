#include "shell/words_of_passage.h"

#include <algorithm>
#include <cmath>

#include "core/base/clock_text.h"
#include "core/base/number_text.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "shell/words.h"

namespace fogsheet::words {
namespace {

std::string side_word(Side side) { return side == Side::port ? "port" : "starboard"; }

/// The ends of a passage as entered, without a plan.
std::string ends(const Document& document, const Passage& passage) {
  const Leg* first = passage.legs.empty() ? nullptr : document.legs.find(passage.legs.front().leg);
  const Leg* last = passage.legs.empty() ? nullptr : document.legs.find(passage.legs.back().leg);
  if (!first || !last) return "Passage";
  return document.marks.find(first->from)->name + " to " + document.marks.find(last->to)->name;
}

const char* correction_word(ChainTerm term) {
  switch (term) {
    case ChainTerm::stream: return " stream";
    case ChainTerm::leeway: return " leeway";
    default: return "";
  }
}

bool is_correction(ChainTerm term) {
  return term == ChainTerm::stream || term == ChainTerm::leeway || term == ChainTerm::variation || term == ChainTerm::deviation;
}

Reference reference_of(ChainTerm term) {
  return term == ChainTerm::magnetic_direction ? Reference::magnetic : term == ChainTerm::compass_direction ? Reference::compass : Reference::true_north;
}

std::string whole_minutes(std::int64_t minutes) {
  if (minutes < 60) return std::to_string(minutes) + " min";
  return std::to_string(minutes / 60) + " h " + print_padded(minutes % 60, 2);
}

std::int64_t to_minute(double seconds) { return static_cast<std::int64_t>(std::floor(seconds / k_seconds_per_minute + 0.5)); }

}  // namespace

std::string passage_title(const Document& document, const Passage& passage) { return passage.name.empty() ? ends(document, passage) : passage.name; }

std::string changed_part(const Passage& was, const Passage& is) {
  if (was.legs.size() == is.legs.size())
    for (std::size_t leg = 0; leg < is.legs.size(); ++leg)
      if (!(was.legs[leg] == is.legs[leg])) return "leg " + std::to_string(leg + 1);
  const auto part = [&](const char* name, auto... fields) { return ((was.*fields == is.*fields) && ...) ? "" : name; };
  for (const char* name : {part("name", &Passage::name), part("speed", &Passage::speed_kn), part("leeway", &Passage::leeway), part("stream", &Passage::stream), part("time", &Passage::date, &Passage::time, &Passage::is_arrival),
                           part("time zone", &Passage::zone), part("way home", &Passage::home_date, &Passage::home_time), part("tides", &Passage::tide_place, &Passage::tides), part("visibility", &Passage::visibility_nm),
                           part("turning back", &Passage::turn_back), part("note", &Passage::note), part("headings", &Passage::way), part("plotted times", &Passage::plot_every_min), part("deck log", &Passage::deck_log)})
    if (*name) return name;
  return "";
}

std::string day_in_words(Date date) {
  constexpr const char* k_days[] = {"Thursday", "Friday", "Saturday", "Sunday", "Monday", "Tuesday", "Wednesday"};
  constexpr const char* k_months[] = {"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"};
  const std::int64_t day = instant_of(date, {}, {}).seconds / k_seconds_per_day;
  const std::int64_t weekday = ((day % 7) + 7) % 7;  // 1970-01-01 was a Thursday
  return std::string(k_days[weekday]) + " " + std::to_string(date.day) + " " + k_months[date.month - 1] + " " + std::to_string(date.year);
}

std::string passage_beside(const Passage& passage, const PassagePlan& plan) {
  const std::optional<ClockTime>& entered = plan.homeward ? passage.home_time : passage.time;
  const bool is_arrival = !plan.homeward && passage.is_arrival;
  std::string text = day_in_words(plan.homeward ? passage.home_date.value_or(passage.date) : passage.date);
  if (!entered) text += " · time not entered";
  else if (is_arrival && plan.has_times && !plan.legs.empty()) text += " · leave " + clock(passage, plan.legs.front().run.departure_s) + " " + zone_name(passage.zone);
  else text += (is_arrival ? " · arrive " : " · leave ") + print_clock_time(*entered) + " " + zone_name(passage.zone);
  return text + (passage.speed_kn ? " · " + plain_number(*passage.speed_kn) + " kn through the water" : " · speed not entered");
}

CourseToHold course_to_hold(const HeldCourse& course, Rounding rounding) {
  const Chain& chain = course.chain;
  const auto held = [&](ChainTerm term, const char* unit, const char* under) {
    return CourseToHold{.figures = direction_figures(row_of(chain, term)->shown_deg, rounding), .unit = unit, .under = under};
  };
  if (row_of(chain, ChainTerm::compass_direction)) return held(ChainTerm::compass_direction, "°C", "compass");
  if (chain.deviation == DeviationAnswer::several || chain.deviation == DeviationAnswer::none) {
    CourseToHold none = held(ChainTerm::magnetic_direction, "°M", "magnetic");
    none.why_not = none.figures + none.unit + ": " + no_deviation(chain, rounding);
    return none;
  }
  if (row_of(chain, ChainTerm::magnetic_direction)) return held(ChainTerm::magnetic_direction, "°M", "magnetic");
  return {.figures = direction_figures(course.heading ? course.heading->deg() : 0, rounding), .unit = "°T", .under = "true"};
}

CourseToHold course_to_hold(const PlannedLeg& leg, Rounding rounding) {
  return leg.problem ? CourseToHold{.why_not = "none"} : course_to_hold(leg.courses.front(), rounding);
}

std::string courses_by_hour(const Passage& passage, const PlannedLeg& leg, Rounding rounding) {
  if (leg.problem || leg.courses.size() < 2) return "";
  std::string text;
  for (const HeldCourse& course : leg.courses) text += (text.empty() ? "" : " · ") + clock(passage, course.from_s) + " " + course_to_hold(course, rounding).text();
  return text;
}

std::string clock(const Passage& passage, double seconds, std::optional<Date> day) {
  const ClockFigures shown = clock_figures(nearest_instant(seconds), passage.zone, day.value_or(passage.date));
  return shown.figures + (shown.days_after == 0 ? "" : (shown.days_after > 0 ? " +" : " −") + std::to_string(std::abs(shown.days_after)) + " d");
}

std::string window(const Passage& passage, const PlannedLeg& leg, std::optional<Date> day) {
  return leg.window ? clock(passage, leg.window->from_s, day) + "–" + clock(passage, leg.window->to_s, day) : "";
}

std::string minutes_between(double from_s, double to_s) { return whole_minutes(to_minute(to_s) - to_minute(from_s)); }

std::string speed(double kn) { return print_fixed(kn, 1); }

std::string leave_mark(const Document& document, const PassageLeg& leg, bool with_verb) {
  if (!leg.leave) return "";
  const Mark* mark = document.marks.find(leg.leave->mark);
  const std::string name = mark ? mark->name : "a mark that was taken off";
  return (with_verb ? "leave " : "") + name + " to " + side_word(leg.leave->side) + (leg.leave->distance_nm > 0 ? ", " + plain_number(leg.leave->distance_nm) + " nm" : "");
}

std::string chain_line(const Chain& chain, Rounding rounding) {
  std::string text;
  for (const ChainRow& row : chain.rows) {
    if (is_correction(row.term)) {
      const bool has_letter = row.term == ChainTerm::variation || row.term == ChainTerm::deviation;
      text += std::string(row.applied_sign < 0 ? " − " : " + ") + correction_figures(row.shown_deg, rounding) + "°" + (has_letter ? east_west(row.shown_deg, rounding) : "") + correction_word(row.term);
    } else {
      text += (text.empty() ? "" : " = ") + with_letter(row.shown_deg, rounding, reference_of(row.term));
    }
  }
  return text;
}

ColumnSumItem course_sum(const PlannedLeg& leg, const HeldCourse& course, Rounding rounding, const VariationInUse& variation) {
  ColumnSumItem sum = chain_sum(course.chain, rounding, variation);
  sum.caption = "How the course comes about";
  for (ColumnSumItem::Row& row : sum.rows) {
    if (row.word == "stream") row.reason = stream_words(leg, course.stream);
    if (row.word == "leeway") row.reason = leeway_words(leg);
  }
  const auto not_entered = [](const char* word) { return ColumnSumItem::Row{.kind = SumRow::correction, .word = word, .beside = "not entered"}; };
  const auto after_first = sum.rows.begin() + (sum.rows.empty() ? 0 : 1);
  if (!leg.leeway) sum.rows.insert(leg.stream == StreamEntry::not_entered ? after_first : after_first + std::min<std::ptrdiff_t>(1, sum.rows.end() - after_first), not_entered("leeway"));
  if (leg.stream == StreamEntry::not_entered) sum.rows.insert(sum.rows.begin() + (sum.rows.empty() ? 0 : 1), not_entered("stream"));
  return sum;
}

std::string stream_words(const PlannedLeg& leg, const Stream& stream) {
  if (leg.stream == StreamEntry::not_entered) return "not entered";
  const std::string figures = direction_figures(stream.set.deg(), Rounding::whole_degrees) + "°T " + print_fixed(stream.drift_kn, 1) + " kn";
  return figures + (leg.stream == StreamEntry::by_hour ? ", by the hour" : "") + (leg.stream_source.empty() ? "" : ", " + leg.stream_source);
}

std::string leeway_words(const PlannedLeg& leg) {
  return leg.leeway ? "wind " + direction_figures(leg.leeway->wind_from_deg, Rounding::whole_degrees) + "°T, steered to windward" : "not entered";
}

std::string to_either_side(const PlannedLeg& leg) { return "either side " + print_fixed(to_either_side_nm(leg.doubt), 1) + " nm"; }

std::string danger_line(const Document& document, const Passage& passage, const PassagePlan& plan, const DangerPass& pass, std::optional<Date> day) {
  const PlannedLeg& leg = plan.legs[pass.leg];
  std::string text = document.marks.find(pass.danger)->name + ", " + print_fixed(pass.off_nm, 1) + " nm to " + side_word(pass.side);
  if (plan.has_times && leg.run.hours > 0) text += " about " + clock(passage, leg.run.departure_s + (leg.run.arrival_s - leg.run.departure_s) * pass.along_nm / leg.rhumb.distance_nm, day);
  return text;
}

CautionItem danger_caution(const Document& document, const Passage& passage, const PassagePlan& plan, const DangerPass& pass) {
  const std::string leg = "leg " + std::to_string(pass.leg + 1);
  const std::string name = document.marks.find(pass.danger)->name;
  return {.text = "Do not plan " + leg + " so: " + name + " lies within how far out you may be",
          .advice = danger_line(document, passage, plan, pass) + ", its ring " + (pass.clear_nm > 0 ? print_fixed(pass.clear_nm, 1) + " nm clear" : "on your line") + "; you may be " + print_fixed(pass.doubt_nm, 1) +
                    " nm to either side there. Move the turn, or pass it by bearings you can take."};
}

CautionItem stream_not_entered() {
  return {.text = "Stream not entered: not allowed for", .advice = "Times and courses are those of still water. The doubt counts on 1 kn from anywhere: enter the stream, from an atlas or a tide table."};
}

CautionItem gap_in_streams(const Passage& passage, const PlannedLeg& leg) {
  const StreamPiece& gap = *leg.run.gap;
  const bool past = std::abs(gap.hour) > k_stream_hours;
  const std::string hour = past ? "past the table" : gap.hour == 0 ? "at high water" : std::to_string(std::abs(gap.hour)) + " h " + (gap.hour < 0 ? "before" : "after") + " high water";
  return {.text = "The table of streams has a gap on leg " + std::to_string(leg.place + 1), .advice = "From " + clock(passage, std::max(gap.from_s, leg.run.departure_s)) + " (" + hour + ") still water was reckoned with: enter that hour" + (past ? ", or the next high water." : ".")};
}

CautionItem leg_problem(const PlannedLeg& leg) {
  return {.text = "Leg " + std::to_string(leg.place + 1) + ": no course to steer", .advice = sentence(*leg.problem)};
}

std::string deck_line(const Document& document, const Passage& passage, std::size_t line) {
  const DeckEntry& entry = passage.deck_log[line];
  std::string what;
  if (entry.kind == DeckEntryKind::departed) what = "left";
  if (entry.kind != DeckEntryKind::departed && entry.kind != DeckEntryKind::reading) {
    const auto ends_leg = [](const DeckEntry& each) { return each.kind != DeckEntryKind::departed && each.kind != DeckEntryKind::reading; };
    const auto leg = static_cast<std::size_t>(std::count_if(passage.deck_log.begin(), passage.deck_log.begin() + static_cast<std::ptrdiff_t>(line), ends_leg));
    const Leg* drawn = leg < passage.legs.size() ? document.legs.find(passage.legs[leg].leg) : nullptr;
    what = (drawn ? document.marks.find(drawn->to)->name : "end of leg " + std::to_string(leg + 1)) + (entry.kind == DeckEntryKind::seen ? ": seen" : entry.kind == DeckEntryKind::not_seen ? ": not seen" : ": passed early or late");
    if (entry.side) what += " to " + side_word(*entry.side);
    if (entry.distance_nm) what += ", " + plain_number(*entry.distance_nm) + " nm";
  }
  if (!entry.note.empty()) what += (what.empty() ? "" : "; ") + entry.note;
  return what;
}

std::string nothing_planned() { return "Draw the legs first, from turn to turn; then they make a passage, with courses, times and a card to steer by."; }

std::string stream_title(const Document& document) { return document.sheet.signs == SignSet::b ? "Current" : "Stream"; }

std::string question_waits(const std::string& question) {
  if (question == "run") return "Any two give the third: leave one empty.";
  if (question == "stream") return "Everything that was wrong counts as stream: steering, leeway and log too.";
  return "The answer stands here once all is filled in. Directions are true unless M or C is typed.";
}

std::string tides(const Passage& passage) {
  std::string text;
  for (const Tide& tide : passage.tides) {
    const std::string day = tide.date == passage.date ? "" : iso_date(tide.date) + " ";
    text += (text.empty() ? "" : ", ") + std::string(tide.is_high ? "HW " : "LW ") + (text.empty() && !passage.tide_place.empty() ? passage.tide_place + " " : "") + day + print_clock_time(tide.time) +
            (tide.height_m ? " " + plain_number(*tide.height_m) + " m" : "");
  }
  return text;
}

std::string doubts_taken(const PassagePlan& plan, const Document& document) {
  const auto lacks_stream = [](const PlannedLeg& leg) { return leg.stream == StreamEntry::not_entered || leg.run.gap; };
  const auto lacking = std::count_if(plan.legs.begin(), plan.legs.end(), lacks_stream);
  const std::string not_entered = plain_number(k_stream_not_entered_sd_kn) + " kn" + (lacking == std::ssize(plan.legs) ? " (not entered)" : " where it was not entered");
  const std::string stream = lacking == std::ssize(plan.legs) ? not_entered : plain_number(k_stream_sd_kn) + " kn" + (lacking > 0 ? ", " + not_entered : "");
  return "One standard deviation, taken for: steering " + plain_number(k_steering_sd_deg) + "° (mean of a leg), compass " + (document.compass ? "as its card says" : plain_number(k_no_card_sd_deg) + "° (no card)") + ", leeway " +
         plain_number(k_leeway_sd_deg) + "°, stream " + stream + ", log " + plain_number(k_log_sd_share * 100) + " %, start " + plain_number(k_start_sd_nm) + " nm. Windows and sides hold 19 times in 20.";
}

std::string passage_cautions() {
  return "It knows only what you marked. Use up-to-date charts, notices and tide tables, and a second way of knowing where you are. Keep a lookout by eye and ear. Go at a speed you can stop in. Sound your fog signal. "
         "Keep out of shipping lanes; expect others not to see you. Do not leave in fog. A compass out by more than 5°: have it adjusted.";
}

std::string under_way_cautions() { return "Keep a lookout by eye and ear, go at a speed you can stop in, sound your fog signal. It knows only what you marked."; }

std::string times_are_unrounded() { return "Times come from unrounded figures; a leg's minutes are the difference of its printed times."; }

}  // namespace fogsheet::words
