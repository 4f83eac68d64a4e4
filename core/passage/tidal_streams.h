// The stream as time goes on: not entered, which is a state of its own and not slack water; steady; or by whole hours from
// high water, as tables give it. An hour's stream holds from half an hour before it to half an hour after (common practice,
// no source); of several high waters the nearest counts.
#pragma once

#include <optional>
#include <vector>

#include "core/base/instant.h"
#include "core/passage/stream_triangle.h"

namespace fogsheet {

inline constexpr int k_stream_hours = 6;  // tables reach as far before high water and after it
inline constexpr double k_greatest_drift_kn = 20;

/// A row of a table. @param hour after high water, -6 to 6.
struct StreamHour {
  int hour = 0;
  Stream stream;
  bool operator==(const StreamHour&) const = default;
};

struct TidalStreams {
  enum class Kind { not_entered, steady, by_hours };

  Kind kind = Kind::not_entered;
  Stream steady;
  std::vector<StreamHour> hours;     // in any order; hours may be missing
  std::vector<Instant> high_waters;  // in any order
  bool operator==(const TidalStreams&) const = default;
};

/// What is wrong with them, the first of: number_out_of_range (drift, [0, 20] kn), stream_hour_unknown, stream_hour_twice,
/// high_water_missing. Missing hours are no fault: they are gaps.
std::optional<Problem> fault_of(const TidalStreams& streams);

/// A time of constant stream, from_s <= t < to_s, seconds since 1970; the first begins at minus infinity, the last ends at infinity.
struct StreamPiece {
  double from_s = 0;
  double to_s = 0;
  PlaneVector velocity_kn;  // nought where not entered
  bool entered = false;
  int hour = 0;        // by hours: after that high water, -6 to 6; -7 and 7: past the table
  Instant high_water;  // by hours: the nearest one
};

/// Streams made ready to be looked up: pieces that follow one another without a break.
class StreamTimetable {
 public:
  /// @param streams without a fault.
  explicit StreamTimetable(const TidalStreams& streams);

  const std::vector<StreamPiece>& pieces() const { return pieces_; }

  /// False where no stream was entered at all, as against a gap in a table.
  bool entered() const { return entered_; }

  /// Which piece holds that time, and which one ends there or holds the time right before.
  std::size_t index_at(double seconds) const;
  std::size_t index_before(double seconds) const;

  /// The pieces of [from, to), cut off there. None when that is no time.
  std::vector<StreamPiece> between(double from_s, double to_s) const;

  /// The first piece in [from, to) for which the table has no stream, cut off there.
  std::optional<StreamPiece> first_gap(double from_s, double to_s) const;

 private:
  void add_high_water(Instant high_water, double from_s, double to_s, const StreamPiece* by_hour);

  std::vector<StreamPiece> pieces_;
  bool entered_ = false;
};

}  // namespace fogsheet
