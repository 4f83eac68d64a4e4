#include "core/directions/chain.h"

#include <cmath>

#include "core/base/check.h"

namespace fogsheet {

namespace {

// Down the list of terms, from ground to compass, a correction is taken away; up the list it is added.
enum class Way { towards_compass, towards_ground };

// Adds rows one by one, keeping the sum in three reckonings: unrounded, as shown, and with every term in tenths.
class Sum {
 public:
  Sum(ChainTerm term, double direction_deg, Way way, Rounding rounding)
      : way_(way),
        rounding_(rounding),
        exact_deg_(reduce_direction_deg(direction_deg)),
        shown_deg_(round_direction_deg(direction_deg, rounding)),
        tenths_deg_(round_direction_deg(direction_deg, Rounding::tenths)) {
    constexpr std::size_t k_most_rows = 9;  // every term there is
    chain_.rows.reserve(k_most_rows);
    chain_.rows.push_back({.term = term, .shown_deg = shown_deg_, .exact_deg = exact_deg_});
  }

  void apply(ChainTerm correction_term, double correction_deg, ChainTerm direction_term) {
    const double shown_correction_deg = round_correction_deg(correction_deg, rounding_);
    const double sign = way_ == Way::towards_ground ? 1 : -1;
    const double applied_deg = sign * shown_correction_deg;
    chain_.rows.push_back({.term = correction_term,
                           .shown_deg = shown_correction_deg,
                           .exact_deg = correction_deg,
                           .applied_sign = (applied_deg > 0) - (applied_deg < 0)});
    exact_deg_ = reduce_direction_deg(exact_deg_ + sign * correction_deg);
    // Sums of rounded terms are rounded again only to shed the last bits of tenths.
    shown_deg_ = round_direction_deg(shown_deg_ + applied_deg, rounding_);
    tenths_deg_ = round_direction_deg(tenths_deg_ + sign * round_correction_deg(correction_deg, Rounding::tenths), Rounding::tenths);
    ChainRow row{.term = direction_term, .shown_deg = shown_deg_, .exact_deg = exact_deg_};
    if (rounding_moved_far(shown_deg_, exact_deg_)) row.by_tenths_deg = tenths_deg_;
    chain_.rows.push_back(row);
  }

  double exact_deg() const { return exact_deg_; }

  Chain finish() { return std::move(chain_); }

 private:
  Way way_;
  Rounding rounding_;
  double exact_deg_;
  double shown_deg_;
  double tenths_deg_;
  Chain chain_;
};

// The deviation for a compass heading, if there is one.
std::optional<Deviation> deviation_at(CompassDirection heading, const ChainCorrections& corrections) {
  return corrections.deviation ? corrections.deviation : corrections.card->at(heading);
}

bool deviation_entered(const ChainCorrections& corrections) { return corrections.deviation.has_value() || corrections.card != nullptr; }

// The last two rows, from magnetic to compass, where deviation has one answer.
Chain finish_at_compass(Sum& sum, const ChainCorrections& corrections) {
  if (!deviation_entered(corrections)) return sum.finish();
  const MagneticDirection magnetic(sum.exact_deg());
  std::vector<CompassDirection> headings;
  if (corrections.deviation) {
    headings = {to_compass(magnetic, *corrections.deviation)};
  } else {
    headings = corrections.card->compass_for(magnetic);
  }
  if (headings.size() == 1) {
    const Deviation deviation = deviation_between(magnetic, headings.front());
    sum.apply(ChainTerm::deviation, corrections.deviation.value_or(deviation).deg, ChainTerm::compass_direction);
  }
  Chain chain = sum.finish();
  chain.deviation_entered = true;
  chain.deviation = headings.empty() ? DeviationAnswer::none : headings.size() == 1 ? DeviationAnswer::one : DeviationAnswer::several;
  if (chain.deviation == DeviationAnswer::several) chain.candidates = std::move(headings);
  return chain;
}

}  // namespace

const ChainRow* row_of(const Chain& chain, ChainTerm term) {
  for (const ChainRow& row : chain.rows)
    if (row.term == term) return &row;
  return nullptr;
}

Chain chain_to_compass(TrueDirection direction, const ChainCorrections& corrections, Rounding rounding) {
  const ChainTerm first = corrections.stream_deg ? ChainTerm::ground_track : corrections.leeway ? ChainTerm::water_track : ChainTerm::true_direction;
  Sum sum(first, direction.deg(), Way::towards_compass, rounding);
  if (corrections.stream_deg) {
    const ChainTerm next = corrections.leeway ? ChainTerm::water_track : ChainTerm::true_direction;
    sum.apply(ChainTerm::stream, *corrections.stream_deg, next);
  }
  if (corrections.leeway) sum.apply(ChainTerm::leeway, corrections.leeway->deg, ChainTerm::true_direction);
  sum.apply(ChainTerm::variation, corrections.variation.deg, ChainTerm::magnetic_direction);
  return finish_at_compass(sum, corrections);
}

Chain chain_to_compass(MagneticDirection direction, const ChainCorrections& corrections, Rounding rounding) {
  Sum sum(ChainTerm::magnetic_direction, direction.deg(), Way::towards_compass, rounding);
  return finish_at_compass(sum, corrections);
}

Chain chain_from_compass(CompassDirection direction, const ChainCorrections& corrections, Rounding rounding) {
  Sum sum(ChainTerm::compass_direction, direction.deg(), Way::towards_ground, rounding);
  const bool entered = deviation_entered(corrections);
  const std::optional<Deviation> deviation = entered ? deviation_at(direction, corrections) : std::nullopt;
  if (deviation) {
    sum.apply(ChainTerm::deviation, deviation->deg, ChainTerm::magnetic_direction);
    sum.apply(ChainTerm::variation, corrections.variation.deg, ChainTerm::true_direction);
    if (corrections.leeway) sum.apply(ChainTerm::leeway, corrections.leeway->deg, ChainTerm::water_track);
    if (corrections.stream_deg) sum.apply(ChainTerm::stream, *corrections.stream_deg, ChainTerm::ground_track);
  }
  Chain chain = sum.finish();
  chain.deviation_entered = entered;
  if (entered) chain.deviation = deviation ? DeviationAnswer::one : DeviationAnswer::none;
  return chain;
}

Chain chain_from_true(TrueDirection course, Variation variation, Rounding rounding) {
  return chain_to_compass(course, {.variation = variation}, rounding);
}

Chain chain_from_true(TrueDirection course, const std::optional<Variation>& variation, Rounding rounding, const DeviationCard* card) {
  if (variation) return chain_to_compass(course, {.variation = *variation, .card = card}, rounding);
  return Sum(ChainTerm::true_direction, course.deg(), Way::towards_compass, rounding).finish();
}

Chain chain_from_magnetic(MagneticDirection bearing, Variation variation, Rounding rounding) {
  Sum sum(ChainTerm::magnetic_direction, bearing.deg(), Way::towards_ground, rounding);
  sum.apply(ChainTerm::variation, variation.deg, ChainTerm::true_direction);
  return sum.finish();
}

}  // namespace fogsheet
