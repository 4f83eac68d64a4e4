// What a reader of files puts together: marks and lines, brought to what a sheet can hold, and a list of what could not be
// used. Bounded whatever the file: so many marks, lines and points, and texts of so many bytes.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "core/earth/thinning.h"
#include "core/formats/marks_and_lines.h"

namespace fogsheet {

// Tracks and bare lines are thinned to this, and farther until they have so few points that each can be a turn on the sheet.
// Points where a mark of the file stands stay.
inline constexpr double k_track_tolerance_m = 20;
inline constexpr std::size_t k_most_track_points = 300;
inline constexpr std::size_t k_most_route_points = 1'000;  // routes were made by hand: thinned beyond this alone
inline constexpr std::size_t k_most_points_read = 2'000'000;  // of all lines of a file

/// A place, as decimal degrees, on its way into a file's mark or line.
struct ReadPlace {
  std::optional<double> lat_deg, lon_deg;
};

class Collector {
 public:
  /// In which line of the file the reader is, from 1; 0 where that is not known.
  void at_line(std::size_t line) { line_ = static_cast<std::uint32_t>(line); }

  void title(std::string_view text) { result_.title = name_of(text); }
  void leave_out(LeftOutWhy why, std::string_view what);
  /// The first one stays.
  void depart(std::string_view what);
  bool departed() const { return result_.departure.has_value(); }

  /// `mark` has all but its place; its texts may be of any length. @param called what the file calls it, when it has no name
  void mark(FileMark mark, ReadPlace place, std::string_view called);

  void begin_line(LineOrigin origin, std::string_view called);
  void line_name(std::string_view name);
  void point(ReadPlace place, std::string_view name);
  void end_line();

  /// The file ends here, in the middle of whatever is being read.
  void broken_past(std::size_t line) { result_.broken_past = static_cast<std::uint32_t>(line); }

  MarksAndLines take() { return std::move(result_); }

 private:
  std::optional<GridPosition> checked(ReadPlace place, std::string_view what);
  std::string name_of(std::string_view text);
  Thinned few_of_line() const;

  MarksAndLines result_;
  std::unordered_set<std::uint64_t> marked_;  // places of the marks
  std::uint32_t line_ = 0;
  std::size_t points_read_ = 0;
  // the line being read
  LineOrigin origin_ = LineOrigin::line;
  std::string called_, name_;
  std::uint32_t began_ = 0;
  std::vector<GridPosition> points_;
  std::vector<std::string> point_names_;  // as far as the last point that has one
};

}  // namespace fogsheet
