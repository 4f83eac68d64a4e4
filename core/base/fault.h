// Every reason for which core refuses what a user gave it, as a code with arguments. Core writes no prose: the sentence
// for each code stands in shell/words.cpp, and a test there finds every code.
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
  // dates
  date_unreadable,     // texts: what was given
  date_outside_models,  // numbers: year given, first year, last year
  // the sheet and what lies on it
  place_off_sheet,         // texts: the mark's name
  name_empty,
  name_too_long,           // numbers: characters given, most
  mark_unknown,            // texts: the id given
  leg_unknown,             // texts: the id given
  rose_unknown,            // texts: the id given
  leg_of_no_length,        // texts: the mark's name
  leg_already_there,       // texts: names of both ends
  paper_unknown,           // texts: what was given
  kind_unknown,            // texts: what was given
  radius_missing,          // a danger without a radius
  table_full,              // texts: what; numbers: most
  no_edge,                 // nothing to slide, turn or lift
  no_rose,                 // no rose to read or turn about
  edge_of_no_length,
  no_undo,
  no_redo,
  // document text and links
  text_empty,
  text_not_ours,           // does not begin as a document text does
  text_newer,              // numbers: the format found, the newest understood
  text_bad_character,      // begin: where
  text_too_long,           // numbers: bytes given, most
  text_cut_short,          // ends inside a section
  text_checksum,           // damaged: the checksum differs
  text_section,            // texts: section; numbers: index. A field of that section is out of its range
  text_missing_section,    // texts: section
};

/// Why something was refused. `begin` and `end` mark the offending part of the text given (bytes; equal when the whole).
struct Problem {
  Fault fault;
  std::vector<std::string> texts = {};
  std::vector<double> numbers = {};
  std::size_t begin = 0;
  std::size_t end = 0;

  bool operator==(const Problem&) const = default;
};

}  // namespace fogsheet
