#include "core/exchange/gpx_reader.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "core/exchange/gpx_names.h"
#include "core/exchange/gpx_rules.h"
#include "core/exchange/xml.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_text = 4'000;  // of one element: more than any name or note we keep

// What an element is to us, by its name and where it stands. `other` is read past.
enum class Part { other, gpx, metadata, wpt, rte, rtept, trk, trkseg, trkpt, extensions, name, words, remark, type, radius, height };

bool is_point(Part part) { return part == Part::wpt || part == Part::rtept || part == Part::trkpt; }

Part part_in(Part parent, std::string_view local) {
  const bool has_words = is_point(parent) || parent == Part::rte || parent == Part::trk || parent == Part::metadata;
  if (has_words && local == "name") return Part::name;
  if (parent == Part::gpx) {
    if (local == "wpt") return Part::wpt;
    if (local == "rte") return Part::rte;
    if (local == "trk") return Part::trk;
    if (local == "metadata") return Part::metadata;
    if (local == "name") return Part::name;  // of GPX 1.0
  }
  if (parent == Part::rte && local == "rtept") return Part::rtept;
  if (parent == Part::trk && local == "trkseg") return Part::trkseg;
  if (parent == Part::trkseg && local == "trkpt") return Part::trkpt;
  if (parent == Part::wpt) {
    if (local == "desc") return Part::words;
    if (local == "cmt") return Part::remark;
    if (local == "type") return Part::type;
    if (local == "extensions") return Part::extensions;
  }
  return Part::other;
}

// A number as the wild has it: with a decimal comma too.
std::optional<double> number_in(std::string_view text) {
  std::string plain(trimmed(text));
  if (const std::size_t comma = plain.find(','); comma != std::string::npos) plain[comma] = '.';
  if (plain.starts_with('+')) plain.erase(0, 1);
  if (plain.starts_with('.') || plain.starts_with("-.")) plain.insert(plain.find('.'), "0");
  return parse_number(plain);
}

class Reader : public XmlEvents {
 public:
  explicit Reader(GpxCounts& counts) : counts_(counts) {}

  void begin() override {
    collector_ = Collector();
    counts_ = {};
    frames_.clear();
    rules_.begin();
    mark_ = {};
    other_root_.clear();
  }

  bool open(XmlName name, const std::vector<XmlAttribute>& attributes, std::size_t line) override {
    collector_.at_line(line);
    if (!rules_.open(name, attributes)) collector_.depart(name.local);
    if (frames_.empty()) {
      if (name.local != "gpx") {
        other_root_ = name.local;
        return false;
      }
      space_ = name.space;
      frames_.push_back({Part::gpx});
      return true;
    }
    const Part parent = frames_.back().part;
    frames_.push_back({name.space == space_ ? part_in(parent, name.local) : parent == Part::extensions && name.space == k_extension_space ? extension(name.local) : Part::other});
    opened(frames_.back().part, attributes);
    return true;
  }

  void text(std::string_view piece) override {
    if (frames_.empty()) return;
    std::string& text = frames_.back().text;
    text.append(piece.substr(0, k_most_text - std::min(k_most_text, text.size())));
  }

  void close() override {
    if (frames_.empty()) return;  // an empty element still ends after reading was stopped at its begin
    const Frame frame = std::move(frames_.back());
    frames_.pop_back();
    if (!rules_.close(frame.text)) collector_.depart(trimmed(frame.text));
    if (!frames_.empty()) closed(frame);
  }

  const std::string& other_root() const { return other_root_; }

  /// What was whole before the file broke.
  MarksAndLines take_before(std::size_t line) {
    collector_.at_line(line);
    const bool in_line = std::any_of(frames_.begin(), frames_.end(), [](const Frame& frame) { return frame.part == Part::rte || frame.part == Part::trkseg; });
    if (in_line) collector_.end_line();
    collector_.broken_past(line);
    return collector_.take();
  }

  MarksAndLines take(const XmlOddities& oddities) {
    if (oddities.prefix_undeclared) collector_.depart("xmlns");
    if (oddities.encoding_untold) collector_.depart("encoding");
    return collector_.take();
  }

 private:
  struct Frame {
    Part part = Part::other;
    std::string text = {};
  };

  static Part extension(std::string_view local) { return local == k_radius_element ? Part::radius : local == k_height_element ? Part::height : Part::other; }

  void opened(Part part, const std::vector<XmlAttribute>& attributes) {
    if (is_point(part)) {
      mark_ = {};
      remark_.clear();
      place_ = {};
      for (const XmlAttribute& each : attributes) {
        if (each.name.local == "lat") place_.lat_deg = number_in(each.value);
        if (each.name.local == "lon") place_.lon_deg = number_in(each.value);
      }
    }
    switch (part) {
      case Part::wpt: ++counts_.wpt; break;
      case Part::rtept: ++counts_.rtept; break;
      case Part::trkpt: ++counts_.trkpt; break;
      case Part::rte:
        ++counts_.rte;
        collector_.begin_line(LineOrigin::route, "rte");
        break;
      case Part::trk:
        ++counts_.trk;
        track_name_.clear();
        break;
      case Part::trkseg:
        collector_.begin_line(LineOrigin::track, "trk");
        collector_.line_name(track_name_);
        break;
      default: break;
    }
  }

  void closed(const Frame& frame) {
    const Part parent = frames_.back().part;
    switch (frame.part) {
      case Part::wpt:
        if (trimmed(mark_.note).empty()) mark_.note = std::move(remark_);
        collector_.mark(std::move(mark_), place_, "wpt");
        break;
      case Part::rtept: collector_.point(place_, mark_.name); break;
      case Part::trkpt: collector_.point(place_, {}); break;
      case Part::rte:
      case Part::trkseg: collector_.end_line(); break;
      case Part::name:
        if (is_point(parent)) mark_.name = frame.text;
        else if (parent == Part::rte) collector_.line_name(frame.text);
        else if (parent == Part::trk) track_name_ = frame.text;
        else collector_.title(frame.text);
        break;
      case Part::words: mark_.note = frame.text; break;
      case Part::remark: remark_ = frame.text; break;
      case Part::type: mark_.kind = mark_kind_named(trimmed(frame.text)).value_or(MarkKind::other); break;
      case Part::radius: mark_.radius_nm = number_in(frame.text).value_or(0); break;
      case Part::height: mark_.height_m = number_in(frame.text).value_or(0); break;
      default: break;
    }
  }

  GpxCounts& counts_;
  Collector collector_;
  GpxRules rules_;
  std::vector<Frame> frames_;
  std::string space_, other_root_;
  // the point, and the track, being read
  FileMark mark_;
  std::string remark_;
  ReadPlace place_;
  std::string track_name_;
};

Problem of_other_kind(std::string_view root) { return {.fault = Fault::file_of_other_kind, .texts = {"XML", std::string(fitting(root, 100))}}; }

}  // namespace

Result<MarksAndLines> read_gpx(std::string_view bytes, GpxCounts& counts) {
  Reader reader(counts);
  const Result<XmlOddities> read = read_xml(bytes, reader);
  if (!read) {
    const Problem& problem = read.problem();
    if (problem.fault == Fault::file_own_types && problem.texts[0] != "gpx") return of_other_kind(problem.texts[0]);  // a page of the web, more often than not
    if (problem.fault != Fault::file_broken) return problem;
    MarksAndLines before = reader.take_before(static_cast<std::size_t>(problem.numbers[0]));
    if (before.marks.empty() && before.lines.empty()) return problem;
    return before;
  }
  if (!reader.other_root().empty()) return of_other_kind(reader.other_root());
  return reader.take(*read);
}

Result<MarksAndLines> read_gpx(std::string_view bytes) {
  GpxCounts counts;
  return read_gpx(bytes, counts);
}

}  // namespace fogsheet
