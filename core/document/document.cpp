#include "core/document/document.h"

#include <cmath>

#include "core/base/check.h"

namespace fogsheet {
namespace {

struct KindRow {
  MarkKind kind;
  std::string_view name;
};

constexpr KindRow k_kinds[] = {{MarkKind::landmark, "landmark"},
                               {MarkKind::light, "light"},
                               {MarkKind::turn, "turn"},
                               {MarkKind::danger, "danger"},
                               {MarkKind::other, "other"}};

}  // namespace

std::int64_t whole_parts(double value, double parts_per_unit) {
  constexpr double k_exact_below = 2'251'799'813'685'248.0;  // 2^51: from there on neighbouring parts would round together
  SHEET_CHECK(std::abs(value) * parts_per_unit < k_exact_below, "a number that whole parts can't hold");
  return std::llround(value * parts_per_unit);
}

double from_parts(std::int64_t parts, double parts_per_unit) { return static_cast<double>(parts) / parts_per_unit; }

std::string_view mark_kind_name(MarkKind kind) {
  for (const KindRow& row : k_kinds)
    if (row.kind == kind) return row.name;
  check_failed("kind", "a kind of mark without a name", __FILE__, __LINE__);
}

std::optional<MarkKind> mark_kind_named(std::string_view name) {
  for (const KindRow& row : k_kinds)
    if (row.name == name) return row.kind;
  return std::nullopt;
}

Position place_of(const Document& document, MarkId mark) {
  const Mark* found = document.marks.find(mark);
  SHEET_CHECK(found != nullptr, "the place of a mark that there is not");
  return unquantise(found->at);
}

Document blank_of(const Document& document) {
  return {.sheet = document.sheet, .chart_note = document.chart_note, .marks = {}, .legs = {}, .roses = document.roses, .text_notes = {}, .next_id = document.next_id};
}

Projection projection_of(const Document& document) {
  return Projection(unquantise(document.sheet.middle), document.sheet.scale, document.sheet.paper);
}

bool lies_on_sheet(const Projection& projection, GridPosition at, double slack_mm) {
  const SheetPoint point = projection.to_sheet(unquantise(at));
  const SheetRect& neat = projection.neat_line();
  return point.x_mm >= neat.left_mm - slack_mm && point.x_mm <= neat.right_mm + slack_mm &&
         point.y_mm >= neat.top_mm - slack_mm && point.y_mm <= neat.bottom_mm + slack_mm;
}

bool is_sheet_date(Date date) { return is_valid(date) && date.year >= k_first_sheet_year && date.year <= k_last_sheet_year; }

}  // namespace fogsheet
