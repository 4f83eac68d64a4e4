// The sentences of a compass's own: how its deviation was found, what that is worth, when it is to be found anew.
#pragma once

#include <string>

#include "core/base/date.h"
#include "core/boat/kept_card.h"
#include "core/compass/swing_fit.h"
#include "core/directions/chain.h"
#include "shell/panels/card_page.h"

namespace fogsheet::words {

/// "swung 2026-05-12".
std::string card_made(const CardPage& page);
/// "By one object of known bearing, Tolver Light, off Pellow Quay."
std::string how_card_made(const CardPage& page);
/// "12 readings counted, 1 left out, 1 of those counted does not belong."
std::string readings_counted(const DeviationCurve& curve);
std::string variation_used(const SwingUsed& swing);

std::string coefficient_name(Coefficient which);
/// "+0.8° ± 0.6°", or why it was not found.
std::string coefficient_figures(const SwingFit& fit, Coefficient which);
std::string reading_worth(const SwingFit& fit);
std::string what_doubt_is();
std::string largest_deviation(const KeptCard& card);  // "6.2°E at 180°C"
std::string worth_not_known();                         // of a card typed in, or a word given
std::string heeling_not_measured();

/// What the signs and the band of its curve say; and the curve for who can't see it.
std::string curve_key(const DeviationCurve& curve);
std::string curve_said(const CardPage& page);

/// The last cell of a row of the table from magnetic to compass: "128°C", "no heading", "121 or 134°C".
std::string heading_to_steer(const Chain& chain, Rounding rounding);
std::string no_deviation_there();

std::string field_there(const CardField& field);
/// When to swing again, whatever the card says. @param due the latest day.
std::string swing_again_after();
std::string swing_again_away();
std::string swing_again_by(Date due);

std::string card_cautions();

}  // namespace fogsheet::words
