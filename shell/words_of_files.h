// What is said of files of other programs.
#pragma once

#include <string>
#include <vector>

#include "core/document/import_actions.h"
#include "shell/file_in_hand.h"

namespace fogsheet::words {

/// "1 mark", "10 000 marks".
std::string counted(std::size_t count, const char* one, const char* many);

/// How what has no name of its own is called.
ImportNames import_names();

/// "out.gpx" without what comes after its last point.
std::string without_extension(const std::string& file_name);
/// A sheet's name as a file's: "Gull Sound.gpx".
std::string file_name(const Document& document, const std::string& extension);
/// "GPX", "GeoJSON", "CSV of its marks"; empty for a format that is none.
std::string format_label(const std::string& format);

/// Of a long one also that it need not be waited for.
std::string file_is_read(const FileInHand& file);
/// Of one that has been read while the user was at something else.
std::string file_waits(const std::string& name);
/// Of either, in the drawer.
std::string file_in_hand(const FileInHand& file);
/// How many were dropped with the one that is taken.
std::string others_left(int count);
/// Of one that is read as far as it goes.
inline std::string file_cut() { return "The file is cut short, or broken"; }
std::string file_cut_advice(std::uint32_t line);
inline std::string file_not_used() { return "This file can't be used"; }
inline std::string save_as_label(const std::string& format) { return "Save as " + format_label(format); }

/// A line each: marks, routes, tracks, bare lines.
std::vector<std::string> file_holds(const MarksAndLines& all);
std::string departed(const Departure& departure);
std::string left_out_caption(std::uint32_t count);
std::string left_out_why(LeftOutWhy why);
std::string further_left_out(std::uint32_t count);

/// What would come on the sheet in hand, and what came.
std::string would_come(const Import& import);
std::string imported(const Import& import);

}  // namespace fogsheet::words
