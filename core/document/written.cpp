#include "core/document/written.h"

#include "core/earth/rhumb.h"

namespace fogsheet {

bool is_stale(const Document& document, const Leg& leg) {
  return document.marks.find(leg.from)->at != leg.written->from_at || document.marks.find(leg.to)->at != leg.written->to_at;
}

std::optional<double> reading_off_deg(const Document& document, const Leg& leg, const VariationInUse& variation) {
  const TrueDirection course = rhumb_inverse(place_of(document, leg.from), place_of(document, leg.to)).course;
  if (leg.written->reference == Reference::true_north) return reduce_difference_deg(leg.written->bearing_deg - course.deg());
  if (!variation.used) return std::nullopt;
  return reduce_difference_deg(leg.written->bearing_deg - to_magnetic(course, *variation.used).deg());
}

}  // namespace fogsheet
