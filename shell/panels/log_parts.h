// What the slips of log entries share: an entry's field by name, and the parts of a swing.
#pragma once

#include "shell/panels/panel.h"
#include "shell/session.h"

namespace fogsheet::log_parts {

/// The field of that name with what was typed and not taken, else what stands.
FieldItem field(const Session& session, const LogEntry& entry, const std::string& name, std::string label, Pad pad, std::string unit = "");
/// A direction read off: three figures or with tenths.
FieldItem direction(const Session& session, const LogEntry& entry, const std::string& name, std::string label, std::string letter);
ChoiceItem choice(const LogEntry& entry, const std::string& name, std::string label, std::vector<ChoiceItem::Option> options);

/// Everything of a swing below its day.
void add_swing(Panel& slip, const Session& session, const LogEntry& entry, const Swing& swing);

/// The card that an entry gives, each so many degrees, and the button that puts it to use.
void add_card(Panel& slip, const Session& session, const LogEntry& entry);

}  // namespace fogsheet::log_parts
