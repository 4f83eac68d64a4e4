#include "core/instruments/rose_reading.h"

namespace fogsheet {

RoseReading read_rose(const StraightEdge& edge, std::optional<Variation> exact, Rounding rounding, const DeviationCard* card) {
  RoseReading reading{.on_true_ring = bearing(edge)};
  reading.chain = chain_from_true(reading.on_true_ring, exact, rounding, card);
  if (exact) {
    const Variation used{round_correction_deg(exact->deg, rounding)};
    reading.on_magnetic_ring = to_magnetic(reading.on_true_ring, used);
  }
  return reading;
}

}  // namespace fogsheet
