// The sentences of passages: cards, legs, times, what was not entered.
#pragma once

#include <string>
#include <vector>

#include "core/passage/danger_pass.h"
#include "core/passage/passage_plan.h"
#include "shell/panels/panel.h"

namespace fogsheet {
struct Session;
}

namespace fogsheet::words {

/// Its name, or its ends: "Off Pellow to Off Tolver".
std::string passage_title(const Document& document, const Passage& passage);
/// "leave 0640 UTC+1 · 5 kn through the water"; what was not entered says so.
std::string passage_beside(const Passage& passage, const PassagePlan& plan);
/// What of a passage was changed, for the label of the step: "speed", "leg 2".
std::string changed_part(const Passage& was, const Passage& is);
/// "Saturday 20 June 2026".
std::string day_in_words(Date date);

/// What is held, as far as it is known: by compass, else magnetic, else true; several hour by hour.
struct CourseToHold {
  std::string figures;  // "107"
  std::string unit;     // "°C"
  std::string under;    // "compass", "magnetic", "true"
  std::string why_not;  // in place of the figures
  std::string text() const { return why_not.empty() ? figures + unit : why_not; }
};
CourseToHold course_to_hold(const HeldCourse& course, Rounding rounding);
CourseToHold course_to_hold(const PlannedLeg& leg, Rounding rounding);
/// "0640 107°C, 0712 111°C": where there are several; else empty.
std::string courses_by_hour(const Passage& passage, const PlannedLeg& leg, Rounding rounding);

/// "0727", the day after with "+1 d"; to the nearest minute, in the passage's zone.
/// @param day  that no "+1 d" stands for; the passage's when none.
std::string clock(const Passage& passage, double seconds, std::optional<Date> day = {});
/// "0721–0733"; empty without times.
std::string window(const Passage& passage, const PlannedLeg& leg, std::optional<Date> day = {});
/// "2 h 21", "47 min": the difference of the times as they are printed.
std::string minutes_between(double from_s, double to_s);
std::string speed(double kn);  // "5.2"

/// "leave Gannet Post to starboard, 0.4 nm"; "Gannet Post to starboard, 0.4 nm" without the word. Empty where none was entered.
std::string leave_mark(const Document& document, const PassageLeg& leg, bool with_verb);
/// "096°T + 8° stream = 104°T − 2° leeway = 102°T + 9°W = 111°M − 4°E = 107°C".
std::string chain_line(const Chain& chain, Rounding rounding);
/// The column of a held course: what was not entered has a row that says so.
ColumnSumItem course_sum(const PlannedLeg& leg, const HeldCourse& course, Rounding rounding, const VariationInUse& variation);
/// "352°T 0.7 kn, tidal atlas"; "not entered".
std::string stream_words(const PlannedLeg& leg, const Stream& stream);
std::string leeway_words(const PlannedLeg& leg);

/// "either side 0.6 nm".
std::string to_either_side(const PlannedLeg& leg);
/// "1.0 nm to starboard, and you may be 1.3 nm out there."
CautionItem danger_caution(const Document& document, const Passage& passage, const PassagePlan& plan, const DangerPass& pass);
std::string danger_line(const Document& document, const Passage& passage, const PassagePlan& plan, const DangerPass& pass, std::optional<Date> day = {});

CautionItem stream_not_entered();
CautionItem gap_in_streams(const Passage& passage, const PlannedLeg& leg);
CautionItem leg_problem(const PlannedLeg& leg);
/// A line of the deck log: "left", "Off Sarn: seen to port, 0.4 nm".
std::string deck_line(const Document& document, const Passage& passage, std::size_t line);
std::string nothing_planned();
/// "Stream", or "Current" where the sheet wears the American signs.
std::string stream_title(const Document& document);
std::string question_waits(const std::string& question);
std::string tides(const Passage& passage);
std::string doubts_taken(const PassagePlan& plan, const Document& document);
std::string passage_cautions();
std::string under_way_cautions();
std::string times_are_unrounded();
inline std::string small_card_leaves_out() { return "The small card leaves out sums, minutes, the way home, deviation and positions."; }

}  // namespace fogsheet::words
