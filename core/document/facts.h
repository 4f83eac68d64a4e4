// What follows from a document: its variation, its legs' courses and distances. Pure functions; callers may cache.
#pragma once

#include "core/directions/chain.h"
#include "core/document/document.h"
#include "core/earth/rhumb.h"
#include "core/magnetic/variation.h"

namespace fogsheet {

/// The sheet's one variation, for its middle and date, by the chart's note or by the model.
VariationInUse variation_of(const Document& document, Rounding rounding);

struct LegFacts {
  RhumbLeg rhumb;    // unrounded, as drawn, without stream or leeway
  Chain chain;       // true to magnetic; rows only as far as the variation is known
  bool has_magnetic = false;  // false where there is no variation (blackout zone, date outside the models)
  MagneticDirection magnetic;  // made with the variation as used
};

/// @param variation of the same document.
LegFacts leg_facts(const Document& document, const Leg& leg, const VariationInUse& variation, Rounding rounding);

}  // namespace fogsheet
