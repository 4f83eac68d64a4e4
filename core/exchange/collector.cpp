#include "core/exchange/collector.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/utf8.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_what_bytes = 100;

// On one line: what is not to be seen becomes a blank, and several blanks become one.
std::string on_one_line(std::string_view text) {
  std::string line;
  for (const char c : repaired_utf8(text)) {
    const bool blank = static_cast<unsigned char>(c) <= ' ' || c == 0x7F;
    if (!blank) line += c;
    else if (!line.empty() && line.back() != ' ') line += ' ';
  }
  return std::string(trimmed(line));
}

// Lines stay lines; nothing else that is not to be seen stays.
std::string on_lines(std::string_view text) {
  std::string lines;
  for (const char c : repaired_utf8(text))
    if (static_cast<unsigned char>(c) >= ' ' || c == '\n' || c == '\t') lines += c == '\t' ? ' ' : c;
  return std::string(trimmed(lines));
}

std::uint64_t key_of(GridPosition at) { return static_cast<std::uint64_t>(static_cast<std::uint32_t>(at.lat)) << 32 | static_cast<std::uint32_t>(at.lon); }

}  // namespace

void Collector::leave_out(LeftOutWhy why, std::string_view what) {
  ++result_.left_out_count;
  if (result_.left_out.size() < k_most_left_out) result_.left_out.push_back({why, line_, std::string(fitting(on_one_line(what), k_most_what_bytes))});
}

void Collector::depart(std::string_view what) {
  if (!departed()) result_.departure = Departure{line_, std::string(fitting(on_one_line(what), k_most_what_bytes))};
}

std::string Collector::name_of(std::string_view text) {
  std::string name = on_one_line(text);
  if (name.size() <= k_most_name_bytes) return name;
  leave_out(LeftOutWhy::name_cut, name);
  name.resize(fitting(name, k_most_name_bytes).size());
  return std::string(trimmed(name));
}

std::optional<GridPosition> Collector::checked(ReadPlace place, std::string_view what) {
  const auto left_out = [&](LeftOutWhy why) {
    leave_out(why, what);
    return std::nullopt;
  };
  if (!place.lat_deg || !place.lon_deg || !std::isfinite(*place.lat_deg) || !std::isfinite(*place.lon_deg)) return left_out(LeftOutWhy::place_unreadable);
  if (std::abs(*place.lat_deg) > 90 || std::abs(*place.lon_deg) > 360) return left_out(LeftOutWhy::place_out_of_range);
  if (std::abs(*place.lat_deg) > k_max_sheet_latitude_deg) return left_out(LeftOutWhy::past_sheets);
  return quantise({*place.lat_deg, reduce_longitude_deg(*place.lon_deg)});
}

void Collector::mark(FileMark mark, ReadPlace place, std::string_view called) {
  const std::string_view what = mark.name.empty() ? called : std::string_view(mark.name);
  const std::optional<GridPosition> at = checked(place, what);
  if (!at) return;
  if (result_.marks.size() >= k_most_marks) return leave_out(LeftOutWhy::marks_full, what);
  std::string name = name_of(mark.name);
  std::string note = on_lines(mark.note);
  if (note.size() > k_most_note_bytes) {
    leave_out(LeftOutWhy::note_cut, name);
    note.resize(fitting(note, k_most_note_bytes).size());
  }
  mark.name = std::move(name);
  mark.note = std::move(note);
  mark.at = *at;
  // A danger is a ring round a place: without one it is some other mark.
  if (mark.kind == MarkKind::danger && !(mark.radius_nm >= 1 / k_parts_per_nm && mark.radius_nm <= k_most_danger_radius_nm)) mark.kind = MarkKind::other;
  if (mark.kind != MarkKind::danger) mark.radius_nm = 0;
  if (!(mark.height_m > 0 && mark.height_m <= k_most_height_m)) mark.height_m = 0;
  mark.radius_nm = from_parts(whole_parts(mark.radius_nm, k_parts_per_nm), k_parts_per_nm);
  mark.height_m = from_parts(whole_parts(mark.height_m, k_parts_per_metre), k_parts_per_metre);
  marked_.insert(key_of(*at));
  result_.marks.push_back(std::move(mark));
}

void Collector::begin_line(LineOrigin origin, std::string_view called) {
  origin_ = origin;
  called_ = called;
  began_ = line_;
  name_.clear();
  points_.clear();
  point_names_.clear();
}

void Collector::line_name(std::string_view name) { name_ = name_of(name); }

void Collector::point(ReadPlace place, std::string_view name) {
  const std::optional<GridPosition> at = checked(place, name.empty() ? std::string_view(called_) : name);
  if (!at) return;
  if (points_read_ >= k_most_points_read) return leave_out(LeftOutWhy::points_full, called_);
  ++points_read_;
  points_.push_back(*at);
  if (name.empty()) return;
  point_names_.resize(points_.size());
  point_names_.back() = name_of(name);
}

Thinned Collector::few_of_line() const {
  if (origin_ == LineOrigin::route) return thinned(points_, k_track_tolerance_m, k_most_route_points);
  Thinned all{.kept = {0}};
  for (std::size_t first = 0; first + 1 < points_.size();) {
    std::size_t last = first + 1;
    while (last + 1 < points_.size() && !marked_.contains(key_of(points_[last]))) ++last;
    const Thinned stretch = thinned(std::span(points_).subspan(first, last + 1 - first), k_track_tolerance_m, k_most_track_points);
    for (std::size_t i = 1; i < stretch.kept.size(); ++i) all.kept.push_back(static_cast<std::uint32_t>(first) + stretch.kept[i]);
    all.within_m = std::max(all.within_m, stretch.within_m);
    if (all.kept.size() > k_most_track_points) return thinned(points_, k_track_tolerance_m, k_most_track_points);
    first = last;
  }
  return all;
}

void Collector::end_line() {
  const std::uint32_t now = std::exchange(line_, began_);
  const std::string& what = name_.empty() ? called_ : name_;
  if (points_.size() < 2) {
    leave_out(LeftOutWhy::line_too_short, what);
  } else if (result_.lines.size() >= k_most_file_lines) {
    leave_out(LeftOutWhy::lines_full, what);
  } else {
    FileLine line{.origin = origin_, .name = name_, .points_there = static_cast<std::uint32_t>(points_.size())};
    const auto keep = [&](std::size_t i) { line.points.push_back({points_[i], i < point_names_.size() ? std::move(point_names_[i]) : std::string()}); };
    if (origin_ == LineOrigin::route && points_.size() <= k_most_route_points) {
      for (std::size_t i = 0; i < points_.size(); ++i) keep(i);
    } else {
      const Thinned few = few_of_line();
      for (const std::uint32_t i : few.kept) keep(i);
      line.within_m = few.within_m;
    }
    result_.lines.push_back(std::move(line));
  }
  line_ = now;
}

}  // namespace fogsheet
