// Every reason for which core refuses what a user gave it, as a code with arguments. Core writes no prose: the sentence
// for each code stands in shell/words_of_faults.cpp, and a test there finds every code.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace fogsheet {

enum class Fault {
  // positions, directions, numbers
  latitude_out_of_range,   // numbers: the latitude given, the bound (deg)
  longitude_out_of_range,  // numbers: the longitude given, the bound (deg)
  direction_out_of_range,  // numbers: the direction given; [0, 360)
  number_out_of_range,     // texts: what; numbers: given, least, most
  number_missing,          // texts: what
  reference_not_usable,    // texts: "magnetic" where there is no variation, "compass" where there is no deviation, or another word
  // typed entry; texts[0] says what was being read: "position", "latitude", "longitude", "direction", "variation",
  // "deviation", "time", "distance", "speed" or "number"
  entry_empty,             // texts: what
  entry_too_long,          // texts: what; numbers: bytes given, most
  entry_unreadable,        // texts: what, the part that has no meaning there
  entry_part_missing,      // texts: what, the part: "latitude", "longitude", "minutes", "seconds", "east or west", "number"
  entry_part_twice,        // texts: what, the part: "hemisphere", "sign", "reference", "latitude", "longitude"
  entry_ambiguous,         // texts: what, one reading, another
  minutes_out_of_range,    // texts: what; numbers: the minutes given, the bound they stay under (60)
  seconds_out_of_range,    // texts: what; numbers: the seconds given, the bound they stay under (60)
  hours_out_of_range,      // numbers: the hours given, the bound they stay under (24)
  unit_unknown,            // texts: what, the unit given
  datum_unknown,           // texts: the reference system given; only WGS 84 is read
  // sailings and cards
  course_never_there,      // numbers: course, latitude: that course does not lead to that latitude
  card_heading_twice,      // numbers: the heading two entries of a card have
  too_few_readings,        // numbers: readings given, the least
  headings_too_close,      // numbers: readings given: they do not support all that is asked of them
  // boats and compasses
  boat_unknown,            // texts: the key given
  compass_unknown,         // texts: the id given
  log_entry_unknown,       // texts: the id given
  last_compass,            // a boat has one at least
  no_card,                 // what was given has no card
  heading_twice,           // numbers: the heading that two rows have
  reading_reversed,        // numbers: what was read, its reciprocal, which would fit
  deviation_too_large,     // numbers: the deviation it would make, the most
  // dates
  date_unreadable,     // texts: what was given
  date_outside_models,  // numbers: year given, first year, last year
  instant_unreadable,  // texts: what was given
  // passages. Times in numbers are seconds since 1970; where texts[0] says "when", who knows the zone may write it there
  speed_not_positive,      // numbers: the speed given (kn)
  time_not_positive,       // numbers: the hours given: the end is not after the beginning
  time_before_departure,   // numbers: hours before it
  stream_not_stemmed,      // texts: when, or none; numbers: speed given (kn), the least that could (kn), from, to
  leg_takes_too_long,      // numbers: the most hours a leg may take
  stream_hour_twice,       // numbers: the hour from high water
  stream_hour_unknown,     // numbers: the hour given, least, most
  high_water_missing,      // a table by hours, and no high water to count them from
  mark_too_near,           // numbers: distance to leave it at, distance to it (nm)
  // the sheet and what lies on it
  place_off_sheet,         // texts: the mark's name
  no_marks_to_fit,         // a sheet is to be fitted to marks, and there are none
  sheet_too_wide,          // numbers: the scale it would take, the greatest there is
  things_off_sheet,        // texts: names of those that would lie off, three at most; numbers: how many
  name_empty,
  name_too_long,           // numbers: characters given, most
  note_empty,
  note_too_long,           // numbers: characters given, most
  mark_already_there,      // texts: the mark's name; same name, same place
  lines_do_not_cross,      // texts: the names of the marks they go through; numbers: the angle between them, the least (deg)
  mark_unknown,            // texts: the id given
  leg_unknown,             // texts: the id given
  rose_unknown,            // texts: the id given
  sheet_unknown,           // texts: the key given
  note_unknown,            // texts: the id given
  passage_unknown,         // texts: the id given
  no_legs_for_passage,     // there is no leg on the sheet to make one of
  not_under_way,           // the boat has not left, or all legs have ended
  already_under_way,       // she left before
  passage_leg_gone,        // texts: the leg's name; numbers: its number. It was taken off the sheet
  passage_leg_run,         // numbers: its number. It has ended
  passage_legs_apart,      // texts: where the leg before ends, where this one begins; numbers: its number
  speed_not_entered,       // of a passage
  time_not_entered,        // of a passage with a table of streams
  time_not_worked_out,     // the same, where another leg has no end
  home_before_arrival,     // texts: when the passage arrives
  deck_time_before,        // texts: the time of the line before, which is later
  wind_missing,            // leeway without the wind it is from
  nothing_written,         // no reading is written on the leg
  leg_ends_missing,        // its ends were not both chosen
  leg_of_no_length,        // texts: the mark's name
  leg_already_there,       // texts: names of both ends
  paper_unknown,           // texts: what was given
  kind_unknown,            // texts: what was given
  radius_missing,          // a danger without a radius
  table_full,              // texts: what; numbers: most
  no_edge,                 // nothing to slide, turn or lift
  no_rose,                 // no rose to read or turn about
  edge_of_no_length,
  edge_not_settled,        // nothing is read yet
  edge_on_no_leg,          // what it reads is of no leg, or of another one
  no_line_to_draw,         // the edge was not slid to a mark
  no_dividers,             // nothing to read, walk or take off
  dividers_shut,           // both points on one place
  no_leg_to_step,          // the dividers stand at no leg
  no_undo,
  no_redo,
  no_own_position,         // the device has not said where it is
  // document text and links
  text_empty,
  text_not_ours,           // does not begin as a document text does
  sheet_of_newer,          // a newer program has put on it what is not understood here: it stays where it is kept
  text_newer,              // numbers: the format found, the newest understood
  text_bad_character,      // begin: where
  text_too_long,           // numbers: bytes given, most
  text_cut_short,          // ends inside a section
  text_checksum,           // damaged: the checksum differs
  text_section,            // texts: section; numbers: index. A field of that section is out of its range
  text_missing_section,    // texts: section
  // files of other programs
  file_too_long,           // numbers: bytes given, most
  file_unknown,            // nothing that is read here
  file_broken,             // texts: "XML" or "JSON"; numbers: the line where it can't go on
  file_too_deep,           // texts: the same; numbers: the line
  file_too_full,           // texts: the same; numbers: most values
  file_own_types,          // texts: its name. XML with a document type of its own, which could name other files and grow without end
  file_encoding,           // texts: the encoding it says it is in
  file_of_other_kind,      // texts: "XML" or "JSON", what its outermost part is called
  file_without_columns,    // texts: its first line. No columns for a place
  file_unreadable,         // the device does not give its bytes
  file_took_too_long,      // numbers: seconds
  file_no_room,            // what reads and writes them broke down: there is too little memory for it
  none_damaged,            // there is no record that can't be used
  no_file_in_hand,         // none was chosen, or it could not be used
  nothing_to_import,       // all of it is on the sheet already, or lies off it
  file_reader_missing,     // the program that reads and writes them did not come
  // sending
  nothing_to_share_with,   // the browser hands nothing to other programs
  code_too_long,           // numbers: characters of the link, most
  no_link_arrived,         // none waits to be opened
  // pictures, and where they lie
  picture_of_other_kind,   // texts: what it is by its bytes, none where that is not known. Neither PNG nor JPEG
  picture_too_large,       // numbers: its pixels, most
  picture_broken,          // its bytes make no picture
  picture_no_room,         // there is no memory for it
  picture_took_too_long,   // numbers: seconds
  picture_points_too_few,  // numbers: known points given, the least
  picture_points_together, // numbers: which two, from 1
  picture_points_in_line,  // they say nothing of what lies beside it
  picture_mirrored,        // the points fit its mirror image
  picture_point_outside,   // a point that is not on it
  picture_point_unknown,   // numbers: the point given, how many there are
  no_photograph,           // none lies under the sheet
  photograph_reader_missing,  // the program that reads them did not come
};
inline constexpr Fault k_last_fault = Fault::photograph_reader_missing;

/// Why something was refused. `begin` and `end` mark the offending part of the text given (bytes; equal when the whole).
/// `suggestion` is the likely reading of a typed text, printed as it would be read; empty unless there is just one.
struct Problem {
  Fault fault;
  std::vector<std::string> texts = {};
  std::vector<double> numbers = {};
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string suggestion = {};

  bool operator==(const Problem&) const = default;
};

}  // namespace fogsheet
