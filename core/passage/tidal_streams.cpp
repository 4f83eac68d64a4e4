#include "core/passage/tidal_streams.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <limits>
#include <utility>

namespace fogsheet {

namespace {

constexpr double k_ever = std::numeric_limits<double>::infinity();
constexpr int k_rows = 2 * k_stream_hours + 1;

std::size_t row_of(int hour) { return static_cast<std::size_t>(hour + k_stream_hours); }

std::optional<Problem> fault_of(const Stream& stream) {
  if (stream.drift_kn >= 0 && stream.drift_kn <= k_greatest_drift_kn) return std::nullopt;
  return Problem{.fault = Fault::number_out_of_range, .texts = {"drift"}, .numbers = {stream.drift_kn, 0, k_greatest_drift_kn}};
}

}  // namespace

std::optional<Problem> fault_of(const TidalStreams& streams) {
  if (streams.kind == TidalStreams::Kind::not_entered) return std::nullopt;
  if (streams.kind == TidalStreams::Kind::steady) return fault_of(streams.steady);
  std::array<bool, k_rows> seen{};
  for (const StreamHour& row : streams.hours) {
    if (row.hour < -k_stream_hours || row.hour > k_stream_hours)
      return Problem{.fault = Fault::stream_hour_unknown, .numbers = {static_cast<double>(row.hour), -k_stream_hours, k_stream_hours}};
    if (std::exchange(seen[row_of(row.hour)], true)) return Problem{.fault = Fault::stream_hour_twice, .numbers = {static_cast<double>(row.hour)}};
    if (std::optional<Problem> fault = fault_of(row.stream)) return fault;
  }
  if (streams.high_waters.empty()) return Problem{.fault = Fault::high_water_missing};
  return std::nullopt;
}

StreamTimetable::StreamTimetable(const TidalStreams& streams) : entered_(streams.kind != TidalStreams::Kind::not_entered) {
  SHEET_CHECK(!fault_of(streams), "streams that were not looked over");
  if (streams.kind != TidalStreams::Kind::by_hours) {
    pieces_.push_back(
        {.from_s = -k_ever, .to_s = k_ever, .velocity_kn = entered_ ? velocity_kn(streams.steady) : PlaneVector{}, .entered = entered_});
    return;
  }
  std::array<StreamPiece, k_rows> by_hour{};
  for (const StreamHour& row : streams.hours) {
    StreamPiece& piece = by_hour[row_of(row.hour)];
    piece.velocity_kn = velocity_kn(row.stream);
    piece.entered = true;
  }
  std::vector<Instant> high_waters = streams.high_waters;
  std::sort(high_waters.begin(), high_waters.end());
  high_waters.erase(std::unique(high_waters.begin(), high_waters.end()), high_waters.end());
  double from_s = -k_ever;
  for (std::size_t i = 0; i < high_waters.size(); ++i) {
    const bool last = i + 1 == high_waters.size();
    const double to_s = last ? k_ever : (static_cast<double>(high_waters[i].seconds) + static_cast<double>(high_waters[i + 1].seconds)) / 2;
    add_high_water(high_waters[i], from_s, to_s, by_hour.data());
    from_s = to_s;
  }
}

// The hours about one high water, as far as it is the nearest, and what is past them.
void StreamTimetable::add_high_water(Instant high_water, double from_s, double to_s, const StreamPiece* by_hour) {
  constexpr int k_past = k_stream_hours + 1;
  for (int hour = -k_past; hour <= k_past; ++hour) {
    const double begin_s = static_cast<double>(high_water.seconds) + (hour - 0.5) * k_seconds_per_hour;
    StreamPiece piece = std::abs(hour) == k_past ? StreamPiece{} : by_hour[row_of(hour)];
    piece.from_s = hour == -k_past ? from_s : std::max(from_s, begin_s);
    piece.to_s = hour == k_past ? to_s : std::min(to_s, begin_s + k_seconds_per_hour);
    piece.hour = hour;
    piece.high_water = high_water;
    if (piece.from_s < piece.to_s) pieces_.push_back(piece);
  }
}

std::size_t StreamTimetable::index_at(double seconds) const {
  const auto after = std::upper_bound(pieces_.begin(), pieces_.end(), seconds, [](double t, const StreamPiece& piece) { return t < piece.from_s; });
  return static_cast<std::size_t>(after - pieces_.begin()) - 1;
}

std::size_t StreamTimetable::index_before(double seconds) const {
  const std::size_t at = index_at(seconds);
  return pieces_[at].from_s == seconds ? at - 1 : at;
}

std::vector<StreamPiece> StreamTimetable::between(double from_s, double to_s) const {
  std::vector<StreamPiece> found;
  for (std::size_t i = index_at(from_s); i < pieces_.size() && pieces_[i].from_s < to_s && from_s < to_s; ++i) {
    found.push_back(pieces_[i]);
    found.back().from_s = std::max(from_s, pieces_[i].from_s);
    found.back().to_s = std::min(to_s, pieces_[i].to_s);
  }
  return found;
}

std::optional<StreamPiece> StreamTimetable::first_gap(double from_s, double to_s) const {
  if (!entered_) return std::nullopt;
  for (const StreamPiece& piece : between(from_s, to_s))
    if (!piece.entered) return piece;
  return std::nullopt;
}

}  // namespace fogsheet
