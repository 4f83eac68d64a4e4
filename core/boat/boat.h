// A boat and her compasses, each with its log: checks, swings, cards typed in, trials, adjustments, notes, by date. A document
// of its own, with a labelled past as a sheet has; a sheet that uses a compass holds a frozen copy of its card (kept_card.h).
// What was read is kept as it was read; deviations, coefficients and cards follow from it (swing_record.h, card_of.h).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/date.h"
#include "core/compass/card_place.h"
#include "core/directions/deviation_card.h"
#include "core/directions/directions.h"
#include "core/document/ids.h"

namespace fogsheet {

using CompassId = Id<struct CompassTag>;
using EntryId = Id<struct EntryTag>;

// Bounds of what a boat may hold.
inline constexpr std::size_t k_most_compasses = 20;
inline constexpr std::size_t k_most_log_entries = 2'000;  // of one compass
inline constexpr std::size_t k_most_rows = 200;           // of one check, swing, card or trial

// Numbers are whole multiples of these parts, so that what is kept is kept exactly.
inline constexpr double k_parts_per_read_degree = 10;         // what was read off a compass, a table or a receiver
inline constexpr double k_parts_per_card_degree = 100;        // deviations and standard errors of a card
inline constexpr double k_parts_per_variation_degree = 10'000;  // variation unrounded, as a swing needs it
inline constexpr double k_parts_per_knot = 100;

enum class CompassKind { steering, hand_bearing };

/// What a bearing was trusted from, and what the compass read with the boat pointed there (or the hand compass held to it).
struct CheckRow {
  std::string object = {};                 // may be empty
  std::optional<double> trusted_deg = {};  // [0, 360), by the check's reference; none while it was not entered
  std::optional<double> read_deg = {};     // [0, 360) by compass; none while it was not read
  bool left_out = false;

  bool operator==(const CheckRow&) const = default;
};

struct Check {
  std::string place = {};
  Reference reference = Reference::magnetic;  // of the trusted bearings: magnetic or true
  double variation_deg = 0;                   // east positive; used where they are true
  std::vector<CheckRow> rows = {};

  bool operator==(const Check&) const = default;
};

/// How a swing finds the deviation on a heading. Their order is part of what is kept.
enum class SwingMethod {
  trusted_bearings,  // of a row's own object, read over the compass
  known_object,      // one object of known bearing, read over the compass
  unknown_object,    // one far object of unknown bearing, read over the compass: A can't be found
  relative_bearing,  // one object of known bearing, its angle clockwise from the bow beside the compass's reading
  satellite          // track and speed over the ground
};

enum class TurningTo { not_said, starboard, port };

struct SwingRow {
  double heading_deg = 0;               // the ship's head by compass, [0, 360)
  std::optional<double> read_deg = {};  // the object's bearing by compass, its relative bearing, or the true track; [0, 360)
  std::optional<double> trusted_deg = {};  // trusted_bearings: that of the row's object, by the swing's reference
  std::optional<double> speed_kn = {};  // satellite: over the ground, (0, 60]
  TurningTo turning = TurningTo::not_said;
  int minute = -1;                      // of the day, [0, 1439]; -1 when not noted
  bool left_out = false;

  bool operator==(const SwingRow&) const = default;
};

struct Swing {
  SwingMethod method = SwingMethod::trusted_bearings;
  std::string place = {};
  std::string object = {};
  std::optional<double> object_deg = {};        // [0, 360), by the reference
  Reference reference = Reference::magnetic;    // of object_deg and the rows' trusted bearings: magnetic or true
  double variation_deg = 0;                     // unrounded, east positive
  double variation_sd_deg = 0;                  // of what all rows share; it goes into A
  std::optional<double> object_nm = {};         // how far off the object is, (0, 60]
  std::optional<double> circle_m = {};          // radius of the circle swung on, (0, 5 000]
  std::optional<CardField> field = {};          // where it was done
  std::vector<SwingRow> rows = {};

  bool operator==(const Swing&) const = default;
};

/// A card as an adjuster gave it.
struct TypedCard {
  std::string by = {};
  std::vector<DeviationEntry> entries = {};  // headings whole degrees in order, deviations within 60 deg
  std::optional<CardField> field = {};

  bool operator==(const TypedCard&) const = default;
};

/// One suspect thing, with the boat held on one heading.
struct TrialRow {
  std::string thing;
  std::optional<double> off_deg = {};  // what the compass read, [0, 360)
  std::optional<double> on_deg = {};

  bool operator==(const TrialRow&) const = default;
};

struct Trial {
  std::vector<TrialRow> rows = {};

  bool operator==(const Trial&) const = default;
};

/// An adjustment, after which what was found before holds no more; or a note.
struct Remark {
  bool adjusted = false;
  std::string text;

  bool operator==(const Remark&) const = default;
};

/// Their order is part of what is kept.
using LogEntryKind = std::variant<Check, Swing, TypedCard, Trial, Remark>;

struct LogEntry {
  EntryId id;
  Date date;
  LogEntryKind what;

  bool operator==(const LogEntry&) const = default;
};

struct Compass {
  CompassId id;
  std::string name;  // not empty
  CompassKind kind = CompassKind::steering;
  std::vector<LogEntry> log = {};  // as they were entered; shown by date

  bool operator==(const Compass&) const = default;
};

struct Boat {
  std::string name;  // not empty
  std::vector<Compass> compasses = {};
  std::uint32_t next_id = 1;  // above every id in use

  bool operator==(const Boat&) const = default;
};

const Compass* find(const Boat& boat, CompassId id);
const LogEntry* find(const Boat& boat, EntryId id);
/// The compass whose log holds that entry; null for none.
const Compass* owner_of(const Boat& boat, EntryId id);

}  // namespace fogsheet
