#include "core/document/import_actions.h"

#include <algorithm>
#include <optional>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "core/base/utf8.h"
#include "core/document/sheet_actions.h"

namespace fogsheet {
namespace {

constexpr double k_margin_mm = 15;
constexpr std::size_t k_most_names_told = 3;
constexpr std::size_t k_room_for_number = 20;

std::uint64_t key_of(GridPosition at) { return static_cast<std::uint64_t>(static_cast<std::uint32_t>(at.lat)) << 32 | static_cast<std::uint32_t>(at.lon); }
std::uint64_t key_of(MarkId from, MarkId to) { return static_cast<std::uint64_t>(from.value) << 32 | to.value; }

// The document's tables while they grow, with what finds a row in them.
class Importer {
 public:
  Importer(Document& document, const ImportNames& names) : document_(document), names_(names), projection_(projection_of(document)) {
    for (const Mark& mark : document.marks) stand(mark);
    for (const Leg& leg : document.legs) legs_.push_back(leg);
    for (const Leg& leg : legs_) joined_.insert(key_of(leg.from, leg.to));
  }

  void mark(const FileMark& wanted) {
    if (is_there(wanted)) {
      ++result_.known;
      return;
    }
    put({.name = wanted.name, .kind = wanted.kind, .at = wanted.at, .radius_nm = wanted.radius_nm, .height_m = wanted.height_m, .note = wanted.note}, names_.mark_stem);
  }

  void line(const FileLine& line) {
    const std::string stem = line.name.empty() ? names_.turn_stem : std::string(fitting(line.name, k_most_name_bytes - k_room_for_number)) + " ";
    std::optional<MarkId> before;
    for (const FilePoint& point : line.points) {
      const auto stands = at_.find(key_of(point.at));
      const std::optional<MarkId> here = stands != at_.end() ? std::optional(stands->second) : put({.name = point.name, .kind = MarkKind::turn, .at = point.at}, stem);
      if (before && here && *before != *here) leg(*before, *here);
      before = here;
    }
  }

  Import finish() {
    if (result_.marks > 0) document_.marks = Table<Mark>::of(std::move(marks_));
    if (result_.legs > 0) document_.legs = Table<Leg>::of(std::move(legs_));
    return result_;
  }

 private:
  void stand(const Mark& mark) {
    marks_.push_back(mark);
    taken_.insert(mark.name);
    at_.try_emplace(key_of(mark.at), mark.id);
    by_name_.insert(mark.name + '\n' + std::to_string(key_of(mark.at)));
  }

  bool is_there(const FileMark& wanted) const {
    return wanted.name.empty() ? at_.contains(key_of(wanted.at)) : by_name_.contains(wanted.name + '\n' + std::to_string(key_of(wanted.at)));
  }

  bool has_room(std::size_t rows, std::size_t most) {
    if (rows < most && document_.next_id < k_most_id) return true;
    ++result_.no_room;
    return false;
  }

  std::optional<MarkId> put(Mark mark, const std::string& stem) {
    if (!lies_on_sheet(projection_, mark.at)) {
      ++result_.off_sheet;
      if (!mark.name.empty() && result_.off_sheet_names.size() < k_most_names_told) result_.off_sheet_names.push_back(mark.name);
      return std::nullopt;
    }
    if (!has_room(marks_.size(), k_most_marks)) return std::nullopt;
    for (std::size_t& number = numbers_[stem]; mark.name.empty();) {
      std::string name = stem + std::to_string(++number);
      if (!taken_.contains(name)) mark.name = std::move(name);
    }
    mark.id = {document_.next_id++};
    stand(mark);
    ++result_.marks;
    return mark.id;
  }

  void leg(MarkId from, MarkId to) {
    if (joined_.contains(key_of(from, to)) || !has_room(legs_.size(), k_most_legs)) return;
    joined_.insert(key_of(from, to));
    legs_.push_back({.id = {document_.next_id++}, .from = from, .to = to});
    ++result_.legs;
  }

  Document& document_;
  const ImportNames& names_;
  Projection projection_;
  std::vector<Mark> marks_;
  std::vector<Leg> legs_;
  std::unordered_set<std::string> taken_, by_name_;
  std::unordered_map<std::string, std::size_t> numbers_;  // the last one given, by stem
  std::unordered_map<std::uint64_t, MarkId> at_;
  std::unordered_set<std::uint64_t> joined_;
  Import result_;
};

}  // namespace

Import import_into(Document& document, const MarksAndLines& all, const ImportNames& names) {
  Importer importer(document, names);
  for (const FileMark& mark : all.marks) importer.mark(mark);
  for (const FileLine& line : all.lines) importer.line(line);
  return importer.finish();
}

Result<Import> import_marks(History& history, const MarksAndLines& all, const ImportNames& names, const std::string& file) {
  Document next = history.now();
  const Import import = import_into(next, all, names);
  if (import.marks == 0 && import.legs == 0) return Fault::nothing_to_import;
  history.commit(std::move(next), {Act::import_marks, file});
  return import;
}

Result<FittedSheet> sheet_around_import(const MarksAndLines& all, Paper paper) {
  std::vector<Position> places;
  for (const FileMark& mark : all.marks) places.push_back(unquantise(mark.at));
  for (const FileLine& line : all.lines)
    for (const FilePoint& point : line.points) places.push_back(unquantise(point.at));
  if (places.empty()) return Fault::no_marks_to_fit;
  return sheet_holding(places, paper, k_margin_mm);
}

Result<Document> sheet_of_import(const MarksAndLines& all, const ImportNames& names, const std::string& name, Paper paper, Date date) {
  const Result<FittedSheet> fitted = sheet_around_import(all, paper);
  if (!fitted) return fitted.problem();
  Result<Document> made = made_sheet({.name = std::string(fitting(name, k_most_name_bytes)), .mid_lat_deg = fitted->middle.lat_deg, .mid_lon_deg = fitted->middle.lon_deg, .scale = fitted->scale, .paper = paper, .date = date});
  if (!made) return made;
  Document document = std::move(made).value();
  import_into(document, all, names);
  return document;
}

}  // namespace fogsheet
