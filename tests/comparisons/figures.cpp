// Prints a long list of what a user would see, for the same inputs in every build: native and WebAssembly must agree to the
// last figure (figures.test.mjs). Inputs come from our own generator.
#include <cstdio>
#include <string>

#include "core/base/clock_text.h"
#include "core/base/number_text.h"
#include "core/base/quantity_text.h"
#include "core/base/random.h"
#include "core/directions/chain.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/earth/rhumb.h"
#include "core/earth/sailings.h"
#include "core/magnetic/variation.h"
#include "core/positions/position_figures.h"
#include "core/positions/position_text.h"

namespace {

using namespace fogsheet;

constexpr int k_lines = 20'000;

Position place(Random& random) { return {.lat_deg = random.uniform(-75, 75), .lon_deg = random.uniform(-180, 180)}; }

std::string rows_of(const Chain& chain, Rounding rounding) {
  std::string text;
  for (const ChainRow& row : chain.rows) {
    const bool correction = &row != &chain.rows.front() && (&row - chain.rows.data()) % 2 == 1;
    text += correction ? print_correction(row.shown_deg, rounding) : print_direction(row.shown_deg, std::nullopt, rounding);
    if (row.by_tenths_deg) text += " (" + print_direction(*row.by_tenths_deg, std::nullopt, Rounding::tenths) + ")";
    text += " ";
  }
  return text;
}

// A leg: course, distance, variation of its day and the chain to the compass.
void print_leg(Random& random, const DeviationCard& card) {
  const Position from = place(random), to = place(random);
  const Date date{static_cast<int>(random.whole(1900, 2029)), static_cast<int>(random.whole(1, 12)), static_cast<int>(random.whole(1, 28))};
  const RhumbLeg leg = rhumb_inverse(from, to);
  const VariationInUse variation = variation_in_use(from, date, std::nullopt, Rounding::whole_degrees);
  std::string line = position_figures(from, 2) + " " + position_figures(to, 4) + " " + print_fixed(leg.distance_nm, 2) + " " + iso_date(date) + " " +
                     print_fixed(variation.uncertainty_deg, 2) + " ";
  if (variation.value) {
    line += degrees_minutes_text(variation.value->deg) + " ";
    const ChainCorrections corrections{.leeway = Leeway{random.uniform(-8, 8)}, .variation = *variation.value, .card = &card};
    line += rows_of(chain_to_compass(leg.course, corrections, Rounding::whole_degrees), Rounding::whole_degrees);
    line += rows_of(chain_from_compass(CompassDirection(leg.course.deg()), corrections, Rounding::tenths), Rounding::tenths);
  }
  // One draw a statement: compilers differ in which argument they compute first.
  const TrueDirection course(random.uniform(0, 360));
  const double distance_nm = random.uniform(0, 500);
  const Result<Position> end = rhumb_direct(from, course, distance_nm);
  if (end.ok()) line += position_figures(*end, 4);
  const CourseDistance sailing = mercator_course(from, to);
  line += " " + print_direction(sailing.course.deg(), std::nullopt, Rounding::tenths) + " " + print_fixed(sailing.distance_nm, 1);
  std::puts(line.c_str());
}

// What typed texts are read as, and random numbers to their last bit.
void print_texts(Random& random) {
  const GridPosition grid{static_cast<std::int32_t>(random.whole(-45'000'000, 45'000'000)),
                          static_cast<std::int32_t>(random.whole(-108'000'000, 107'999'999))};
  std::string line;
  for (const PositionForm form : {PositionForm::degrees_minutes, PositionForm::degrees_minutes_seconds, PositionForm::decimal_degrees,
                                  PositionForm::iso6709, PositionForm::geo_uri})
    line += print_position(quantise(*parse_position(print_position(grid, form))), form) + " ";
  const Length length{static_cast<double>(random.whole(0, 9999)) / 100, LengthUnit::cables};
  line += print_fixed(parse_length(print_length(length, 2))->nm(), 4) + " " + print_clock_time({static_cast<int>(random.whole(0, 1439))});
  char bits[32];
  std::snprintf(bits, sizeof bits, " %a", random.normal());
  std::puts((line + bits).c_str());
}

}  // namespace

int main() {
  Random random(20261125);
  std::vector<DeviationEntry> entries;
  for (int heading = 0; heading < 360; heading += 15) entries.push_back({CompassDirection(heading), Deviation{random.uniform(-9, 9)}});
  const DeviationCard card = *DeviationCard::make(entries);
  for (int i = 0; i < k_lines; ++i) {
    print_leg(random, card);
    print_texts(random);
  }
}
