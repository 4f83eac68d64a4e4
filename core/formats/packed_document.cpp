#include "core/formats/packed_document.h"

#include <algorithm>
#include <cstdlib>
#include <string>
#include <utility>

#include "core/base/check.h"
#include "core/base/utf8.h"
#include "core/formats/document_fields.h"
#include "core/formats/document_sections.h"
#include "core/formats/range_coder.h"
#include "core/formats/text_odds.h"

namespace fogsheet {
namespace {

constexpr std::int64_t k_circle = 216'000'000;  // 0.0001'
constexpr std::int64_t k_most_lat = 45'000'000;
constexpr int k_usual_year = 2026;              // those near it take least
constexpr std::int64_t k_coarsest = 1'000;      // 0.1'
constexpr std::string_view k_usual_datum = "WGS84";
constexpr Odds k_rare{4'096, 4};

// Those that a packed text has inside, in their order; the others are its fields.
constexpr Section k_inner[] = {Section::chart_note,    Section::mark_details, Section::readings, Section::own_places,
                               Section::sheet_details, Section::text_notes,   Section::compass,  Section::passages};

std::int64_t wrapped(std::int64_t east) { return (east % k_circle + k_circle) % k_circle; }
std::int64_t below(std::int64_t value) { return value - (value % k_coarsest + k_coarsest) % k_coarsest; }

// Cells from a south-west corner on, which lies on whole 0.1'.
struct Area {
  std::int64_t south = 0, west = 0, height = 0, width = 0;  // whole 0.1'
};

Area around(GridPosition middle, std::int64_t half_height, std::int64_t half_width) {
  Area area{.south = below(middle.lat - half_height), .west = below(middle.lon - half_width)};
  area.height = below(middle.lat + half_height) + k_coarsest - area.south;
  area.width = std::min(below(middle.lon + half_width) + k_coarsest - area.west, k_circle);
  return area;
}

class Packer {
 public:
  Packer() = default;
  explicit Packer(std::span<const std::uint8_t> bytes) : coder_(bytes) {}

  /// Writes the document, or makes it.
  Result<Done> run(Document& document);
  std::vector<std::uint8_t> finish() { return coder_.finish(); }

 private:
  bool is_sound(bool fields_are) const { return coder_.ok() && fields_are; }
  bool flag(Odds& odds, bool value) { return coder_.bit(odds, value); }
  template <class Whole>
  void uniform(Whole& value, std::int64_t least, std::int64_t most);
  bool name(std::string& text, std::size_t least_bytes);
  bool id(std::uint32_t& id);
  void place(GridPosition& at, const Area& area, Odds (&steps)[3]);
  void half_size(std::int64_t& half);
  template <class Row, class Fields>
  bool rows(Table<Row>& table, std::size_t usual, std::size_t most, Fields fields);

  void scale(int& scale);
  bool sheet(Sheet& sheet);
  void area(const Document& document);
  bool roses(Document& document);
  bool marks(Document& document);
  bool legs(Document& document);
  bool next_id(Document& document);
  Result<Done> section(Section section, Document& document);

  RangeCoder coder_;
  TextOdds names_, others_;
  Odds steps_[3], kinds_[8] = {{}, k_rare, k_rare, k_rare, k_rare, k_rare, k_rare, k_rare};
  NumberOdds numbers_, ids_, radii_, froms_, tos_, sizes_;
  Area area_;
  std::uint32_t expected_id_ = 1;
};

template <class Whole>
void Packer::uniform(Whole& value, std::int64_t least, std::int64_t most) {
  value = static_cast<Whole>(least + static_cast<std::int64_t>(coder_.uniform(static_cast<std::uint64_t>(static_cast<std::int64_t>(value) - least), static_cast<std::uint64_t>(most - least + 1))));
}

bool Packer::name(std::string& text, std::size_t least_bytes) {
  names_.text(coder_, text, k_most_name_bytes);
  if (!is_sound(text.size() >= least_bytes && text.size() <= k_most_name_bytes && is_utf8(text))) return false;
  if (coder_.reads()) text = repaired_utf8(text);
  return true;
}

// Mostly the one after the row before.
bool Packer::id(std::uint32_t& id) {
  const std::int64_t step = ids_.signed_whole(coder_, static_cast<std::int64_t>(id) - expected_id_);
  if (std::abs(step / 2) > static_cast<std::int64_t>(k_most_id)) return false;
  const std::int64_t value = expected_id_ + step;
  id = static_cast<std::uint32_t>(value);
  expected_id_ = id + 1;
  return is_sound(value >= 1 && value < static_cast<std::int64_t>(k_most_id));
}

void Packer::place(GridPosition& at, const Area& area, Odds (&steps)[3]) {
  static constexpr std::int64_t k_steps[] = {1'000, 100, 10, 1};
  std::size_t coarse = 0;
  for (; coarse < 3; ++coarse) {
    const bool is_on = at.lat % k_steps[coarse] == 0 && at.lon % k_steps[coarse] == 0;
    if (flag(steps[coarse], is_on)) break;
  }
  const std::int64_t step = k_steps[coarse];
  std::int64_t north = (at.lat - area.south) / step, east = wrapped(at.lon - area.west) / step;
  uniform(north, 0, area.height / step - 1);
  uniform(east, 0, area.width / step - 1);
  at.lat = static_cast<std::int32_t>(area.south + north * step);
  at.lon = static_cast<std::int32_t>(wrapped(area.west + east * step + k_circle / 2) - k_circle / 2);
}

// Rounded up to four figures of two: at most an eighth more than it need be.
void Packer::half_size(std::int64_t& half) {
  constexpr std::int64_t k_figures = 8;
  int doublings = 0;
  while ((half - 1) >> doublings >= 2 * k_figures) ++doublings;
  std::int64_t figures = ((half - 1) >> doublings) + 1;
  uniform(doublings, 0, 23);  // 16 << 23 is more than half a circle
  uniform(figures, 1, 2 * k_figures);
  half = figures << doublings;
}

template <class Row, class Fields>
bool Packer::rows(Table<Row>& table, std::size_t usual, std::size_t most, Fields fields) {
  const std::int64_t more = numbers_.signed_whole(coder_, static_cast<std::int64_t>(table.size()) - static_cast<std::int64_t>(usual));
  if (more < -static_cast<std::int64_t>(usual) || more > static_cast<std::int64_t>(most - usual)) return false;
  const std::size_t count = usual + static_cast<std::size_t>(more);
  std::vector<Row> made;
  auto row_of = table.begin();
  for (std::size_t i = 0; i < count; ++i) {
    Row row;
    if (!coder_.reads()) row = *row_of++;
    if (!id(row.id.value) || !fields(row)) return false;
    if (coder_.reads()) made.push_back(std::move(row));
  }
  if (coder_.reads()) table = Table<Row>::of(std::move(made));
  return true;
}

void Packer::scale(int& scale) {
  static constexpr int k_steps[] = {25'000, 1'000, 1};
  std::size_t coarse = 0;
  for (; coarse < 2; ++coarse) {
    Odds even;
    if (flag(even, scale % k_steps[coarse] == 0)) break;
  }
  scale /= k_steps[coarse];
  uniform(scale, 0, static_cast<int>(k_greatest_scale) / k_steps[coarse]);
  scale *= k_steps[coarse];
}

bool Packer::sheet(Sheet& sheet) {
  if (!name(sheet.name, 0)) return false;
  Odds steps[3];
  place(sheet.middle, {.south = -k_most_lat, .west = -k_circle / 2, .height = 2 * k_most_lat + k_coarsest, .width = k_circle}, steps);
  scale(sheet.scale);
  int paper = static_cast<int>(std::find(std::begin(fields::k_papers), std::end(fields::k_papers), sheet.paper) - std::begin(fields::k_papers));
  uniform(paper, 0, static_cast<int>(std::size(fields::k_papers)) - 1);
  sheet.paper = fields::k_papers[paper];
  sheet.date.year = k_usual_year + static_cast<int>(std::clamp<std::int64_t>(numbers_.signed_whole(coder_, sheet.date.year - k_usual_year), -1'000, 1'000));
  uniform(sheet.date.month, 1, 12);
  uniform(sheet.date.day, 1, 31);
  Odds other = k_rare;
  if (!flag(other, sheet.datum != k_usual_datum)) sheet.datum = k_usual_datum;
  else if (!name(sheet.datum, 1)) return false;
  return is_sound(is_sheet_date(sheet.date) && sheet.scale >= k_least_scale && std::abs(sheet.middle.lat) <= k_most_lat &&
                  sheet_within_bounds(unquantise(sheet.middle), sheet.scale, sheet.paper));
}

void Packer::area(const Document& document) {
  const GridPosition middle = document.sheet.middle;
  std::int64_t height = 1, width = 1;
  const auto take_in = [&](GridPosition at) {
    height = std::max(height, std::abs(static_cast<std::int64_t>(at.lat) - middle.lat));
    const std::int64_t east = wrapped(at.lon - static_cast<std::int64_t>(middle.lon));
    width = std::max(width, std::min(east, k_circle - east));
  };
  for (const Mark& mark : document.marks) take_in(mark.at);
  for (const Rose& rose : document.roses) take_in(rose.at);
  half_size(height);
  half_size(width);
  area_ = around(middle, height, width);
}

bool Packer::roses(Document& document) {
  return rows(document.roses, 1, k_most_roses, [&](Rose& rose) {
    place(rose.at, area_, steps_);
    std::int64_t radius = whole_parts(rose.radius_mm, k_parts_per_mm);
    uniform(radius, whole_parts(k_least_rose_radius_mm, k_parts_per_mm), whole_parts(k_most_rose_radius_mm, k_parts_per_mm));
    rose.radius_mm = from_parts(radius, k_parts_per_mm);
    return is_sound(std::abs(rose.at.lat) <= k_most_lat);
  });
}

bool Packer::marks(Document& document) {
  return rows(document.marks, 0, k_most_marks, [&](Mark& mark) {
    const auto code = static_cast<unsigned>(std::find(std::begin(fields::k_kinds), std::end(fields::k_kinds), mark.kind) - std::begin(fields::k_kinds));
    unsigned node = 1;
    for (int shift = 2; shift >= 0; --shift) node = 2 * node + (flag(kinds_[node], code >> shift & 1) ? 1 : 0);
    const std::size_t read = node - std::size(kinds_);
    if (read >= std::size(fields::k_kinds)) return false;
    mark.kind = fields::k_kinds[read];
    place(mark.at, area_, steps_);
    if (!name(mark.name, 1) || std::abs(mark.at.lat) > k_most_lat) return false;
    if (mark.kind != MarkKind::danger) return true;
    const std::uint64_t radius = radii_.whole(coder_, static_cast<std::uint64_t>(whole_parts(mark.radius_nm, k_parts_per_nm)));
    mark.radius_nm = from_parts(static_cast<std::int64_t>(std::min<std::uint64_t>(radius, 1'000'000)), k_parts_per_nm);
    return is_sound(mark.radius_nm > 0 && mark.radius_nm <= k_most_danger_radius_nm);
  });
}

// Its ends as places among the marks: where from, after where the leg before ended, and how many marks further on it leads.
bool Packer::legs(Document& document) {
  std::vector<MarkId> ids;
  for (const Mark& mark : document.marks) ids.push_back(mark.id);
  std::vector<std::pair<MarkId, std::int64_t>> places;
  for (const MarkId id : ids) places.emplace_back(id, static_cast<std::int64_t>(places.size()));
  std::sort(places.begin(), places.end());
  const auto place_of = [&](MarkId id) {
    const auto found = std::lower_bound(places.begin(), places.end(), std::pair(id, std::int64_t{0}));
    return found == places.end() ? 0 : found->second;
  };
  std::int64_t last = 0;
  const auto end = [&](NumberOdds& odds, MarkId& mark) {
    const std::int64_t step = odds.signed_whole(coder_, coder_.reads() ? 0 : place_of(mark) - last);
    const auto count = static_cast<std::int64_t>(ids.size());
    if (step < -count || step > count || last + step < 0 || last + step >= count) return false;
    last += step;
    mark = ids[static_cast<std::size_t>(last)];
    return coder_.ok();
  };
  return rows(document.legs, ids.empty() ? 0 : ids.size() - 1, k_most_legs, [&](Leg& leg) { return end(froms_, leg.from) && end(tos_, leg.to); });
}

bool Packer::next_id(Document& document) {
  std::uint32_t least = expected_id_;
  for (const Mark& mark : document.marks) least = std::max(least, mark.id.value + 1);
  for (const Rose& rose : document.roses) least = std::max(least, rose.id.value + 1);
  const std::uint64_t above = numbers_.whole(coder_, document.next_id - static_cast<std::uint64_t>(least));
  document.next_id = static_cast<std::uint32_t>(std::min<std::uint64_t>(least + above, k_most_id));
  return is_sound(above <= k_most_id - least);
}

Result<Done> Packer::section(Section section, Document& document) {
  const std::optional<ByteWriter> written = coder_.reads() ? std::nullopt : write_section(document, section);
  Odds present = k_rare;
  if (!flag(present, written.has_value())) return Done{};
  const auto size = static_cast<std::size_t>(sizes_.whole(coder_, written ? written->bytes().size() : 0));
  std::vector<std::uint8_t> bytes;
  std::uint8_t before = 0;
  for (std::size_t i = 0; i < size && coder_.ok(); ++i) bytes.push_back(before = others_.byte(coder_, before, written ? written->bytes()[i] : std::uint8_t{0}));
  if (!coder_.ok()) return Fault::text_cut_short;
  return coder_.reads() ? read_section(section, bytes, document) : Done{};
}

Result<Done> Packer::run(Document& document) {
  const auto bad = [](Section section) { return Problem{.fault = Fault::text_section, .texts = {std::string(section_name(section))}, .numbers = {0}}; };
  if (!sheet(document.sheet)) return bad(Section::sheet);
  area(document);
  if (!roses(document)) return bad(Section::roses);
  if (!marks(document)) return bad(Section::marks);
  if (!legs(document)) return bad(Section::legs);
  if (!next_id(document)) return bad(Section::next_id);
  for (const Section each : k_inner) {
    const Result<Done> done = section(each, document);
    if (!done) return done;
  }
  return Done{};
}

}  // namespace

std::vector<std::uint8_t> pack(const Document& document) {
  Document copy = document;
  Packer packer;
  const Result<Done> packed = packer.run(copy);
  SHEET_CHECK(packed.ok(), "a document that no text can hold");
  return packer.finish();
}

Result<Document> unpack(std::span<const std::uint8_t> bytes) {
  Document document;
  Packer packer(bytes);
  const Result<Done> read = packer.run(document);
  if (!read) return read.problem();
  return document;
}

}  // namespace fogsheet
