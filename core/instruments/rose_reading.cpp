#include "core/instruments/rose_reading.h"

namespace fogsheet {

RoseReading read_rose(const StraightEdge& edge, std::optional<Variation> exact, Rounding rounding) {
  const TrueDirection read = bearing(edge);
  if (!exact) {
    const ChainRow only_row{.term = ChainTerm::true_direction,
                            .shown_deg = round_direction_deg(read.deg(), rounding),
                            .exact_deg = read.deg()};
    return {.on_true_ring = read, .on_magnetic_ring = std::nullopt, .chain = {.rows = {only_row}}};
  }
  const Variation used{round_correction_deg(exact->deg, rounding)};
  return {.on_true_ring = read, .on_magnetic_ring = to_magnetic(read, used), .chain = chain_from_true(read, *exact, rounding)};
}

}  // namespace fogsheet
