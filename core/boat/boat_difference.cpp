#include "core/boat/boat_difference.h"

#include <algorithm>

#include "core/formats/boat_fields.h"
#include "core/formats/bytes.h"

namespace fogsheet {
namespace {

using Piece = std::vector<std::uint8_t>;

// A difference is a row of these, each naming an old piece: all from the last one named up to it stand as they are, or are
// passed over; then what is written after them.
struct Step {
  std::uint64_t passed = 0;  // old pieces that go
  std::uint64_t stand = 0;   // old pieces after those that stand
};

Problem unsound() { return {.fault = Fault::text_section, .texts = {"step"}}; }

/// A piece less what it has in common with the one at its place before, at both ends.
void write_piece(ByteWriter& out, const Piece& before, const Piece& after) {
  const auto shorter = static_cast<std::ptrdiff_t>(std::min(before.size(), after.size()));
  const auto head = std::mismatch(before.begin(), before.begin() + shorter, after.begin()).first - before.begin();
  const auto tail = std::mismatch(before.rbegin(), before.rbegin() + (shorter - head), after.rbegin()).first - before.rbegin();
  const std::span<const std::uint8_t> between = std::span(after).subspan(static_cast<std::size_t>(head), after.size() - static_cast<std::size_t>(head + tail));
  out.whole(static_cast<std::uint64_t>(head));
  out.whole(static_cast<std::uint64_t>(tail));
  out.whole(between.size());
  out.raw(between);
}

bool read_piece(ByteReader& in, const Piece& before, Piece& bytes) {
  const std::uint64_t head = in.whole(), tail = in.whole();
  const std::span<const std::uint8_t> between = in.raw(in.whole());
  if (!in.ok() || head > before.size() || tail > before.size() - head) return false;
  bytes.insert(bytes.end(), before.begin(), before.begin() + static_cast<std::ptrdiff_t>(head));
  bytes.insert(bytes.end(), between.begin(), between.end());
  bytes.insert(bytes.end(), before.end() - static_cast<std::ptrdiff_t>(tail), before.end());
  return true;
}

const Piece& piece_at(const std::vector<Piece>& pieces, std::size_t place) {
  static const Piece none;
  return place < pieces.size() ? pieces[place] : none;
}

}  // namespace

std::vector<std::uint8_t> difference(const Boat& from, const Boat& to) {
  if (from == to) return {};
  const std::vector<Piece> before = pieces_of(from), after = pieces_of(to);
  ByteWriter out;
  std::size_t old = 0, next = 0;
  while (next < after.size()) {
    const auto found = std::find(before.begin() + static_cast<std::ptrdiff_t>(old), before.end(), after[next]);
    Step step;
    if (found != before.end()) {
      step.passed = static_cast<std::uint64_t>(found - before.begin()) - old;
      old += static_cast<std::size_t>(step.passed);
      while (old < before.size() && next < after.size() && before[old] == after[next]) ++step.stand, ++old, ++next;
    }
    out.whole(step.passed);
    out.whole(step.stand);
    const bool is_new = next < after.size() && std::find(before.begin() + static_cast<std::ptrdiff_t>(old), before.end(), after[next]) == before.end();
    out.whole(is_new ? 1 : 0);
    if (is_new) write_piece(out, piece_at(before, old), after[next++]);
  }
  return out.bytes();
}

Result<Boat> applied(std::span<const std::uint8_t> difference, const Boat& from) {
  if (difference.empty()) return from;
  const std::vector<Piece> before = pieces_of(from);
  Piece bytes;
  std::size_t old = 0;
  ByteReader in(difference);
  while (!in.at_end()) {
    const Step step{.passed = in.whole(), .stand = in.whole()};
    const std::uint64_t has_new = in.whole();
    if (!in.ok() || step.passed > before.size() - old || step.stand > before.size() - old - step.passed || has_new > 1) return unsound();
    old += static_cast<std::size_t>(step.passed);
    for (std::uint64_t left = step.stand; left > 0; --left, ++old) bytes.insert(bytes.end(), before[old].begin(), before[old].end());
    if (has_new == 1 && !read_piece(in, piece_at(before, old), bytes)) return unsound();
  }
  return boat_from(bytes);
}

}  // namespace fogsheet
