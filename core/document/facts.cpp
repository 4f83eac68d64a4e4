#include "core/document/facts.h"

#include "core/base/check.h"

namespace fogsheet {
namespace {

Position place_of(const Document& document, MarkId id) {
  const Mark* mark = document.marks.find(id);
  SHEET_CHECK(mark != nullptr, "a leg that ends at no mark");
  return unquantise(mark->at);
}

}  // namespace

VariationInUse variation_of(const Document& document, Rounding rounding) {
  const Position middle = unquantise(document.sheet.middle);
  if (!document.chart_note) return variation_in_use(middle, document.sheet.date, std::nullopt, rounding);
  const double moved_nm = rhumb_inverse(unquantise(document.chart_note->entered_at), middle).distance_nm;
  return variation_in_use(middle, document.sheet.date, document.chart_note->printed, rounding, moved_nm);
}

LegFacts leg_facts(const Document& document, const Leg& leg, const VariationInUse& variation, Rounding rounding) {
  LegFacts facts{.rhumb = rhumb_inverse(place_of(document, leg.from), place_of(document, leg.to))};
  facts.chain = chain_from_true(facts.rhumb.course, variation.value, rounding);
  if (variation.used) {
    facts.has_magnetic = true;
    facts.magnetic = to_magnetic(facts.rhumb.course, *variation.used);
  }
  return facts;
}

}  // namespace fogsheet
