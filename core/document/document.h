// A sheet as a plain value: what the user put on it, and nothing that follows from it. Courses, variation and all that is
// drawn are computed from it (facts.h, core/figure) and cached outside.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/date.h"
#include "core/base/shared.h"
#include "core/boat/kept_card.h"
#include "core/directions/directions.h"
#include "core/document/ids.h"
#include "core/document/table.h"
#include "core/magnetic/variation.h"
#include "core/passage/passage.h"
#include "core/positions/position.h"
#include "core/sheet/paper.h"
#include "core/sheet/projection.h"

namespace fogsheet {

// Bounds of what a document may hold; a text or a command past them is refused with its reason.
inline constexpr std::size_t k_most_marks = 20'000;
inline constexpr std::size_t k_most_legs = 20'000;
inline constexpr std::size_t k_most_roses = 20;
inline constexpr std::size_t k_most_text_notes = 2'000;
inline constexpr std::size_t k_most_name_bytes = 200;
inline constexpr std::size_t k_most_note_bytes = 1'000;
inline constexpr std::uint32_t k_most_id = 4'000'000'000;
inline constexpr double k_most_danger_radius_nm = 60;
inline constexpr double k_most_height_m = 9'000;
inline constexpr double k_least_rose_radius_mm = 20;
inline constexpr double k_most_rose_radius_mm = 90;
inline constexpr int k_first_sheet_year = 1900;
inline constexpr int k_last_sheet_year = 2100;
inline constexpr double k_most_variation_deg = 180;
inline constexpr double k_most_annual_change_min = 120;

// The numbers of a document are whole multiples of these parts, so that a text keeps each of them exactly.
inline constexpr double k_parts_per_nm = 1'000;                     // radius of a danger
inline constexpr double k_parts_per_metre = 10;                     // height of a mark
inline constexpr double k_parts_per_mm = 10;                        // radius of a rose
inline constexpr double k_parts_per_written_degree = 10;            // a reading written on a leg
inline constexpr double k_parts_per_degree = 1'000'000'000;         // printed variation
inline constexpr double k_parts_per_annual_minute = 1'000'000;      // its annual change

/// The nearest whole number of parts, halves away from zero. @param value finite, its parts below 2^51.
std::int64_t whole_parts(double value, double parts_per_unit);

/// The value of that many parts: the same double for the same number, wherever it is computed.
double from_parts(std::int64_t parts, double parts_per_unit);

enum class MarkKind { landmark, light, turn, danger, other };

std::string_view mark_kind_name(MarkKind kind);
std::optional<MarkKind> mark_kind_named(std::string_view name);

struct Mark {
  MarkId id;
  std::string name;  // UTF-8, not empty, at most k_most_name_bytes
  MarkKind kind = MarkKind::landmark;
  GridPosition at;
  double radius_nm = 0;  // dangers: (0, 60], whole 0.001 nm; 0 for all others
  double height_m = 0;   // (0, 9 000], whole 0.1 m, above the level the user's chart names; 0 when not known
  std::string note = {};  // UTF-8, may be empty, at most k_most_note_bytes

  bool operator==(const Mark&) const = default;
};

/// What was read by hand on a rose and written on a leg. Stale once an end of the leg is not where it was then.
struct WrittenReading {
  double bearing_deg = 0;  // [0, 360), whole 0.1, from the leg's start to its end
  Reference reference = Reference::true_north;
  std::uint32_t revision = 0;  // of the history it was read at, as read() tells
  GridPosition from_at;  // where the leg's ends were
  GridPosition to_at;

  bool operator==(const WrittenReading&) const = default;
};

/// A rhumb line between two marks of the sheet, which differ in place.
struct Leg {
  LegId id;
  MarkId from;
  MarkId to;
  std::optional<WrittenReading> written = {};

  bool operator==(const Leg&) const = default;
};

struct Rose {
  RoseId id;
  GridPosition at;         // its centre
  double radius_mm = 44;   // [20, 90], whole 0.1 mm
  bool own_place = false;  // shows the model's variation at its own place, for the legs nearest to it, not the sheet's

  bool operator==(const Rose&) const = default;
};

/// Words written on the sheet, their first line's left end at a place.
struct TextNote {
  NoteId id;
  GridPosition at;
  std::string text;  // UTF-8, not empty, at most k_most_note_bytes

  bool operator==(const TextNote&) const = default;
};

/// A variation as printed on the user's chart, and the middle the sheet had when it was entered.
struct ChartNote {
  PrintedVariation printed;  // in whole parts; its year from 1900 to 2100
  GridPosition entered_at;

  bool operator==(const ChartNote&) const = default;
};

/// Which school's signs the sheet's plotting wears: British and South African, or American.
enum class SignSet { a, b };

/// The sheet itself. @param scale the number after 1:, whole, in [25 000, 1 000 000].
struct Sheet {
  std::string name;  // UTF-8, may be empty, at most k_most_name_bytes
  GridPosition middle;
  int scale = 100'000;
  Paper paper = Paper::a4_across;
  Date date;
  std::string datum = "WGS84";  // the datum its positions were read on; not empty
  std::string note = {};        // UTF-8, may be empty, at most k_most_note_bytes
  SignSet signs = SignSet::a;

  bool operator==(const Sheet&) const = default;
};

struct Document {
  Sheet sheet;
  std::optional<ChartNote> chart_note;
  Shared<KeptCard> compass = {};  // that the boat is steered by, frozen; none: deviation is not entered
  Shared<Passages> passages = {};   // none: no passage was made yet
  Table<Mark> marks;
  Table<Leg> legs;
  Table<Rose> roses;
  Table<TextNote> text_notes;
  std::uint32_t next_id = 1;  // above every id in use, one count for all tables; at most k_most_id

  bool operator==(const Document&) const = default;
};

/// Where one of its marks lies.
Position place_of(const Document& document, MarkId mark);

/// The sheet with its roses, as it is before anything is plotted on it.
Document blank_of(const Document& document);

Projection projection_of(const Document& document);

/// Whether a mark may lie there: within the neat line, give or take `slack_mm`.
bool lies_on_sheet(const Projection& projection, GridPosition at, double slack_mm = 0);

/// A sheet's date: a day of the calendar from 1900 to 2100. There need be no model for it.
bool is_sheet_date(Date date);

}  // namespace fogsheet
