// The words of boats, their compasses and logs: what was found, by which rule, and what to do about it.
#pragma once

#include <string>
#include <vector>

#include "core/boat/swing_record.h"
#include "core/compass/interference.h"
#include "core/directions/rounding.h"

namespace fogsheet::words {

std::string usual_compass_name();
std::string another_compass_name(CompassKind kind);
std::string a_boat();
std::string adjusted_remark();
std::string blank_remark();

/// "Swing", "Check": the kind of an entry, as its slip's heading.
std::string entry_title(const LogEntryKind& what);
/// What came of it, short, for the log: "agrees", "largest 5.2°E at 090°C".
std::string entry_result(const LogEntry& entry);

/// "2.3°E", "0°": a deviation by tenths.
std::string deviation_tenths(double deg);
/// "045°C".
std::string heading_figures(double deg);

/// "largest 5.2°E on 090°C"; "no deviation".
std::string largest_of(const KeptCard& card);
/// "card of 2026-05-01, by a swing; largest 5.2°E at 090°C".
std::string card_line(const KeptCard& card);

/// What a check found, and by which rule.
std::string verdict(const CheckWorked& worked);
std::string verdict_advice(const CheckWorked& worked);
std::string rule_of(const CompassCheck& check);

/// What the swing's curve points to, a sentence each, and what it could not find.
std::vector<std::string> causes(const SwingWorked& worked);
/// What handbooks say of deviations so large or steep; empty where they leave them alone.
std::string steering_warning(const SwingFindings& findings);
std::string missing_coefficients(const SwingFit& fit);
std::string how_good(const SwingFit& fit);
std::string method_label(SwingMethod method);
std::string method_advice(SwingMethod method);
/// What the object's distance allows; empty when it is not known. `is_caution` where the circle is too large.
struct ParallaxWords {
  std::string text;
  bool is_caution = false;
};
ParallaxWords parallax(const Swing& swing);
/// A reading that does not belong: "misses by 9.8°, 6.1 times its error".
std::string misfit(const Misfit& misfit);

std::string pull(const std::string& thing, const Pull& pull);

std::string adjuster_caution();

/// Why the card should not be trusted where the sheet is; empty when it can be.
std::string card_away_from(const CardAway& away);

}  // namespace fogsheet::words
