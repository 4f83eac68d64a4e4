// Why something was refused, in a sentence: what is wrong, where, and what to do.
#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/directions/direction_figures.h"
#include "shell/form_words.h"
#include "shell/words.h"
#include "shell/words_of_sending.h"

namespace fogsheet::words {
namespace {

const std::string& text_of(const Problem& problem, std::size_t i) {
  static const std::string none;
  return i < problem.texts.size() ? problem.texts[i] : none;
}

/// "1 reading", "3 readings".
std::string counted(double count, const char* one) { return plain_number(count) + " " + one + (count == 1 ? "" : "s"); }

double number_of(const Problem& problem, std::size_t i) { return i < problem.numbers.size() ? problem.numbers[i] : 0; }

/// Behind a figure of that quantity, as faults name it; nothing for what is counted.
std::string_view unit_of(std::string_view quantity) {
  struct Unit {
    std::string_view quantity, unit;
  };
  constexpr Unit k_units[] = {
      {"circle", " m"},    {"deviation", "°"}, {"dip", "°"},       {"distance", " nm"},     {"drift", " kn"},       {"height", " m"},  {"horizontal field", " nT"}, {"leeway", "°"},      {"length", " nm"},
      {"log", " nm"},      {"opening", " mm"}, {"radius", " nm"},  {"rose's radius", " mm"}, {"run by log", " nm"}, {"speed", " kn"},  {"turn", "°"},               {"uncertainty", "°"}, {"variation", "°"},
      {"visibility", " nm"},
  };
  const auto found = std::find_if(std::begin(k_units), std::end(k_units), [&](const Unit& each) { return each.quantity == quantity; });
  return found == std::end(k_units) ? "" : found->unit;
}

// The first tenth of a knot that is more: the least speed itself only holds the boat where she is.
std::string up_to_tenths(double least_kn) { return plain_number((std::floor(least_kn * 10 + 1e-6) + 1) / 10); }

std::string things_off_sheet(const Problem& problem) {
  const std::size_t count = static_cast<std::size_t>(number_of(problem, 0));
  std::string list;
  for (std::size_t i = 0; i < problem.texts.size(); ++i) list += (i == 0 ? "" : i + 1 == count ? " and " : ", ") + quoted(problem.texts[i]);
  if (count > problem.texts.size()) list += " and " + std::to_string(count - problem.texts.size()) + " more";
  return list + " would lie off the sheet: a smaller scale, a larger paper or another middle keeps " + (count == 1 ? "it" : "them") + " on.";
}

}  // namespace

std::string sentence(const Problem& problem) {
  const auto text = [&](std::size_t i) { return text_of(problem, i); };
  const auto value = [&](std::size_t i) { return plain_number(number_of(problem, i)); };
  const auto scale = [&](std::size_t i) { return scale_text(static_cast<int>(number_of(problem, i))); };
  const auto megabytes = [&](std::size_t i) { return plain_number(std::ceil(number_of(problem, i) / 1e6)); };
  const auto direction = [&](std::size_t i) { return direction_figures(number_of(problem, i), Rounding::whole_degrees) + "°"; };
  const std::string likely = problem.suggestion.empty() ? "" : " Did you mean " + problem.suggestion + "?";
  switch (problem.fault) {
    case Fault::latitude_out_of_range: return "Latitude " + value(0) + "° is too far from the equator: a sheet reaches " + value(1) + "° either side.";
    case Fault::longitude_out_of_range: return "Longitude " + value(0) + "° is out of range: up to " + value(1) + "° east or west." + likely;
    case Fault::direction_out_of_range: return value(0) + "° is no direction: from 000 to 359." + likely;
    case Fault::number_out_of_range: {
      const std::string unit(unit_of(text(0)));
      return "The " + text(0) + " " + value(0) + unit + " is out of range: from " + value(1) + " to " + value(2) + unit + ".";
    }
    case Fault::number_missing: return "A number is missing: " + text(0) + ".";
    case Fault::reference_not_usable:
      if (text(0) == "compass") return "There is no compass course: deviation is not entered.";
      if (text(0) == "magnetic") return "There is no variation here to make a true direction from a magnetic one.";
      return quoted(text(0)) + " is no kind of direction: true or magnetic.";
    case Fault::entry_empty: return "Nothing was entered for the " + text(0) + ".";
    case Fault::entry_too_long: return "This is too long for a " + text(0) + ".";
    case Fault::entry_unreadable: return quoted(text(1)) + " has no meaning in a " + text(0) + "." + likely;
    case Fault::entry_part_missing: return "The " + text(0) + " lacks its " + text(1) + "." + likely;
    case Fault::entry_part_twice: return "The " + text(0) + " has two of " + text(1) + ": leave one out." + likely;
    case Fault::entry_ambiguous: return "This could be " + text(1) + " or " + text(2) + ": write it so that it is only one.";
    case Fault::minutes_out_of_range: return "Minutes are under " + value(1) + ": " + value(0) + " is too many." + likely;
    case Fault::seconds_out_of_range: return "Seconds are under " + value(1) + ": " + value(0) + " is too many." + likely;
    case Fault::hours_out_of_range: return "Hours are under " + value(1) + ": " + value(0) + " is too many." + likely;
    case Fault::unit_unknown: return quoted(text(1)) + " is no unit of a " + text(0) + " known here.";
    case Fault::datum_unknown: return "Only WGS 84 is read here, not " + quoted(text(0)) + ".";
    case Fault::course_never_there: return "The course " + value(0) + "° never leads to latitude " + value(1) + "°.";
    case Fault::too_few_readings: return "There " + std::string(number_of(problem, 0) == 1 ? "is " : "are ") + counted(number_of(problem, 0), "reading") + " of the " + value(1) + " it takes at least: add more.";
    case Fault::headings_too_close: return counted(number_of(problem, 0), "reading") + (number_of(problem, 0) == 1 ? " does" : " do") + " not tell so much: read on more headings, all round.";
    case Fault::boat_unknown: return "There is no boat " + text(0) + " on this device.";
    case Fault::compass_unknown: return "There is no compass " + text(0) + " on this boat.";
    case Fault::log_entry_unknown: return "There is no entry " + text(0) + " in the compass's log.";
    case Fault::last_compass: return "A boat has one compass at least: give this one another name instead.";
    case Fault::no_card: return "There is no deviation card in this.";
    case Fault::heading_twice: return "Heading " + direction(0) + " is there already, turning the same way: was another meant? Change it, or say which way she turned.";
    case Fault::reading_reversed: return direction(0) + " is about 180° out: was it read from the wrong end? " + direction(1) + " would fit.";
    case Fault::deviation_too_large: return "That would be a deviation of " + value(0) + "°: more than " + value(1) + "° is hardly one. Look at the figures again.";
    case Fault::card_heading_twice: return "Heading " + value(0) + "° stands twice in the card: leave one out.";
    case Fault::date_unreadable: return quoted(text(0)) + " is no date: write year, month and day as 2026-06-21.";
    case Fault::date_outside_models:
      return "No variation for the year " + value(0) + ": the models reach from " + value(1) + " to " + value(2) + ". Set another date, or enter the variation printed on your chart.";
    case Fault::instant_unreadable: return quoted(text(0)) + " is no time in UTC: write it as 2026-06-21T06:40:00Z.";
    case Fault::speed_not_positive: return "At " + value(0) + " kn she gets nowhere: enter a speed of more than nought.";
    case Fault::time_not_positive: return "The end has to be later than the beginning.";
    case Fault::time_before_departure: return "That is before the departure.";
    case Fault::stream_not_stemmed:
      return "The stream can't be stemmed at " + value(0) + " kn" + (text(0).empty() ? "" : ", " + text(0)) + ": it takes " + up_to_tenths(number_of(problem, 1)) + " kn through the water.";
    case Fault::leg_takes_too_long: return "This leg would take more than " + value(0) + " hours: enter a higher speed, or part it.";
    case Fault::stream_hour_twice: return "The hour " + value(0) + " from high water stands twice in the table: leave one out.";
    case Fault::stream_hour_unknown: return "The hour " + value(0) + " is not in a table of streams: from " + value(1) + " to " + value(2) + " about high water.";
    case Fault::high_water_missing: return "The time of high water is missing: the hours of the table count from it.";
    case Fault::mark_too_near: return "The mark is " + value(1) + " nm off: it can't be left at " + value(0) + " nm.";
    case Fault::place_off_sheet: return quoted(text(0)) + " lies off this sheet: place it inside the border, or make a sheet that reaches it.";
    case Fault::no_marks_to_fit: return "There are no marks on the sheet in hand to fit one to.";
    case Fault::sheet_of_newer: return "A newer version of this page has been at this sheet: it is left where it is. Load the page again to take it out.";
    case Fault::sheet_too_wide: return "This is too wide for one sheet: it would take " + scale(0) + ", and " + scale(1) + " is the smallest scale. Take a larger paper or places nearer together.";
    case Fault::things_off_sheet: return things_off_sheet(problem);
    case Fault::name_empty: return "A name is needed here.";
    case Fault::name_too_long: return "The name has " + value(0) + " characters; up to " + value(1) + " fit.";
    case Fault::note_empty: return "A note needs words.";
    case Fault::note_too_long: return "The note has " + value(0) + " characters; up to " + value(1) + " fit.";
    case Fault::mark_already_there: return quoted(text(0)) + " stands at this very place already.";
    case Fault::lines_do_not_cross: return "The lines through " + quoted(text(0)) + " and " + quoted(text(1)) + " run side by side (" + value(0) + "° apart): they cross nowhere that can be trusted.";
    case Fault::mark_unknown: return "There is no such mark on this sheet (" + text(0) + ").";
    case Fault::leg_unknown: return "There is no such leg on this sheet (" + text(0) + ").";
    case Fault::sheet_unknown: return "There is no sheet of that key in the drawer.";
    case Fault::rose_unknown: return "There is no such rose on this sheet (" + text(0) + ").";
    case Fault::note_unknown: return "There is no such note on this sheet (" + text(0) + ").";
    case Fault::passage_unknown: return "There is no such passage on this sheet (" + text(0) + ").";
    case Fault::no_legs_for_passage: return "There is no leg on the sheet yet: draw the legs first, then they make a passage.";
    case Fault::not_under_way: return "The boat is not on a leg of this passage: she has not left, or the last leg has ended.";
    case Fault::already_under_way: return "She has left already: take the departure back first if it was not so.";
    case Fault::passage_leg_gone: return "Leg " + value(0) + ", " + text(0) + ", was taken off the sheet: undo brings it back, or leave it out of the passage.";
    case Fault::passage_leg_run: return "Leg " + value(0) + " has been run, and the deck log goes by it: it stays in the passage.";
    case Fault::passage_legs_apart: return "Leg " + value(0) + " begins at " + quoted(text(1)) + ", where the leg before does not end: it ends at " + quoted(text(0)) + ".";
    case Fault::speed_not_entered: return "Enter the speed through the water: times, and courses with a stream, come of it.";
    case Fault::time_not_entered: return "Enter when you leave or want to arrive: the stream goes by the hour.";
    case Fault::time_not_worked_out: return "The stream goes by the hour, and the time of this leg can't be worked out while another leg has no course.";
    case Fault::home_before_arrival: return "The way home would begin before you arrive at " + text(0) + ": set a later time.";
    case Fault::deck_time_before: return "The deck log goes on in the order of its times: the line before is of " + text(0) + ".";
    case Fault::wind_missing: return "Say first where the wind comes from: leeway is turned away from it.";
    case Fault::nothing_written: return "Nothing is written on this leg.";
    case Fault::leg_ends_missing: return "Choose the mark the leg begins at and the one it ends at.";
    case Fault::leg_of_no_length: return "A leg needs two places" + (text(0).empty() ? "." : ": both ends are " + quoted(text(0)) + ".");
    case Fault::leg_already_there: return "There is a leg from " + quoted(text(0)) + " to " + quoted(text(1)) + " already.";
    case Fault::paper_unknown: return quoted(text(0)) + " is no paper known here.";
    case Fault::kind_unknown: return quoted(text(0)) + " is no kind of mark: landmark, light, turn, danger or other.";
    case Fault::radius_missing: return "A danger needs the radius of the ring to keep out of, in nautical miles.";
    case Fault::table_full: return "No more " + text(0) + " fit on a sheet: " + value(0) + " at the most.";
    case Fault::no_edge: return "The straight-edge is not on the sheet: press one end, then the other.";
    case Fault::no_rose: return "There is no rose on this sheet.";
    case Fault::edge_of_no_length: return "The straight-edge needs two places: its ends are too close together.";
    case Fault::edge_not_settled: return "Nothing is read yet: slide the edge to a rose first.";
    case Fault::edge_on_no_leg: return "The edge was not laid along that leg: lay it on the leg's two ends, then slide it to a rose.";
    case Fault::no_line_to_draw: return "Slide the edge to a mark first: the line is drawn from there.";
    case Fault::no_dividers: return "The dividers are not on the sheet: press one point, then the other.";
    case Fault::dividers_shut: return "The dividers need two places: their points are too close together.";
    case Fault::no_leg_to_step: return "The dividers stand at no leg: set a point down on an end of the leg to step along.";
    case Fault::no_undo: return "There is nothing to undo.";
    case Fault::no_own_position: return "The device has not said where it is.";
    case Fault::no_redo: return "There is nothing to redo.";
    case Fault::text_empty: return "There is nothing to open: the text is empty. The sheet stays as it was.";
    case Fault::text_not_ours: return "This is no sheet: a sheet's text begins with 1: and has no blanks. The sheet in hand stays as it was.";
    case Fault::text_newer:
      return "This sheet was made by a newer version (format " + value(0) + "; this one reads " + value(1) + "). Load the page anew when you are online. The sheet in hand stays as it was.";
    case Fault::text_bad_character: return "The text is damaged at character " + plain_number(static_cast<double>(problem.begin) + 1) + ". Copy it again, whole. The sheet in hand stays as it was.";
    case Fault::text_too_long: return "The text is too long to be a sheet: " + value(0) + " characters, at most " + value(1) + ". The sheet in hand stays as it was.";
    case Fault::text_cut_short: return "The text ends too early: a part was lost on the way. Copy it again, whole. The sheet in hand stays as it was.";
    case Fault::text_checksum: return "The text is damaged: its check figure does not fit. Copy it again, whole. The sheet in hand stays as it was.";
    case Fault::text_section: return "The text is damaged in its part “" + text(0) + "”. The sheet in hand stays as it was.";
    case Fault::text_missing_section: return "The text lacks its part “" + text(0) + "”. Copy it again, whole. The sheet in hand stays as it was.";
    case Fault::file_too_long: return "This file is too long: " + megabytes(0) + " MB, at most " + megabytes(1) + " MB.";
    case Fault::file_unknown: return "This is no file that can be read here: a sheet of ours, GPX, GeoJSON, or marks as CSV.";
    case Fault::file_broken: return "The file is broken: it can't be read as " + text(0) + " past line " + value(0) + ".";
    case Fault::file_too_deep: return "The file is not read: in line " + value(0) + " its parts lie in each other too deeply.";
    case Fault::file_too_full: return "The file is not read: it has more than " + value(0) + " values.";
    case Fault::file_own_types: return "The file is not read: it brings a document type of its own, which could ask for other files and grow without end.";
    case Fault::file_encoding: return "The file says that it is in the encoding " + quoted(text(0)) + ", which is not read here: save it as UTF-8.";
    case Fault::file_of_other_kind: return "This is " + text(0) + ", but of another kind: “" + text(1) + "”. GPX and GeoJSON are read here.";
    case Fault::file_without_columns: return "No columns for a place are named in the first line, “" + text(0) + "”: it takes latitude and longitude, or position.";
    case Fault::file_unreadable: return "The device does not give this file out: choose it again.";
    case Fault::file_took_too_long: return "It took more than " + value(0) + " seconds, and was ended. Nothing here has changed.";
    case Fault::file_no_room: return "It broke off: this device has likely too little memory for it. Nothing here has changed.";
    case Fault::none_damaged: return "Nothing damaged is kept.";
    case Fault::no_file_in_hand: return "No file is in hand: open one first.";
    case Fault::nothing_to_import: return "Nothing of it comes on this sheet: it is there already, or lies off it.";
    case Fault::nothing_to_share_with: return "This browser hands nothing to other programs: copy the link, or save the sheet as a file.";
    case Fault::code_too_long: return code_too_long(static_cast<std::size_t>(number_of(problem, 1)));
    case Fault::no_link_arrived: return "No link waits to be opened.";
    case Fault::file_reader_missing: return "What reads and writes files of other programs has not come: load the page once while you are online.";
    case Fault::picture_of_other_kind: return (problem.texts.empty() ? std::string("This is no picture that is read here") : "This is " + text(0) + " by its bytes, whatever its name") + ": a photograph is read as PNG or JPEG.";
    case Fault::picture_too_large: return "The picture is too large: " + megabytes(0) + " million pixels, at most " + megabytes(1) + " million, and 32 768 on a side.";
    case Fault::picture_broken: return "The picture is broken, or of a kind of PNG or JPEG that is not read here.";
    case Fault::picture_no_room: return "This device has no memory for a picture so large: make it smaller first.";
    case Fault::picture_took_too_long: return "The picture was not read within " + value(0) + " seconds: make it smaller first.";
    case Fault::picture_points_too_few: return value(0) + " of " + value(1) + " points are known: press places on it whose position you know, and enter that.";
    case Fault::picture_points_together: return "Points " + value(0) + " and " + value(1) + " are the same place: take one away.";
    case Fault::picture_points_in_line: return "The points lie in a line, and say nothing of what is beside it: add one to the side, or fit it by turning and sizing alone.";
    case Fault::picture_mirrored: return "The points fit only its mirror image: two of them likely have each other's position.";
    case Fault::picture_point_outside: return "That place is not on the photograph.";
    case Fault::picture_point_unknown: return "There is no point " + value(0) + ": " + value(1) + " are on it.";
    case Fault::no_photograph: return "No photograph lies under this sheet: choose one first.";
    case Fault::photograph_reader_missing: return "What reads photographs has not come: load the page once while you are online.";
  }
  return "That can't be done.";
}

}  // namespace fogsheet::words
