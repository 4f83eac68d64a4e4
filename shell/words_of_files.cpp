#include "shell/words_of_files.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "shell/words.h"

namespace fogsheet::words {
namespace {

// How many lines of one kind there are, through how many points, and what thinning did to them.
std::string lines_of(const MarksAndLines& all, LineOrigin origin, const char* one, const char* many) {
  std::size_t lines = 0, points = 0, there = 0;
  double within_m = 0;
  for (const FileLine& line : all.lines) {
    if (line.origin != origin) continue;
    ++lines;
    points += line.points.size();
    there += line.points_there;
    within_m = std::max(within_m, line.within_m);
  }
  if (lines == 0) return {};
  const std::string begin = counted(lines, one, many) + " through " + grouped(static_cast<int>(there)) + " points";
  if (points == there) return begin;
  return begin + ", thinned to " + grouped(static_cast<int>(points)) + ": none left out lies farther than " + grouped(std::max(1, static_cast<int>(std::ceil(within_m)))) + " m from the line";
}

std::string marks_and_legs(const Import& import) {
  const std::string marks = counted(import.marks, "mark", "marks"), legs = counted(import.legs, "leg", "legs");
  return import.legs == 0 ? marks : import.marks == 0 ? legs : marks + " and " + legs;
}

}  // namespace

std::string counted(std::size_t count, const char* one, const char* many) { return count == 1 ? std::string("1 ") + one : grouped(static_cast<int>(count)) + " " + many; }

ImportNames import_names() { return {"Mark ", "Turn "}; }

std::string without_extension(const std::string& file_name) {
  const std::size_t point = file_name.rfind('.');
  return point == std::string::npos || point == 0 ? file_name : file_name.substr(0, point);
}

std::string file_name(const Document& document, const std::string& extension) {
  // What some file system or other does not take in a name.
  constexpr std::string_view k_awkward = "\\/:*?\"<>|";
  std::string name;
  for (const char c : sheet_title(document)) {
    if (static_cast<unsigned char>(c) < ' ' || c == 0x7F) continue;
    name += k_awkward.find(c) == std::string_view::npos ? c : '-';
  }
  return name + "." + extension;
}

std::string format_label(const std::string& format) { return format == "gpx" ? "GPX" : format == "geojson" ? "GeoJSON" : format == "csv" ? "CSV of its marks" : ""; }

std::string file_is_read(const FileInHand& file) {
  constexpr double k_long_bytes = 1e6;
  if (file.bytes < k_long_bytes) return "It is being read.";
  return "It is being read, " + grouped(static_cast<int>(std::lround(file.bytes / 1e6))) + " MB: the sheet can be used meanwhile.";
}

std::string file_cut_advice(std::uint32_t line) { return "It can't be read past line " + grouped(static_cast<int>(line)) + ": this is what stands before. The rest is only where the file came from."; }

std::string file_waits(const std::string& name) { return quoted(name) + " has been read: what it holds is in the drawer."; }

std::string file_in_hand(const FileInHand& file) { return quoted(file.name) + (file.is_being_read() ? " is being read." : " has been read."); }

std::string others_left(int count) { return "One file is read at a time: " + counted(static_cast<std::size_t>(count), "other was", "others were") + " left."; }

std::vector<std::string> file_holds(const MarksAndLines& all) {
  std::vector<std::string> lines;
  if (!all.marks.empty()) lines.push_back(counted(all.marks.size(), "mark", "marks"));
  for (std::string line : {lines_of(all, LineOrigin::route, "route", "routes"), lines_of(all, LineOrigin::track, "track", "tracks"), lines_of(all, LineOrigin::line, "line", "lines")})
    if (!line.empty()) lines.push_back(std::move(line));
  if (lines.empty()) lines.push_back("No mark and no line that can be used.");
  return lines;
}

std::string departed(const Departure& departure) {
  return "Not quite as its format has it (" + (departure.line > 0 ? "line " + std::to_string(departure.line) + ", " : "") + quoted(departure.what) + "): read all the same.";
}

std::string left_out_caption(std::uint32_t count) { return counted(count, "thing", "things") + " could not be used, or only in part"; }

std::string left_out_why(LeftOutWhy why) {
  switch (why) {
    case LeftOutWhy::place_unreadable: return "its place is missing or can't be read";
    case LeftOutWhy::place_out_of_range: return "its place is not on the earth";
    case LeftOutWhy::past_sheets: return "past 75° north or south";
    case LeftOutWhy::name_cut: return "the name was too long: cut";
    case LeftOutWhy::note_cut: return "the note was too long: cut";
    case LeftOutWhy::line_too_short: return "a line of fewer than two points";
    case LeftOutWhy::area: return "an area: sheets have none";
    case LeftOutWhy::no_geometry: return "nothing to be drawn";
    case LeftOutWhy::marks_full: return "more marks than a sheet takes";
    case LeftOutWhy::lines_full: return "more lines than are read";
    case LeftOutWhy::points_full: return "more points than are read";
  }
  return "";
}

std::string further_left_out(std::uint32_t count) { return "And " + counted(count, "more", "more") + "."; }

std::string would_come(const Import& import) {
  std::string text = import.marks + import.legs > 0 ? marks_and_legs(import) + " would come on this sheet." : sentence({.fault = Fault::nothing_to_import});
  if (import.known > 0) text += " " + counted(import.known, "mark stands", "marks stand") + " there already.";
  if (import.off_sheet > 0) {
    text += " " + counted(import.off_sheet, "place lies", "places lie") + " off it";
    for (std::size_t i = 0; i < import.off_sheet_names.size(); ++i) text += (i == 0 ? ": " : ", ") + quoted(import.off_sheet_names[i]);
    text += ".";
  }
  if (import.no_room > 0) text += " For " + grouped(static_cast<int>(import.no_room)) + " there is no room.";
  return text;
}

std::string imported(const Import& import) { return marks_and_legs(import) + (import.marks + import.legs == 1 ? " has" : " have") + " come on the sheet."; }

}  // namespace fogsheet::words
