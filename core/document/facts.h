// What follows from a document: its variation, its legs' courses and distances. Pure functions; callers may cache.
#pragma once

#include "core/directions/chain.h"
#include "core/document/document.h"
#include "core/earth/rhumb.h"
#include "core/magnetic/variation.h"

namespace fogsheet {

/// The sheet's one variation, for its middle and date, by the chart's note or by the model.
VariationInUse variation_of(const Document& document, Rounding rounding);

/// The variation a rose shows: the sheet's own, or for one set to its own place the model's there, at the sheet's date.
VariationInUse variation_at(const Document& document, const Rose& rose, const VariationInUse& of_sheet, Rounding rounding);

/// The rose whose variation serves a leg: the one nearest to its middle on the paper, if that is set to its own place;
/// else none, and the sheet's variation serves it. @param projection of the same document.
const Rose* rose_serving(const Document& document, const Leg& leg, const Projection& projection);

struct LegFacts {
  RhumbLeg rhumb;    // unrounded, as drawn, without stream or leeway
  Chain chain;       // true to magnetic; rows only as far as the variation is known
  bool has_magnetic = false;  // false where there is no variation (blackout zone, date outside the models)
  MagneticDirection magnetic;  // made with the variation as used
  std::optional<CompassDirection> compass = {};  // unrounded, from `magnetic`; none without a card, or where it has none or several
};

/// @param variation  the one that serves the leg. @param card  the document's, or none
LegFacts leg_facts(const Document& document, const Leg& leg, const VariationInUse& variation, Rounding rounding, const DeviationCard* card);

}  // namespace fogsheet
