// Marks and lines as the files of other programs have them: what such a file held when it was read (core/exchange), and what
// of a sheet goes into one. And the same as bytes, which is how the page's second program hands it to the first and back.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/document/document.h"

namespace fogsheet {

struct FileMark {
  std::string name;  // empty where the file gives none
  MarkKind kind = MarkKind::other;
  GridPosition at;
  double radius_nm = 0;
  double height_m = 0;
  std::string note = {};

  bool operator==(const FileMark&) const = default;
};

struct FilePoint {
  GridPosition at;
  std::string name = {};  // empty where the file gives none

  bool operator==(const FilePoint&) const = default;
};

enum class LineOrigin { route, track, line };

/// Two points or more, joined by rhumb lines.
struct FileLine {
  LineOrigin origin = LineOrigin::line;
  std::string name;
  std::vector<FilePoint> points;
  std::uint32_t points_there = 0;  // in the file, before they were thinned
  double within_m = 0;             // of the points that were left out none lies farther from the line

  bool operator==(const FileLine&) const = default;
};

/// Why something in a file could not be used, or not all of it. The order is that of the bytes.
enum class LeftOutWhy { place_unreadable, place_out_of_range, past_sheets, name_cut, note_cut, line_too_short, area, no_geometry, marks_full, lines_full, points_full };
inline constexpr int k_left_out_whys = 11;

struct LeftOut {
  LeftOutWhy why = LeftOutWhy::place_unreadable;
  std::uint32_t line = 0;  // of the file, from 1; 0 where that says nothing
  std::string what;        // its name, or what the file calls it

  bool operator==(const LeftOut&) const = default;
};

/// Where a file is not as its format has it, and was read all the same: the first such place.
struct Departure {
  std::uint32_t line = 0;
  std::string what;

  bool operator==(const Departure&) const = default;
};

struct MarksAndLines {
  std::string title;
  std::vector<FileMark> marks;
  std::vector<FileLine> lines;
  std::vector<LeftOut> left_out;     // the first k_most_left_out
  std::uint32_t left_out_count = 0;  // of all
  std::optional<Departure> departure;
  std::uint32_t broken_past = 0;     // the line past which the file can't be read: all this stands before it; 0 when it is whole

  bool operator==(const MarksAndLines&) const = default;
};

inline constexpr std::size_t k_most_file_bytes = 64'000'000;
inline constexpr std::size_t k_most_left_out = 100;
inline constexpr std::size_t k_most_file_lines = 2'000;

/// What of a sheet goes into a file: its marks, and its legs with those that follow each other as one line.
MarksAndLines marks_and_lines_of(const Document& document);

std::vector<std::uint8_t> to_bytes(const Result<MarksAndLines>& read);
/// Checked field by field. Fault of bytes that are not such: text_not_ours.
Result<MarksAndLines> marks_and_lines_from(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
