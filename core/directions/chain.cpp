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
    chain_.rows.push_back({.term = term, .shown_deg = shown_deg_, .exact_deg = exact_deg_});
  }

  void apply(ChainTerm correction_term, double correction_deg, ChainTerm direction_term) {
    const double shown_correction_deg = round_correction_deg(correction_deg, rounding_);
    const double sign = way_ == Way::towards_ground ? 1 : -1;
    const double applied_deg = sign * shown_correction_deg;
    chain_.rows.push_back({.term = correction_term,
                           .shown_deg = shown_correction_deg,
                           .exact_deg = correction_deg,
                           .applied_sign = applied_deg > 0 ? 1 : applied_deg < 0 ? -1 : 0});
    exact_deg_ = reduce_direction_deg(exact_deg_ + sign * correction_deg);
    // Sums of rounded terms are rounded again only to shed the last bits of tenths.
    shown_deg_ = round_direction_deg(shown_deg_ + applied_deg, rounding_);
    tenths_deg_ = round_direction_deg(tenths_deg_ + sign * round_correction_deg(correction_deg, Rounding::tenths),
                                      Rounding::tenths);
    ChainRow row{.term = direction_term, .shown_deg = shown_deg_, .exact_deg = exact_deg_};
    if (rounding_moved_far(shown_deg_, exact_deg_)) row.by_tenths_deg = tenths_deg_;
    chain_.rows.push_back(row);
  }

  Chain finish() { return std::move(chain_); }

 private:
  Way way_;
  Rounding rounding_;
  double exact_deg_;
  double shown_deg_;
  double tenths_deg_;
  Chain chain_;
};

}  // namespace

Chain chain_from_true(TrueDirection course, Variation variation, Rounding rounding) {
  Sum sum(ChainTerm::true_direction, course.deg(), Way::towards_compass, rounding);
  sum.apply(ChainTerm::variation, variation.deg, ChainTerm::magnetic_direction);
  return sum.finish();
}

Chain chain_from_true(TrueDirection course, const std::optional<Variation>& variation, Rounding rounding) {
  if (variation) return chain_from_true(course, *variation, rounding);
  return Sum(ChainTerm::true_direction, course.deg(), Way::towards_compass, rounding).finish();
}

Chain chain_from_magnetic(MagneticDirection bearing, Variation variation, Rounding rounding) {
  Sum sum(ChainTerm::magnetic_direction, bearing.deg(), Way::towards_ground, rounding);
  sum.apply(ChainTerm::variation, variation.deg, ChainTerm::true_direction);
  return sum.finish();
}

}  // namespace fogsheet
