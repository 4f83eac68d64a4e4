#include "core/formats/marks_and_lines.h"

#include <cmath>

#include "core/base/utf8.h"
#include "core/formats/bytes.h"

namespace fogsheet {
namespace {

constexpr double k_parts_per_m = 100;           // of how far off points may lie
constexpr double k_parts_per_number = 1'000'000;  // of a problem's numbers
constexpr std::size_t k_most_what_bytes = 400;

void write(ByteWriter& out, GridPosition at) {
  out.signed_whole(at.lat);
  out.signed_whole(at.lon);
}

void write(ByteWriter& out, const FileMark& mark) {
  out.text(mark.name);
  out.whole(static_cast<std::uint64_t>(mark.kind));
  write(out, mark.at);
  out.signed_whole(whole_parts(mark.radius_nm, k_parts_per_nm));
  out.signed_whole(whole_parts(mark.height_m, k_parts_per_metre));
  out.text(mark.note);
}

void write(ByteWriter& out, const FileLine& line) {
  out.whole(static_cast<std::uint64_t>(line.origin));
  out.text(line.name);
  out.whole(line.points_there);
  out.signed_whole(whole_parts(line.within_m, k_parts_per_m));
  out.whole(line.points.size());
  for (const FilePoint& point : line.points) {
    write(out, point.at);
    out.text(point.name);
  }
}

void write(ByteWriter& out, const Problem& problem) {
  out.whole(static_cast<std::uint64_t>(problem.fault) + 1);
  out.whole(problem.texts.size());
  for (const std::string& text : problem.texts) out.text(text);
  out.whole(problem.numbers.size());
  for (const double number : problem.numbers) out.signed_whole(whole_parts(number, k_parts_per_number));
}

/// Reads what is written above. Whatever does not fit makes `ok` false.
class Reader {
 public:
  explicit Reader(std::span<const std::uint8_t> bytes) : in_(bytes) {}

  Result<MarksAndLines> all() {
    if (const std::uint64_t fault = in_.whole(); fault != 0) {
      Problem problem{.fault = static_cast<Fault>(fault - 1)};
      for (std::uint64_t i = count(10); i-- > 0;) problem.texts.emplace_back(in_.text(k_most_what_bytes));
      for (std::uint64_t i = count(10); i-- > 0;) problem.numbers.push_back(from_parts(in_.signed_whole(), k_parts_per_number));
      return in_.at_end() && fault <= static_cast<std::uint64_t>(k_last_fault) + 1 ? problem : Problem{.fault = Fault::text_not_ours};
    }
    MarksAndLines read;
    read.title = in_.text(k_most_name_bytes);
    for (std::uint64_t i = count(k_most_marks); i-- > 0;) read.marks.push_back(mark());
    for (std::uint64_t i = count(k_most_file_lines); i-- > 0;) read.lines.push_back(line());
    for (std::uint64_t i = count(k_most_left_out); i-- > 0;) {
      LeftOut left{.why = static_cast<LeftOutWhy>(choice(k_left_out_whys)), .line = small()};
      left.what = in_.text(k_most_what_bytes);
      read.left_out.push_back(std::move(left));
    }
    read.left_out_count = small();
    if (choice(2) == 1) {
      const std::uint32_t at = small();
      read.departure = Departure{at, std::string(in_.text(k_most_what_bytes))};
    }
    read.broken_past = small();
    if (!sound_ || !in_.at_end()) return Fault::text_not_ours;
    return read;
  }

 private:
  // A number that a loop may believe: what follows takes a byte each at least.
  std::uint64_t count(std::uint64_t most) {
    const std::uint64_t told = in_.whole();
    if (told <= most && told <= in_.left()) return told;
    sound_ = false;
    return 0;
  }

  int choice(int choices) {
    const std::uint64_t told = in_.whole();
    if (told < static_cast<std::uint64_t>(choices)) return static_cast<int>(told);
    sound_ = false;
    return 0;
  }

  std::uint32_t small() {
    const std::uint64_t told = in_.whole();
    sound_ = sound_ && told <= UINT32_MAX;
    return static_cast<std::uint32_t>(told);
  }

  double parts(double per_unit, double most) {
    const double value = from_parts(in_.signed_whole(), per_unit);
    if (value >= 0 && value <= most) return value;
    sound_ = false;
    return 0;
  }

  GridPosition place() {
    const std::int64_t lat = in_.signed_whole(), lon = in_.signed_whole();
    constexpr auto k_most_lat = static_cast<std::int64_t>(k_max_sheet_latitude_deg * k_grid_per_degree), k_half_turn = static_cast<std::int64_t>(180 * k_grid_per_degree);
    if (lat >= -k_most_lat && lat <= k_most_lat && lon >= -k_half_turn && lon < k_half_turn) return {static_cast<std::int32_t>(lat), static_cast<std::int32_t>(lon)};
    sound_ = false;
    return {};
  }

  FileMark mark() {
    FileMark mark{.name = std::string(in_.text(k_most_name_bytes))};
    mark.kind = static_cast<MarkKind>(choice(static_cast<int>(MarkKind::other) + 1));
    mark.at = place();
    mark.radius_nm = parts(k_parts_per_nm, k_most_danger_radius_nm);
    mark.height_m = parts(k_parts_per_metre, k_most_height_m);
    mark.note = in_.text(k_most_note_bytes);
    sound_ = sound_ && (mark.kind == MarkKind::danger) == (mark.radius_nm > 0) && is_utf8(mark.name) && is_utf8(mark.note);
    return mark;
  }

  FileLine line() {
    FileLine line{.origin = static_cast<LineOrigin>(choice(3))};
    line.name = in_.text(k_most_name_bytes);
    line.points_there = small();
    line.within_m = parts(k_parts_per_m, 1e8);
    for (std::uint64_t i = count(k_most_marks); i-- > 0;) {
      FilePoint point{.at = place()};
      point.name = in_.text(k_most_name_bytes);
      sound_ = sound_ && is_utf8(point.name);
      line.points.push_back(std::move(point));
    }
    sound_ = sound_ && line.points.size() >= 2 && is_utf8(line.name);
    return line;
  }

  ByteReader in_;
  bool sound_ = true;
};

}  // namespace

MarksAndLines marks_and_lines_of(const Document& document) {
  MarksAndLines all{.title = document.sheet.name};
  for (const Mark& mark : document.marks)
    all.marks.push_back({.name = mark.name, .kind = mark.kind, .at = mark.at, .radius_nm = mark.radius_nm, .height_m = mark.height_m, .note = mark.note});
  MarkId reached{0};
  for (const Leg& leg : document.legs) {
    const Mark &from = *document.marks.find(leg.from), &to = *document.marks.find(leg.to);
    if (all.lines.empty() || leg.from != reached) all.lines.push_back({.origin = LineOrigin::route, .points = {{from.at, from.name}}});
    all.lines.back().points.push_back({to.at, to.name});
    reached = leg.to;
  }
  for (FileLine& line : all.lines) {
    line.points_there = static_cast<std::uint32_t>(line.points.size());
    line.name = fitting(line.points.front().name + " - " + line.points.back().name, k_most_name_bytes);
  }
  return all;
}

std::vector<std::uint8_t> to_bytes(const Result<MarksAndLines>& read) {
  ByteWriter out;
  if (!read) {
    write(out, read.problem());
    return out.bytes();
  }
  out.whole(0);
  out.text(read->title);
  out.whole(read->marks.size());
  for (const FileMark& mark : read->marks) write(out, mark);
  out.whole(read->lines.size());
  for (const FileLine& line : read->lines) write(out, line);
  out.whole(read->left_out.size());
  for (const LeftOut& left : read->left_out) {
    out.whole(static_cast<std::uint64_t>(left.why));
    out.whole(left.line);
    out.text(left.what);
  }
  out.whole(read->left_out_count);
  out.whole(read->departure ? 1 : 0);
  if (read->departure) {
    out.whole(read->departure->line);
    out.text(read->departure->what);
  }
  out.whole(read->broken_past);
  return out.bytes();
}

Result<MarksAndLines> marks_and_lines_from(std::span<const std::uint8_t> bytes) { return Reader(bytes).all(); }

}  // namespace fogsheet
