// The words of forms and lists: what fields ask, what buttons do, what stands where nothing is yet. Sentences for what is
// wrong are in words.h.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/document/document.h"
#include "core/figure/legend_figure.h"

namespace fogsheet::words {

// -- marks and legs
inline std::string kind_question() { return "What it is"; }
std::string kind_option(MarkKind kind);  // shorter than kind_label, for a choice
inline std::string choose_mark() { return "choose a mark …"; }
inline std::string name_label() { return "Name"; }
inline std::string position_label() { return "Position, latitude first"; }
inline std::string radius_label() { return "Keep out of"; }
inline std::string height_label() { return "Height, if known"; }
inline std::string note_label() { return "Note"; }
inline std::string distance_label() { return "distance"; }
inline std::string new_mark_title() { return "Add a mark"; }
inline std::string new_mark_beside() { return "by typing; or take Mark and press where it stands"; }
inline std::string where_question() { return "Where it stands"; }
inline std::string by_position() { return "position"; }
inline std::string by_bearing() { return "from a mark"; }
inline std::string by_crossing() { return "two lines"; }
inline std::string from_mark() { return "From"; }
inline std::string bearing_from_it() { return "Bearing from there, T or M"; }
std::string line_through(int which);      // "First line, through"
std::string bearing_of_line(int which);   // "Its bearing, T or M"
inline std::string add_the_mark() { return "Add the mark"; }
inline std::string marks_and_legs() { return "Marks and legs"; }
inline std::string mark_slip_label() { return "Mark"; }
inline std::string leg_slip_label() { return "Leg"; }
std::string leg_number(std::size_t number);  // "leg 2"
inline std::string earlier() { return "Up the list"; }
inline std::string later() { return "Down the list"; }
inline std::string first_already() { return "It is the first already."; }
inline std::string last_already() { return "It is the last already."; }
inline std::string copy_it() { return "Copy it"; }
inline std::string rub_it_out() { return "Rub it out"; }
inline std::string put_turn_in() { return "Put a turn in it"; }
inline std::string turn_round() { return "Turn it round"; }
inline std::string leg_ends_hint() { return "A turn put in comes to the middle: drag it, or type its place."; }
/// "Legs 1 and 2 end here: moving it moves both." Empty when none does.
std::string legs_at_mark(const Document& document, MarkId mark);
/// What a list says of a mark besides: height, radius, first line of its note.
std::string mark_remark(const Mark& mark);
std::string marks_caption(std::size_t count);
std::string legs_caption(std::size_t count);
inline std::string no_marks_yet() { return "No marks yet: take the mark tool and press where one stands, or add one by typing."; }
inline std::string no_legs_yet() { return "No legs yet: take the leg tool and press from turn to turn, or choose two marks below."; }
inline std::string draw_a_leg() { return "Draw a leg"; }
inline std::string leg_from() { return "From"; }
inline std::string leg_to() { return "To"; }
inline std::string draw_the_leg() { return "Draw the leg"; }
std::string mark_added(const std::string& name);

// -- sheets
inline std::string new_sheet_title() { return "A sheet of mine"; }
inline std::string not_a_chart() { return "it knows only what you mark on it; it is not a chart"; }
inline std::string sheet_from_question() { return "Made from"; }
inline std::string from_middle_and_scale() { return "middle and scale"; }
inline std::string from_two_corners() { return "two corners"; }
inline std::string from_the_marks() { return "the marks here"; }
inline std::string middle_label() { return "Middle of the sheet, latitude first"; }
inline std::string scale_question() { return "Scale, true at the middle"; }
std::string scale_option(const std::string& value);  // "1:100 000", "other"
std::string scale_text(int scale);                   // "1:100 000"
inline std::string other_scale_label() { return "Scale, from 1:25 000 to 1:1 000 000"; }
std::string corner_label(int which);
std::string marks_come_along(std::size_t marks, std::size_t legs);
inline std::string paper_question() { return "Paper"; }
inline std::string paper_way_question() { return "Laid"; }
inline std::string this_screen() { return "screen"; }
inline std::string sheet_name_label() { return "Name of the sheet"; }
inline std::string date_label() { return "Day of the passage, as 2026-06-21"; }
inline std::string sheet_note_label() { return "Notes in its margin"; }
inline std::string make_the_sheet() { return "Make the sheet"; }
inline std::string sheet_to_try() { return "The sheet to try"; }
inline std::string no_preview_yet() { return "How it will look stands here once its place can be read."; }
std::string preview_says(const Document& sheet);
/// What a sheet covers and how its scale comes out, as pairs of words and figures.
std::vector<std::pair<std::string, std::string>> sheet_measures(const Document& sheet);
inline std::string variation_question() { return "Variation"; }
std::string by_the_model(const std::string& figures);
inline std::string as_printed() { return "as printed on my chart"; }
inline std::string printed_value_label() { return "Variation printed, E or W"; }
inline std::string printed_year_label() { return "Year it is for"; }
inline std::string annual_change_label() { return "Change a year, E or W"; }
inline std::string datum_question() { return "My chart's datum, for positions lifted from it"; }
inline std::string another_datum() { return "another"; }
inline std::string unknown_datum() { return "unknown"; }
inline std::string i_do_not_know() { return "I don't know"; }
inline std::string datum_name() { return "Its name, as printed on the chart"; }
inline std::string datum_warning() { return "Positions lifted from it may lie some 200 m off those of a satellite receiver. The sheet's margin says so."; }
inline std::string this_sheet() { return "This sheet"; }
inline std::string change_the_sheet() { return "Name, day, size, variation"; }
inline std::string size_heading() { return "Place and size"; }
inline std::string size_hint() { return "All that is on the sheet stays; a change that would leave a mark off it is not made."; }
inline std::string fit_to_marks() { return "Fit it to its marks"; }
inline std::string signs_question() { return "Signs of the plot"; }
std::string sign_set_label(SignSet set);
inline std::string legend_title() { return "What the signs mean"; }
inline std::string legend_says() { return "Each sign beside its meaning."; }
LegendWords legend_words(SignSet set);
inline std::string change_the_signs() { return "Wear the other set"; }
inline std::string show_legend() { return "What the signs mean"; }

// -- instruments
inline std::string slide_to_rose() { return "Slide it to the rose"; }

// -- keypads
inline std::string pad_delete() { return "del"; }
inline std::string pad_delete_says() { return "delete the last"; }
inline std::string pad_clear() { return "clear"; }
inline std::string pad_paste() { return "paste"; }
inline std::string pad_reciprocal() { return "recip."; }
inline std::string pad_reciprocal_says() { return "its reciprocal"; }
inline std::string pad_back_says() { return "one degree less"; }
inline std::string pad_on_says() { return "one degree more"; }
std::string pad_letter_says(char letter);  // "true", "west"
inline std::string pad_keyboard() { return "abc"; }
inline std::string pad_keyboard_says() { return "the device's own keyboard"; }
inline std::string pad_label() { return "Keypad"; }
inline std::string pad_no_paste() { return "This page may not read what was copied: hold the field and choose Paste."; }
inline std::string pad_done() { return "Set it"; }

// -- touch
inline std::string lock_touch() { return "Lock touch"; }
inline std::string touch_is_locked() { return "Touch is locked"; }
inline std::string hold_to_unlock() { return "Touch is locked: hold here to open"; }

// -- settings
inline std::string settings_title() { return "Settings"; }
inline std::string settings_beside() { return "how things are shown on this device"; }
inline std::string rounding_question() { return "Directions in"; }
inline std::string whole_degrees() { return "whole degrees"; }
inline std::string tenths_of_degrees() { return "tenths"; }
inline std::string palette_question() { return "Palette"; }
std::string dimmer_line(int step);
inline std::string darker() { return "Darker"; }
inline std::string lighter() { return "Lighter"; }
inline std::string darkest() { return "Darker than this is the device's own brightness."; }
inline std::string lightest() { return "All is shown."; }
inline std::string screen_question() { return "Screen"; }
inline std::string as_the_device_has_it() { return "as the device has it"; }
inline std::string kept_awake() { return "kept awake"; }
std::string awake_line(const std::string& state);
inline std::string text_size_question() { return "Size of text beside the sheet"; }
inline std::string lines_question() { return "Lines on the sheet"; }
inline std::string loupe_question() { return "Loupe while a finger aims"; }
inline std::string snap_question() { return "Points snap to marks"; }
inline std::string switched_on() { return "on"; }
inline std::string switched_off() { return "off"; }
inline std::string usual_lines() { return "as on paper"; }
inline std::string bold_lines() { return "bold"; }
inline std::string contrast_has_bold_lines() { return "High contrast always has bold lines."; }
inline std::string signs_are_the_sheets() { return "The signs are the sheet's own and travel with it; all else stays on this device."; }

}  // namespace fogsheet::words
