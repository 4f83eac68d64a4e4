#include "core/document/facts.h"

#include <limits>

namespace fogsheet {

VariationInUse variation_of(const Document& document, Rounding rounding) {
  const Position middle = unquantise(document.sheet.middle);
  if (!document.chart_note) return variation_in_use(middle, document.sheet.date, std::nullopt, rounding);
  const double moved_nm = rhumb_inverse(unquantise(document.chart_note->entered_at), middle).distance_nm;
  return variation_in_use(middle, document.sheet.date, document.chart_note->printed, rounding, moved_nm);
}

VariationInUse variation_at(const Document& document, const Rose& rose, const VariationInUse& of_sheet, Rounding rounding) {
  return rose.own_place ? variation_in_use(unquantise(rose.at), document.sheet.date, std::nullopt, rounding) : of_sheet;
}

const Rose* rose_serving(const Document& document, const Leg& leg, const Projection& projection) {
  const Rose* nearest = nullptr;
  double least_mm = std::numeric_limits<double>::infinity();
  const auto on_paper = [&](MarkId mark) { return projection.to_sheet(place_of(document, mark)); };
  const SheetPoint middle = midpoint(on_paper(leg.from), on_paper(leg.to));
  for (const Rose& rose : document.roses) {
    const double away_mm = distance_mm(projection.to_sheet(unquantise(rose.at)), middle);
    if (away_mm >= least_mm) continue;
    least_mm = away_mm;
    nearest = &rose;
  }
  return nearest && nearest->own_place ? nearest : nullptr;
}

LegFacts leg_facts(const Document& document, const Leg& leg, const VariationInUse& variation, Rounding rounding, const DeviationCard* card) {
  LegFacts facts{.rhumb = rhumb_inverse(place_of(document, leg.from), place_of(document, leg.to))};
  facts.chain = chain_from_true(facts.rhumb.course, variation.value, rounding, card);
  if (variation.used) {
    facts.has_magnetic = true;
    facts.magnetic = to_magnetic(facts.rhumb.course, *variation.used);
    const std::vector<CompassDirection> headings = card ? card->compass_for(facts.magnetic) : std::vector<CompassDirection>();
    if (headings.size() == 1) facts.compass = headings.front();
  }
  return facts;
}

}  // namespace fogsheet
