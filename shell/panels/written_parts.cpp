// What was read by hand and written on a leg, beside its computed course.
#include <cmath>

#include "core/document/written.h"
#include "shell/panels/parts.h"
#include "shell/words.h"

namespace fogsheet::parts {

void add_written(Panel& panel, const Session& session, const Leg& leg) {
  if (!leg.written) return;
  const WrittenReading& written = *leg.written;
  panel.items.push_back(LineItem{.text = words::read_by_hand(), .value = words::with_letter(written.bearing_deg, words::rounding_of(written), written.reference)});
  if (is_stale(session.document(), leg)) {
    panel.items.push_back(CautionItem{.text = words::reading_stale(), .advice = words::read_it_again()});
  } else if (const std::optional<double> off_deg = reading_off_deg(session.document(), leg, session.variation_of(leg)); off_deg && std::abs(*off_deg) > k_reading_warned_over_deg) {
    panel.items.push_back(CautionItem{.text = words::reading_off(*off_deg), .advice = words::read_it_again()});
  }
}

std::string written_cell(const Session& session, const Leg& leg) {
  if (!leg.written) return "";
  std::string cell = words::with_letter(leg.written->bearing_deg, words::rounding_of(*leg.written), leg.written->reference);
  if (is_stale(session.document(), leg)) return cell + ", " + words::stale();
  const std::optional<double> off_deg = reading_off_deg(session.document(), leg, session.variation_of(leg));
  if (off_deg && std::abs(*off_deg) > k_reading_warned_over_deg) cell += ", " + words::off_by(*off_deg);
  return cell;
}

}  // namespace fogsheet::parts
